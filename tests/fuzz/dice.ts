/** Seeded choices for generated input. */
import { seededRandom } from '../support/random.ts';

export interface Dice {
  readonly uniform: () => number;
  /** Whole number from 0 to below n. */
  readonly below: (n: number) => number;
  readonly pick: <T>(list: readonly T[]) => T;
  readonly chance: (share: number) => boolean;
}

export function diceOf(seed: number): Dice {
  const { uniform } = seededRandom(seed);
  const below = (n: number): number => Math.floor(uniform() * n);
  return { uniform, below, pick: (list) => list[below(list.length)]!, chance: (share) => uniform() < share };
}

/** Seed of one case: FNV-1a over the run's seed, the target's name and the case's number. */
export function caseSeed(seed: number, target: string, index: number): number {
  let hash = 0x811c9dc5;
  for (const char of `${seed}/${target}/${index}`) hash = Math.imul(hash ^ char.codePointAt(0)!, 0x01000193);
  return hash >>> 0;
}
