/** A shaft with an unbalance nobody sees, a clamp, and the four runs that find where the weight belongs. */
import type { AmplitudeBalance } from '../../core/driveline/balance/balance-amplitude.ts';
import { balanceByAmplitudes } from '../../core/driveline/balance/balance-amplitude.ts';
import type { Complex } from '../../core/complex.ts';
import { add, multiply, polar, size } from '../../core/complex.ts';
import type { Result } from '../../core/note.ts';
import { randomSource } from '../../core/simulate/random.ts';

/** Where trial and clamp weights go, degrees. */
export const PLACES_DEG = [0, 120, 240] as const;

export interface HiddenShaft {
  /** Unbalance as a weight at the clamp's radius, g. */
  readonly weightG: number;
  readonly angleDeg: number;
  /** Shake of one gram, mm/s, and by how much it lags the weight: what the body makes of it. */
  readonly mmpsPerG: number;
  readonly lagDeg: number;
  readonly seed: number;
}

/** Another shaft for each seed. */
export function hiddenShaft(seed: number): HiddenShaft {
  const random = randomSource(seed, 'balance lesson');
  return {
    weightG: Math.round(random.between(8, 26)),
    angleDeg: Math.round(random.between(0, 36)) * 10,
    mmpsPerG: random.between(0.1, 0.35),
    lagDeg: random.between(20, 160),
    seed,
  };
}

export interface Clamp {
  readonly weightG: number;
  readonly angleDeg: number;
}

/** Unbalance and clamp as one weight, g. */
export const together = (shaft: HiddenShaft, clamp: Clamp): Complex =>
  add(polar(shaft.weightG, shaft.angleDeg), polar(clamp.weightG, clamp.angleDeg));

/** Level a sensor reads, mm/s. */
export const levelOf = (shaft: HiddenShaft, clamp: Clamp): number =>
  size(multiply(together(shaft, clamp), polar(shaft.mmpsPerG, -shaft.lagDeg)));

export interface FourRuns {
  readonly baseline: number;
  /** Level with the trial weight at each of PLACES_DEG. */
  readonly withTrial: readonly number[];
  readonly answer: Result<AmplitudeBalance>;
}

/** @param errorShare Standard deviation of each reading as a share of it. The same shaft gives the same errors. */
export function fourRuns(shaft: HiddenShaft, trialG: number, errorShare: number): FourRuns {
  const random = randomSource(shaft.seed, 'reading errors');
  const read = (level: number): number => level * Math.max(0.05, 1 + errorShare * random.normal());
  const baseline = read(levelOf(shaft, { weightG: 0, angleDeg: 0 }));
  const withTrial = PLACES_DEG.map((angleDeg) => read(levelOf(shaft, { weightG: trialG, angleDeg })));
  const answer = balanceByAmplitudes({
    baseline: { amplitude: baseline, ...(errorShare > 0 && { amplitudeSd: errorShare * baseline }) },
    trialWeight: trialG,
    positions: PLACES_DEG.map((angleDeg, index) => {
      const amplitude = withTrial[index] ?? 0;
      return { angleDeg, amplitude, ...(errorShare > 0 && { amplitudeSd: errorShare * amplitude }) };
    }),
  });
  return { baseline, withTrial, answer };
}
