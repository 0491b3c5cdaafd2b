/**
 * Balancing with phase, by influence coefficients, one plane or several; least squares where there are more readings
 * than planes (T. P. Goodman, "A Least-Squares Method for Computing Balance Corrections", ASME J. Eng. Ind. 86, 1964,
 * from memory). α = (V − V₀)/W for each trial, correction W = −A⁺·V₀.
 */
import type { Note, Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import type { Complex } from '../../complex.ts';
import { add, angleDegOf, conjugate, multiply, polar, scale, size, subtract, ZERO } from '../../complex.ts';
import { leastSquares } from '../least-squares.ts';
import type { PhasorReading, TrialRun } from '../measurement.ts';
import { phasorProblem, trialNotes, trialsSuffice } from './balance-checks.ts';
import type { UncertainVector } from './propagate.ts';
import { propagate } from './propagate.ts';

export interface PhasorBalanceInput {
  readonly baseline: readonly PhasorReading[];
  readonly trials: readonly TrialRun[];
}

export interface PhasorBalance {
  /** Weight to add in each plane, in the trial weight's unit, angles in the sense of the readings. */
  readonly corrections: readonly UncertainVector[];
  /** Response of each reading (outer) to a unit weight at 0° in each plane (inner). */
  readonly influence: readonly (readonly { readonly size: number; readonly angleDeg: number }[])[];
  /** What each reading should show after the correction. */
  readonly predictedRest: readonly { readonly amplitude: number; readonly phaseDeg: number }[];
  /** How far errors may grow on the way to the answer; planes that act alike make it large. */
  readonly condition: number;
  /** False where the trials are too poor for a weight to be fitted by them: then the corrections are not to be told. */
  readonly usable: boolean;
  readonly notes: readonly Note[];
}

/** Influence coefficients, reading by plane. Several trials in one plane are averaged, weighted by weight squared. */
const influenceOf = (input: PhasorBalanceInput, planes: number): Complex[][] =>
  input.baseline.map((reading, index) => {
    const before = polar(reading.amplitude, reading.phaseDeg);
    return Array.from({ length: planes }, (_, plane) => {
      let top = ZERO;
      let bottom = 0;
      for (const trial of input.trials.filter((one) => one.plane === plane)) {
        const after = trial.readings[index]!;
        const weight = polar(trial.weight, trial.angleDeg);
        top = add(top, multiply(subtract(polar(after.amplitude, after.phaseDeg), before), conjugate(weight)));
        bottom += trial.weight ** 2;
      }
      return scale(top, 1 / bottom);
    });
  });

interface Solved {
  readonly influence: readonly (readonly Complex[])[];
  readonly weights: readonly Complex[];
  readonly condition: number;
}

const solve = (input: PhasorBalanceInput, planes: number): Solved | null => {
  const influence = influenceOf(input, planes);
  // Complex equations as twice as many real ones.
  const rows = influence.flatMap((row) => [
    row.flatMap(({ re, im }) => [re, -im]),
    row.flatMap(({ re, im }) => [im, re]),
  ]);
  const values = input.baseline.flatMap(({ amplitude, phaseDeg }) => {
    const { re, im } = polar(amplitude, phaseDeg);
    return [-re, -im];
  });
  const fit = leastSquares(rows, values);
  if (fit === null) return null;
  const weights = Array.from({ length: planes }, (_, plane) => {
    return { re: fit.solution[2 * plane]!, im: fit.solution[2 * plane + 1]! };
  });
  return { influence, weights, condition: fit.condition };
};

/**
 * Correction weights from a run as found and trial runs.
 * Trial weights are taken off before the correction goes on, unless marked as left on.
 */
export const balanceByPhasors = (input: PhasorBalanceInput): Result<PhasorBalance> => {
  const planes = Math.max(0, ...input.trials.map(({ plane }) => plane + 1));
  const wrong = phasorProblem(input, planes);
  if (wrong !== null) return failure(wrong);
  const solved = solve(input, planes);
  if (solved === null) {
    return failure({
      code: 'trials-tell-nothing',
      key: 'trials',
      message: 'The trial weights changed nothing, or two planes act alike, so no correction can be worked out.',
      remedy: 'Use a heavier trial weight or planes further apart, and check that phase and amplitude were read right.',
    });
  }
  const leftOn = input.trials.reduce<Complex[]>(
    (sums, trial) => {
      if (trial.leftOn) sums[trial.plane] = add(sums[trial.plane]!, polar(trial.weight, trial.angleDeg));
      return sums;
    },
    Array.from({ length: planes }, () => ZERO),
  );
  const all = [...input.baseline, ...input.trials.flatMap(({ readings }) => readings)];
  const corrections = propagate(
    (readings) => {
      const again = solve(withReadings(input, readings), planes);
      return again?.weights.map((weight, plane) => subtract(weight, leftOn[plane]!)) ?? null;
    },
    all.flatMap(({ amplitude, phaseDeg }) => [amplitude, phaseDeg]),
    all.flatMap(({ amplitudeSd, phaseSdDeg }) => [amplitudeSd, phaseSdDeg]),
  );
  if (corrections === null) throw new Error('solved above, so it must solve again');
  const rest = input.baseline.map(({ amplitude, phaseDeg }, index) =>
    solved.weights.reduce(
      (sum, weight, plane) => add(sum, multiply(solved.influence[index]![plane]!, weight)),
      polar(amplitude, phaseDeg),
    ),
  );
  return success({
    corrections,
    influence: solved.influence.map((row) => row.map((value) => ({ size: size(value), angleDeg: angleDegOf(value) }))),
    predictedRest: rest.map((value) => ({ amplitude: size(value), phaseDeg: angleDegOf(value) })),
    condition: solved.condition,
    usable: trialsSuffice(input, solved.weights.map(size)),
    notes: trialNotes(input, solved.condition),
  });
};

/** The input with amplitude, phase, amplitude, phase … replaced in order: baseline, then trial by trial. */
const withReadings = (input: PhasorBalanceInput, values: readonly number[]): PhasorBalanceInput => {
  let next = 0;
  const replaced = (readings: readonly PhasorReading[]): PhasorReading[] =>
    readings.map(() => ({ amplitude: values[next++]!, phaseDeg: values[next++]! }));
  const baseline = replaced(input.baseline);
  return { baseline, trials: input.trials.map((trial) => ({ ...trial, readings: replaced(trial.readings) })) };
};
