/**
 * A speed that was logged over a part of a recording only: a position found late, or lost. Beyond its ends nothing is
 * known of the speed, and held constant there it would be believed.
 */
import type { Run } from '../../job/job.ts';
import type { Note } from '../../note.ts';
import { cutRecording } from '../../reading/cut-recording.ts';
import type { Recording, Track } from '../../reading/recording.ts';
import { speedLogOf } from '../../reading/speed-log.ts';
import { mean } from '../../signal/numeric/statistics.ts';
import { statedDiffers } from './stated-speed.ts';

/** An end that is missed by less than this tells little: loggers begin within a second or two, s. */
const MISSED_S = 2.5;
/** So far beyond its ends a log is believed, s. */
const BELIEVED_S = 1;
/** Greatest over least speed of a log that kept one speed: the rest of the recording will have kept it as well. */
const ONE_SPEED = 1.06;
/** A part shorter than this is too little to be judged alone, s. */
const SHORTEST_PART_S = 12;

/**
 * The run with the speed it has a log of: where that kept to one speed it stands for the whole, as if it had been
 * stated; else only what the log covers is judged, or, where that is too short, the speed as it was stated.
 */
export function whereLogged(run: Run, recording: Recording): { readonly run: Run; readonly recording: Recording } {
  const log = speedLogOf(recording);
  if (!log || log.timeS.length < 2) return { run, recording };
  const [startS, endS] = extentOf(recording);
  const [fromS, toS] = [log.timeS[0]!, log.timeS[log.timeS.length - 1]!];
  if (fromS - startS < MISSED_S && endS - toS < MISSED_S) return { run, recording };
  const span = `${fromS.toFixed(0)} to ${toS.toFixed(0)} s`;
  if (keptOneSpeed(log)) {
    const speedMps = mean(log.value);
    const text = `The speed was logged from ${span} only: its mean is used, and how it moved is taken from the vibration itself.`;
    const notes = [...recording.notes, note(text), ...statedDiffers(run.speedMps, speedMps)];
    return { run: { ...run, speedMps, speedSource: 'logged' }, recording: { ...withoutSpeed(recording), notes } };
  }
  if (toS - fromS < SHORTEST_PART_S) {
    const used = run.speedMps === undefined ? 'State the speed of the run.' : 'The stated speed is used.';
    const text = `The speed was logged from ${span} only, and changed: that is too short to be judged alone, and tells nothing of the rest. ${used}`;
    return { run, recording: { ...withoutSpeed(recording), notes: [...recording.notes, note(text)] } };
  }
  const text = `The speed was logged from ${span} only; what lies beyond is left out, since the speed changed and nothing tells how it went on there.`;
  const cut = cutRecording(recording, [{ fromS: fromS - BELIEVED_S, toS: toS + BELIEVED_S }]);
  return { run, recording: { ...cut, notes: [...recording.notes, note(text)] } };
}

const withoutSpeed = (recording: Recording): Recording => {
  const rest: { -readonly [K in keyof Recording]: Recording[K] } = { ...recording };
  delete rest.wheelSpeedMps;
  delete rest.roadSpeedMps;
  return rest;
};

const note = (text: string): Note => ({ code: 'partly-logged', severity: 'warning', text });

const keptOneSpeed = ({ value }: Track): boolean => {
  const least = value.reduce((low, v) => Math.min(low, v), Infinity);
  const greatest = value.reduce((high, v) => Math.max(high, v), 0);
  return greatest < ONE_SPEED * least;
};

/** Beginning and end on the recording's clock, s; its segments stand in order of time. */
const extentOf = ({ segments, samplingRateHz, durationS }: Recording): readonly [number, number] => {
  const [first, last] = [segments[0], segments[segments.length - 1]];
  if (!first || !last) return [0, durationS];
  return [first.startS, last.startS + (last.accelerationMps2[0]?.length ?? 0) / samplingRateHz];
};
