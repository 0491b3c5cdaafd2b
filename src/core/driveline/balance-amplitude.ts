/**
 * Balancing without phase: one run as found, then the same trial weight at three or more positions, amplitudes only.
 * Aₖ² = A₀² + T² + 2·A₀·T·cos(θ − θₖ), T being the trial's own effect and θ where it adds in full (derived). The
 * graphical form with circles is due to I. J. Somervaille, Engineering (London), 1954 (from memory).
 */
import type { Note, Result } from '../note.ts';
import { failure, success } from '../note.ts';
import type { Complex } from './complex.ts';
import { angleDegOf, polar, scale } from './complex.ts';
import { radFromDeg } from '../units.ts';
import { rivalOf } from './balance-ambiguity.ts';
import { leastSquares } from './least-squares.ts';
import type { AmplitudeReading } from './measurement.ts';
import type { UncertainVector } from './propagate.ts';
import { propagate } from './propagate.ts';

export interface TrialPosition extends AmplitudeReading {
  readonly angleDeg: number;
}

export interface AmplitudeBalanceInput {
  readonly baseline: AmplitudeReading;
  readonly trialWeight: number;
  readonly positions: readonly TrialPosition[];
}

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

/** Consistency outside these is rejected, and a trial whose effect is a smaller share is too light (as above). */
const CONSISTENT: readonly [number, number] = [0.8, 1.2];
const LIGHT_SHARE = 0.3;

/**
 * Correction from amplitudes.
 * @returns a problem for fewer than three different positions, or amplitudes no rotor can have
 */
export const balanceByAmplitudes = (input: AmplitudeBalanceInput): Result<AmplitudeBalance> => {
  const { baseline, trialWeight, positions } = input;
  const angles = positions.map(({ angleDeg }) => angleDeg);
  const readings = [baseline, ...positions];
  const numbers = [trialWeight, ...angles, ...readings.map(({ amplitude }) => amplitude)];
  if (!numbers.every(Number.isFinite) || !(trialWeight > 0) || !readings.every(({ amplitude }) => amplitude >= 0)) {
    return failure({
      code: 'reading-missing',
      key: 'positions',
      message: 'A trial weight, position or amplitude is missing or below zero.',
      remedy: 'Give the trial weight, and for each position its angle in degrees and the amplitude read there.',
    });
  }
  const different = new Set(angles.map((angle) => Math.round((((angle % 360) + 360) % 360) * 1e6))).size;
  if (different < 3 || baseline.amplitude === 0) {
    return failure({
      code: 'too-few-positions',
      key: 'positions',
      message:
        baseline.amplitude === 0
          ? 'The run as found shows no vibration, so there is nothing to correct.'
          : `${different} trial positions leave two answers, mirror images of each other.`,
      remedy:
        baseline.amplitude === 0
          ? 'Check the amplitude of the run as found.'
          : 'Make one more run with the same trial weight in a third position, well away from the others.',
    });
  }
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
  const rival = rivalOf(input, { effect: solved.effect, angleDeg: solved.angleDeg });
  const inconsistent = solved.consistency < CONSISTENT[0] || solved.consistency > CONSISTENT[1];
  return success({
    correction,
    trialEffect: solved.effect,
    trialAngleDeg: solved.angleDeg,
    consistency: solved.consistency,
    rival,
    verdict: rival !== null ? 'ambiguous' : inconsistent ? 'inconsistent' : 'clear',
    notes: notesOn(solved, baseline.amplitude, correction, rival !== null, inconsistent),
  });
};

const notesOn = (
  { effect, consistency }: Solved,
  baseline: number,
  { sizeSd, angleSdDeg }: UncertainVector,
  ambiguous: boolean,
  inconsistent: boolean,
): Note[] => {
  const notes: Note[] = [];
  const warn = (code: string, text: string): void => void notes.push({ code, severity: 'warning', text });
  if (inconsistent) {
    warn(
      'inconsistent-runs',
      `The runs fit one rotor with a consistency of ${consistency.toFixed(2)}, where 1 is perfect: speed or weight differed between them. Repeat before correcting.`,
    );
  }
  if (ambiguous)
    warn('two-answers', 'Two corrections fit these runs almost alike. Try one; if it gets worse, use the other.');
  if (effect < LIGHT_SHARE * baseline) {
    warn('light-trial', 'The trial weight had little effect. A heavier one gives a surer answer.');
  }
  if (sizeSd === null) {
    notes.push({
      code: 'no-uncertainty',
      severity: 'info',
      text: 'The amplitudes came without an uncertainty, so the answer has none.',
    });
  } else if ((angleSdDeg ?? 0) > 30) {
    warn(
      'unsure-angle',
      'The amplitudes are too unsure to say where the weight goes. Record longer, or use a heavier trial.',
    );
  }
  return notes;
};
