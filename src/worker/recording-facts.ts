/** What a form needs to know of a recording, without its samples. */
import type { Note, Problem } from '../core/note.ts';
import type { Recording } from '../core/reading/recording.ts';
import { speedLogOf } from '../core/reading/speed-log.ts';
import { mean } from '../core/signal/numeric/statistics.ts';

/** One recording in brief, or why it could not be read. */
export interface RecordingFacts {
  readonly key: string;
  readonly name: string;
  readonly problem?: Problem;
  readonly samplingRateHz: number;
  readonly durationS: number;
  readonly axes: number;
  /** Mean of the logged speed that the analysis uses, m/s; absent where none was logged. */
  readonly loggedSpeedMps?: number;
  /** Mean of the logged engine speed, rev/min; absent where none was logged. */
  readonly loggedEngineRpm?: number;
  readonly notes: readonly Note[];
}

/** Facts of a recording that was read. */
export function factsOf(key: string, recording: Recording): RecordingFacts {
  const speed = speedLogOf(recording);
  return {
    key,
    name: recording.name,
    samplingRateHz: recording.samplingRateHz,
    durationS: recording.durationS,
    axes: recording.channels.length,
    ...(speed && { loggedSpeedMps: mean(speed.value) }),
    ...(recording.engineSpeedRpm?.value.length && { loggedEngineRpm: mean(recording.engineSpeedRpm.value) }),
    notes: recording.notes,
  };
}

/** Facts of a recording that could not be read. */
export function factsOfProblem(key: string, name: string, problem: Problem): RecordingFacts {
  return { key, name, problem, samplingRateHz: 0, durationS: 0, axes: 0, notes: [] };
}
