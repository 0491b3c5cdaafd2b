/**
 * Balancing without phase: one run as found, then the same trial weight at three or more positions, amplitudes only.
 * Aₖ² = A₀² + T² + 2·A₀·T·cos(θ − θₖ), T being the trial's own effect and θ where it adds in full (derived). The
 * graphical form with circles is due to I. J. Somervaille, Engineering (London), 1954 (from memory).
 */
import type { Note, Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import type { Complex } from '../../complex.ts';
import { angleDegOf, polar, scale } from '../../complex.ts';
import { radFromDeg } from '../../units.ts';
import type { AmplitudeBalanceInput } from './amplitude-trials.ts';
import { amplitudeNotes, amplitudeProblem, isConsistent, isUsable } from './amplitude-checks.ts';
import { rivalOf } from './balance-ambiguity.ts';
import { leastSquares } from '../least-squares.ts';
import type { UncertainVector } from './propagate.ts';
import { propagate } from './propagate.ts';

export interface AmplitudeBalance {
  /** Weight to add, in the trial weight's unit, and where, in the sense of the positions' angles. */
  readonly correction: UncertainVector;
  /** Effect of the trial weight alone, in the amplitude's unit, and the angle at which it adds in full, degrees. */
  readonly trialEffect: number;
  readonly trialAngleDeg: number;
  /** 1 where the readings fit one rotor; reject outside about 0.8..1.2 (common practice, no source). */
  readonly consistency: number;
  /** Another correction that the readings fit almost as well; null where there is none. */
  readonly rival: { readonly weight: number; readonly angleDeg: number } | null;
  /** False where the runs are too poor for a weight to be fitted by them: then the correction is not to be told. */
  readonly usable: boolean;
  readonly verdict: 'clear' | 'ambiguous' | 'inconsistent';
  readonly notes: readonly Note[];
}

interface Solved {
  readonly effect: number;
  readonly angleDeg: number;
  readonly consistency: number;
  readonly correction: Complex;
}

/** Solve Aₖ² − A₀² = p + 2q·cos θₖ + 2r·sin θₖ by least squares; T = √p, θ = atan2(r, q). */
const solve = (
  baseline: number,
  amplitudes: readonly number[],
  anglesDeg: readonly number[],
  trialWeight: number,
): Solved | null => {
  const rows = anglesDeg.map((angle) => [1, 2 * Math.cos(radFromDeg(angle)), 2 * Math.sin(radFromDeg(angle))]);
  const fit = leastSquares(
    rows,
    amplitudes.map((amplitude) => amplitude ** 2 - baseline ** 2),
  );
  const [squared = 0, cosine = 0, sine = 0] = fit?.solution ?? [];
  if (fit === null || squared <= 0) return null;
  const effect = Math.sqrt(squared);
  const angleDeg = angleDegOf({ re: cosine, im: sine });
  return {
    effect,
    angleDeg,
    consistency: Math.hypot(cosine, sine) / (baseline * effect),
    correction: scale(polar((trialWeight * baseline) / effect, angleDeg), -1),
  };
};

/**
 * Correction from amplitudes.
 * @returns a problem for fewer than three different positions, or amplitudes no rotor can have
 */
export const balanceByAmplitudes = (input: AmplitudeBalanceInput): Result<AmplitudeBalance> => {
  const { baseline, trialWeight, positions } = input;
  const wrong = amplitudeProblem(input);
  if (wrong !== null) return failure(wrong);
  const angles = positions.map(({ angleDeg }) => angleDeg);
  const readings = [baseline, ...positions];
  const solved = solve(
    baseline.amplitude,
    positions.map(({ amplitude }) => amplitude),
    angles,
    trialWeight,
  );
  if (solved === null) {
    return failure({
      code: 'amplitudes-contradict',
      key: 'positions',
      message: 'No rotor answers one trial weight with these amplitudes: on average they should rise, and they fall.',
      remedy: 'Repeat the runs at one steady speed; check that the same trial weight was used in each.',
    });
  }
  const correction = propagate(
    ([before, ...after]) => {
      const again = solve(before!, after, angles, trialWeight);
      return again === null ? null : [again.correction];
    },
    readings.map(({ amplitude }) => amplitude),
    readings.map(({ amplitudeSd }) => amplitudeSd),
  )![0]!;
  const withoutSd = readings.filter(({ amplitudeSd = 0 }) => !(amplitudeSd > 0)).length;
  const sdKnown = withoutSd < readings.length;
  const rival = rivalOf(input, { effect: solved.effect, angleDeg: solved.angleDeg });
  return success({
    correction,
    trialEffect: solved.effect,
    trialAngleDeg: solved.angleDeg,
    consistency: solved.consistency,
    rival,
    usable: isUsable({ consistency: solved.consistency, correction }, trialWeight),
    verdict: rival !== null ? 'ambiguous' : isConsistent(solved.consistency) ? 'clear' : 'inconsistent',
    notes: amplitudeNotes({
      ...solved,
      baseline: baseline.amplitude,
      correction,
      ambiguous: rival !== null,
      sdKnown,
      withoutSd,
    }),
  });
};
