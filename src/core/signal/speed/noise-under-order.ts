/**
 * The noise under an order is read beside it. Where the order stands on a resonance that the road shakes there is more
 * under it than beside it, and read as the order's own it would fake changes from one road to the next. The blocks tell:
 * noise scatters their powers from one to the next, a level that wanders does so slowly, a steady one not at all (the
 * moments of a line in noise, S. O. Rice, Mathematical analysis of random noise, Bell System Technical Journal 24, 1945).
 */
import { sharesOf } from '../numeric/log-weights.ts';
import { levelEvidence } from './level-wander.ts';
import type { SpeedLaw } from './level-wander.ts';
import type { OrderLevel } from './order-level.ts';

/**
 * Noise at the order over that read beside it, and how likely that is before the blocks are looked at: as beside it, where
 * the order wanders into what is read near it; else as near it, or more where the resonance is narrow. Judgment.
 */
const AS_BESIDE = 0.3;
const TIMES_NEAR = [
  { times: 1, weight: 0.5 },
  { times: 1.5, weight: 0.12 },
  { times: 2.5, weight: 0.05 },
  { times: 5, weight: 0.03 },
] as const;
/** This share of the mean power at least is the order's, or nothing would be left to weigh. */
const LEAST_ORDER = 0.05;

/**
 * The level with as much noise taken out as its blocks show to be under it, the doubt about that in its uncertainties.
 * One that noise hides anyway is given back as it is.
 */
export function withNoiseUnder(level: OrderLevel, laws: readonly SpeedLaw[]): OrderLevel {
  const { power, noisePower, nearNoisePower } = level;
  const mean = power + noisePower;
  const near = Math.max(1, (nearNoisePower ?? noisePower) / noisePower);
  const guesses = [
    { times: 1, weight: AS_BESIDE },
    ...TIMES_NEAR.map(({ times, weight }) => ({ times: near * times, weight })),
  ];
  const most = ((1 - LEAST_ORDER) * mean) / noisePower;
  if (!(most > 1)) return level;
  const cases = guesses.map(({ times, weight }) => {
    const taken = Math.min(times, most);
    return { times: taken, logWeight: Math.log(weight) + levelEvidence({ ...level, ...taking(level, taken) }, laws) };
  });
  const weights = sharesOf(cases.map(({ logWeight }) => logWeight));
  const meanOf = (of: (times: number) => number): number =>
    cases.reduce((total, { times }, k) => total + weights[k]! * of(times), 0);
  const times = meanOf((one) => one);
  const timesSd = Math.sqrt(meanOf((one) => (one - times) ** 2));
  const noisePowerSd = Math.hypot(times * level.noisePowerSd, timesSd * noisePower);
  const taken = taking(level, times);
  return {
    ...level,
    ...taken,
    amplitudeMps2: Math.sqrt(Math.max(0, taken.power)),
    noisePowerSd,
    powerSd: Math.sqrt(level.powerSd ** 2 - level.noisePowerSd ** 2 + noisePowerSd ** 2),
    blockNoises: level.blockNoises.map((noise) => times * noise),
  };
}

const taking = ({ power, noisePower }: OrderLevel, times: number): Pick<OrderLevel, 'power' | 'noisePower'> => ({
  power: power - (times - 1) * noisePower,
  noisePower: times * noisePower,
});
