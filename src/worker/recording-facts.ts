/** What a form needs to know of a recording, without its samples. */
import type { Note, Problem } from '../core/note.ts';
import type { Recording } from '../core/reading/recording.ts';

/** One recording in brief, or why it could not be read. */
export interface RecordingFacts {
  readonly key: string;
  readonly name: string;
  readonly problem?: Problem;
  readonly samplingRateHz: number;
  readonly durationS: number;
  readonly axes: number;
  /** Mean of the logged road speed, m/s; absent where none was logged. */
  readonly loggedSpeedMps?: number;
  /** Mean of the logged engine speed, rev/min; absent where none was logged. */
  readonly loggedEngineRpm?: number;
  readonly notes: readonly Note[];
}

/** Facts of a recording that was read. */
export function factsOf(key: string, recording: Recording): RecordingFacts {
  const speed = recording.roadSpeedMps ?? recording.wheelSpeedMps;
  return {
    key,
    name: recording.name,
    samplingRateHz: recording.samplingRateHz,
    durationS: recording.durationS,
    axes: recording.channels.length,
    ...(speed && { loggedSpeedMps: mean(speed.value) }),
    ...(recording.engineSpeedRpm && { loggedEngineRpm: mean(recording.engineSpeedRpm.value) }),
    notes: recording.notes,
  };
}

/** Facts of a recording that could not be read. */
export function factsOfProblem(key: string, name: string, problem: Problem): RecordingFacts {
  return { key, name, problem, samplingRateHz: 0, durationS: 0, axes: 0, notes: [] };
}

function mean(values: Float64Array): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
