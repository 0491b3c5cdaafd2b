/**
 * Amplitudes of one order in runs made alike but for a weight: what a balance by amplitudes is worked out from, taken
 * out of the recordings themselves, with their uncertainties.
 */
import { judgeJob } from '../diagnosis/judge-job.ts';
import type { RecordedJob } from '../job/recorded-job.ts';
import { isSeen, RUN_TO_RUN_SD_DB } from '../diagnosis/compare/change.ts';
import { historyOf } from '../diagnosis/matching/group-history.ts';
import { onAxes, sharedAxes } from '../diagnosis/compare/on-axes.ts';
import { runLevels } from '../diagnosis/compare/run-levels.ts';
import { SPEED_LAWS } from '../diagnosis/compare/speed-law.ts';
import type { Note, Problem, Result } from '../note.ts';
import { failure, success } from '../note.ts';
import type { SpeedTrack } from '../signal/speed/equal-angle.ts';
import { levelCases } from '../signal/speed/level-wander.ts';
import { withNoiseUnder } from '../signal/speed/noise-under-order.ts';
import type { OrderLevel } from '../signal/speed/order-level.ts';
import { levelOf } from '../signal/speed/order-level.ts';
import { BLOCK_S, orderReadings } from '../signal/speed/order-readings.ts';
import type { Prepared } from '../signal/spectra/spectrum.ts';
import type { TrialAxis } from './trial-axis.ts';
import { placeInRun } from './trial-place.ts';

export interface TrialLevel {
  readonly run: string;
  readonly frequencyHz: number;
  /** 0-to-peak amplitude on one axis and its standard uncertainty, m/s². */
  readonly amplitudeMps2: number;
  readonly amplitudeSdMps2: number;
}

export interface TrialLevels {
  /**
   * Axis that shows the order most in the first run; one axis, so that the amplitudes belong to one response. 'all'
   * where the sensor was turned between the runs: all axes together do not depend on how it lies.
   */
  readonly axis: TrialAxis;
  readonly levels: readonly TrialLevel[];
  readonly notes: readonly Note[];
}

/** A mean level that falls below this share of the plain one tells nothing more. */
const LEAST_SHARE = 0.1;
/** What one run differs from the next, as a share of the amplitude: the pair's decibels by the root of two. */
const RUN_SHARE = ((RUN_TO_RUN_SD_DB / Math.SQRT2) * Math.LN10) / 20;
/** Gravity lies this far off the first run's where the sensor was turned; grades and nodding are worth less. Judgment. */
const TURNED_FROM_DEG = 6;
/** Runs whose order lies further apart than this, as a share, were not made at one speed. */
const SAME_SPEED_SHARE = 0.01;
/** Step of the search for an order too weak to find by itself, Hz. */
const SEARCH_STEP_HZ = 0.06;

interface Observed {
  readonly name: string;
  readonly prepared: Prepared;
  readonly history: SpeedTrack;
  readonly frequencyHz: number | null;
}

/**
 * Amplitude of an order in every run of a job, the first being the one as found.
 * @param label the order, as lines are labelled: 'driveshaft 1×', 'tire 1×'
 * @returns a problem where the order cannot be placed in the first run, or a run is too short
 */
export function trialLevels(recorded: RecordedJob, label: string): Result<TrialLevels> {
  const judged = judgeJob(recorded);
  if (!judged.ok) return judged;
  const axes = sharedAxes(judged.value.inferences);
  if (axes.length === 0 && judged.value.inferences.length > 0) return failure(NO_SHARED_AXIS);
  const inferences = judged.value.inferences.map((inference) => onAxes(inference, axes));
  // Levels are told apart by the order of the runs: a run that fell into several would shift all that follow.
  if (inferences.length !== recorded.recordings.length) return failure(SEVERAL_SPEEDS);
  const [asFound] = inferences;
  if (asFound === undefined) return failure(NO_RUN);
  const place = placeInRun(asFound, label);
  if (!place.ok) return place;
  const foundHz = place.value.frequencyHz;
  const group = asFound.origins.find(({ line }) => line.label === label)?.group ?? 'road';
  const runs = inferences.map((inference): Observed => {
    const { name, prepared } = inference.run;
    const own = inference === asFound ? foundHz : (runLevels(inference).get(label)?.frequencyHz ?? null);
    return { name, prepared, history: historyOf(inference, group), frequencyHz: own };
  });
  const levelInFirst = (index: number): number => (runs[0] && levelOn(runs[0], index, foundHz)?.power) ?? -Infinity;
  const powers = axes.map((_, index) => levelInFirst(index));
  const turnedDeg = Math.max(...runs.map(({ prepared }) => angleBetweenDeg(asFound.run.prepared.up, prepared.up)));
  const axis = turnedDeg > TURNED_FROM_DEG ? 'all' : powers.indexOf(Math.max(...powers));
  const notes: Note[] = [...place.value.notes, ...(axis === 'all' ? [sensorTurned(turnedDeg)] : [])];
  const found: (PlacedLevel & { readonly run: string })[] = [];
  for (const run of runs) {
    const placed = run.frequencyHz ?? strongestNear(run, axis, foundHz);
    const level = levelOn(run, axis, placed, true);
    if (level === null) {
      return failure({
        code: 'run-too-short',
        message: `${run.name} is too short, or sampled too slowly, to read ${label} from.`,
        remedy: 'Record at least 20 s at a steady speed for every trial run.',
      });
    }
    if (Math.abs(placed / foundHz - 1) > SAME_SPEED_SHARE) notes.push(otherSpeed(run.name, placed / foundHz));
    if (run.frequencyHz === null && !isSeen(level, false)) notes.push(weak(run.name, label));
    found.push({ run: run.name, frequencyHz: placed, level });
  }
  const levels = trialAmplitudes(found).map((amplitude, k) => ({ run: found[k]?.run ?? '', ...amplitude }));
  return success({ axis: axis === 'all' ? axis : (axes[axis] ?? 'x'), levels, notes });
}

const NO_SHARED_AXIS: Problem = {
  code: 'no-shared-axis',
  message: 'There is no axis that all of the trial runs recorded.',
  remedy:
    'Record all runs with the same sensor in the same place, on the same axes, or give the amplitudes as numbers.',
};

const SEVERAL_SPEEDS: Problem = {
  code: 'trial-run-several-speeds',
  message: 'By its logged speed one of the trial runs was driven at several speeds.',
  remedy: 'Record each trial run at one steady speed, all at the same, or give the part of it that is (from, to).',
};

/** Angle between two directions of gravity in the sensor's axes; 0 where one is not known. */
const angleBetweenDeg = (one: Prepared['up'], other: Prepared['up']): number => {
  if (one === null || other === null || one.length !== other.length) return 0;
  const cosine = one.reduce((sum, part, k) => sum + part * (other[k] ?? 0), 0);
  return (Math.acos(Math.min(1, Math.max(-1, cosine))) * 180) / Math.PI;
};

/** Level on one axis alone, or on all of them together. */
const levelOn = (
  { prepared, history }: Observed,
  axis: number | 'all',
  frequencyHz: number,
  closely = false,
): OrderLevel | null => {
  const pieces = prepared.pieces.map((piece) => ({
    ...piece,
    axes: axis === 'all' ? piece.axes : piece.axes.slice(axis, axis + 1),
  }));
  const readings = orderReadings({ ...prepared, pieces }, frequencyHz, history, BLOCK_S, closely);
  return readings && levelOf(readings);
};

/** A weight in the right place may all but hide the order: then it is read where it is strongest near the first run's. */
const strongestNear = (run: Observed, axis: number | 'all', aroundHz: number): number => {
  const reachHz = SAME_SPEED_SHARE * aroundHz;
  let best = { frequencyHz: aroundHz, power: -Infinity };
  for (let frequencyHz = aroundHz - reachHz; frequencyHz <= aroundHz + reachHz; frequencyHz += SEARCH_STEP_HZ) {
    const power = levelOn(run, axis, frequencyHz)?.power ?? -Infinity;
    if (power > best.power) best = { frequencyHz, power };
  }
  return best.frequencyHz;
};

export interface PlacedLevel {
  readonly frequencyHz: number;
  readonly level: OrderLevel;
}

/**
 * Amplitudes at the speed of the first run, with the slow wander of the level, the law of speed and what one run
 * differs from the next in their uncertainties; all runs together tell how much the level wanders.
 */
export function trialAmplitudes(read: readonly PlacedLevel[]): Omit<TrialLevel, 'run'>[] {
  const placed = read.map((one) => ({ ...one, level: withNoiseUnder(one.level, SPEED_LAWS) }));
  const clear = placed.map(({ level }) => isSeen(level, true));
  const cases = levelCases(
    placed.filter((_, k) => clear[k]).map(({ level }) => level),
    SPEED_LAWS,
  );
  let index = -1;
  return placed.map(({ frequencyHz, level }, k) => {
    if (!clear[k]) return { frequencyHz, ...hiddenAmplitude(level) };
    index += 1;
    const own = index;
    const slower = Math.log((placed[0]?.frequencyHz ?? frequencyHz) / frequencyHz);
    // ln of the amplitude: half the power's, and the exponent times ln of the speed.
    const parts = cases.map(({ weight, relative, exponent, covariance }) => {
      const share = Math.max(relative[own] ?? 1, LEAST_SHARE);
      const [levelVariance = 0, mixed = 0] = [covariance[own]?.[own], covariance[own]?.at(-1)];
      return {
        weight,
        mean: Math.log(level.power * share) / 2 + exponent * slower,
        variance:
          levelVariance / (4 * share ** 2) + (mixed * slower) / share + (covariance.at(-1)?.at(-1) ?? 0) * slower ** 2,
      };
    });
    const mean = parts.reduce((sum, part) => sum + part.weight * part.mean, 0);
    const variance = parts.reduce((sum, part) => sum + part.weight * (part.variance + (part.mean - mean) ** 2), 0);
    const amplitudeMps2 = Math.exp(mean);
    return { frequencyHz, amplitudeMps2, amplitudeSdMps2: amplitudeMps2 * Math.hypot(Math.sqrt(variance), RUN_SHARE) };
  });
}

/** Where noise hides the order its uncertainty is what the noise allows. */
const hiddenAmplitude = ({
  amplitudeMps2,
  powerSd,
}: OrderLevel): Pick<TrialLevel, 'amplitudeMps2' | 'amplitudeSdMps2'> => ({
  amplitudeMps2,
  amplitudeSdMps2: powerSd === 0 ? 0 : powerSd / (2 * Math.max(amplitudeMps2, Math.sqrt(powerSd))),
});

const NO_RUN: Problem = {
  code: 'runs-missing',
  message: 'There is no recording of the run as found.',
  remedy: 'Record the run as found and one for each place of the trial weight.',
};

const sensorTurned = (angleDeg: number): Note => ({
  code: 'sensor-turned',
  severity: 'warning',
  text: `Between the runs the sensor was turned, by ${angleDeg.toFixed(0)}° as gravity tells: the levels of all axes together are used, which hold for one plane of unbalance. Leave it fixed in its place for all runs.`,
});

const otherSpeed = (run: string, ratio: number): Note => ({
  code: 'other-speed',
  severity: 'warning',
  text: `${run} was made ${(100 * Math.abs(ratio - 1)).toFixed(1)} % ${ratio > 1 ? 'faster' : 'slower'} than the run as found; unbalance grows with speed squared, so repeat it at one speed.`,
});

const weak = (run: string, label: string): Note => ({
  code: 'order-weak',
  severity: 'info',
  text: `${label} is hardly to be seen in ${run}; its level was read where it is strongest near the speed of the run as found.`,
});
