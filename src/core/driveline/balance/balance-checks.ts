/** What can be wrong with balance runs, and what to say of weak ones. */
import type { Note, Problem } from '../../note.ts';
import { angleBetweenDeg, polar, size, subtract } from '../../complex.ts';
import type { PhasorReading, TrialRun } from '../measurement.ts';

interface PhasorRuns {
  readonly baseline: readonly PhasorReading[];
  readonly trials: readonly TrialRun[];
}

/** More planes than any rotor under a vehicle has, and more readings than anybody takes. */
const MOST_PLANES = 8;
const MOST_READINGS = 64;

/** The first thing wrong with runs with phase, or null. */
export const phasorProblem = ({ baseline, trials }: PhasorRuns, planes: number): Problem | null => {
  if (planes > MOST_PLANES || !trials.every(({ plane }) => Number.isInteger(plane) && plane >= 0)) {
    return {
      code: 'plane-not-known',
      key: 'trials',
      message: `A trial run names a plane that is not one of the first ${MOST_PLANES}.`,
      remedy: 'Count the correction planes from the first one on; one or two are usual.',
    };
  }
  if (baseline.length > MOST_READINGS || trials.length > MOST_READINGS) {
    return {
      code: 'too-many-readings',
      key: 'trials',
      message: `${trials.length} trial runs of ${baseline.length} readings were given; ${MOST_READINGS} of each are the most.`,
      remedy: 'Give one reading a sensor in each run, and one or two runs a plane.',
    };
  }
  const missing = Array.from({ length: planes }, (_, plane) => plane).find(
    (plane) => !trials.some((trial) => trial.plane === plane),
  );
  if (baseline.length === 0 || trials.length === 0 || missing !== undefined) {
    return {
      code: 'runs-missing',
      key: 'trials',
      message:
        missing === undefined
          ? 'Balancing needs a run as found and at least one run with a trial weight.'
          : `There is no trial run with a weight in plane ${missing + 1}.`,
      remedy: 'Make one run as found and one run for each plane with a known trial weight in it.',
    };
  }
  if (baseline.length < planes) {
    return {
      code: 'too-few-readings',
      key: 'baseline',
      message: `${planes} planes cannot be corrected from ${baseline.length} reading${baseline.length === 1 ? '' : 's'} a run.`,
      remedy: 'Read vibration at as many places as there are planes, or correct fewer planes.',
    };
  }
  const odd = trials.findIndex((trial) => trial.readings.length !== baseline.length);
  const numbers = [...baseline, ...trials.flatMap((trial) => trial.readings)].flatMap((reading) => [
    reading.amplitude,
    reading.phaseDeg,
  ]);
  const weights = trials.flatMap(({ weight, angleDeg }) => [weight, angleDeg]);
  if (odd >= 0 || ![...numbers, ...weights].every(Number.isFinite)) {
    return {
      code: 'reading-missing',
      key: odd >= 0 ? `trials[${odd}].readings` : 'trials',
      message:
        odd >= 0
          ? `Trial run ${odd + 1} does not have as many readings as the run as found.`
          : 'An amplitude, phase, weight or angle is not a number.',
      remedy: 'Give amplitude and phase for every place in every run, in the same order.',
    };
  }
  const weightless = trials.findIndex(({ weight }) => weight <= 0);
  if (weightless >= 0) {
    return {
      code: 'weight-not-positive',
      key: `trials[${weightless}].weight`,
      message: 'A trial weight is not above zero.',
      remedy: 'Give weights as sizes; a direction goes into the angle.',
    };
  }
  const negative = [baseline, ...trials.map(({ readings }) => readings)].findIndex((readings) =>
    readings.some(({ amplitude }) => amplitude < 0),
  );
  if (negative >= 0) {
    return {
      code: 'amplitude-below-zero',
      key: negative === 0 ? 'baseline' : `trials[${negative - 1}].readings`,
      message: `An amplitude of ${negative === 0 ? 'the run as found' : `trial run ${negative}`} is below zero.`,
      remedy: 'Give amplitudes as sizes; the direction goes into the phase.',
    };
  }
  return null;
};

/** A trial run should change amplitude by 30 % or phase by 30° (common practice, no source). */
const WEAK_AMPLITUDE_SHARE = 0.3;
const WEAK_PHASE_DEG = 30;
/** Beyond this the planes act so much alike that reading errors grow manyfold; judgment. */
const POOR_CONDITION = 20;

/** Notes on trials that changed little, and on planes that act alike. */
export const trialNotes = ({ baseline, trials }: PhasorRuns, condition: number): Note[] => {
  const notes: Note[] = [];
  for (const [index, trial] of trials.entries()) {
    const moved = trial.readings.some((reading, at) => {
      const before = baseline[at]!;
      const difference = Math.abs(reading.amplitude - before.amplitude);
      const turned = angleBetweenDeg(reading.phaseDeg, before.phaseDeg) >= WEAK_PHASE_DEG;
      return turned || difference >= WEAK_AMPLITUDE_SHARE * before.amplitude;
    });
    const buried = trial.readings.every((reading, at) => isBuried(baseline[at]!, reading));
    if (moved && !buried) continue;
    notes.push({
      code: 'weak-trial',
      severity: 'warning',
      text: `Trial run ${index + 1} changed the vibration little. Use a heavier trial weight, or move it, for a sure answer.`,
    });
  }
  if (condition > POOR_CONDITION) {
    notes.push({
      code: 'planes-alike',
      severity: 'warning',
      text: 'The planes act almost alike on what was read, so small reading errors make large weights. Correct one plane first.',
    });
  }
  return notes;
};

/** A correction of more trial weights than this rests on a change too small to reckon with; judgment. */
const MOST_TRIALS = 10;

/** True where a weight may be named: each trial stands out of its readings, and no plane asks for many times its trial. */
export const trialsSuffice = ({ baseline, trials }: PhasorRuns, sizes: readonly number[]): boolean =>
  trials.every(({ readings }) => !readings.every((reading, at) => isBuried(baseline[at]!, reading))) &&
  sizes.every((size, plane) => {
    const weights = trials.filter((trial) => trial.plane === plane).map(({ weight }) => weight);
    return size <= MOST_TRIALS * Math.max(...weights);
  });

/** True where the change is under three standard uncertainties. */
const isBuried = (before: PhasorReading, after: PhasorReading): boolean => {
  const sd = Math.hypot(before.amplitudeSd ?? 0, after.amplitudeSd ?? 0);
  const change = size(subtract(polar(after.amplitude, after.phaseDeg), polar(before.amplitude, before.phaseDeg)));
  return sd > 0 && change < 3 * sd;
};
