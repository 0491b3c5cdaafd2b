/** Search for the least change of one adjustment, or of two in shop steps, that makes an attempt succeed. */
import type { AngleChange, AngleChangeKind } from './angle-change.ts';

/** One thing a shop can change, how far, and in what steps. */
export interface Adjustment {
  readonly kind: AngleChangeKind;
  readonly piece?: number;
  readonly unit: '°' | 'mm';
  readonly range: number;
  /** What shims, plates and splines come in. */
  readonly step: number;
}

/** How the driveline would stand after some changes. */
export interface Attempt {
  readonly residualDeg: number;
  readonly residualRadPerS2: number;
  /** What the change would make worse than its limit allows; such a change does not count as an answer. */
  readonly spoils: readonly ('inertia' | 'least-angle')[];
  /** What would be outside its limit, whether the change made it so or not. */
  readonly stillOutside: readonly string[];
  /** True where the joints cancel within the limits and nothing else is spoiled. */
  readonly reachesLimit: boolean;
}
export type TryChanges = (changes: readonly AngleChange[]) => Attempt;

export interface WhatIf extends Attempt {
  readonly changes: readonly AngleChange[];
  readonly units: readonly ('°' | 'mm')[];
  /** How many shop steps (half a degree of shim, a 3 mm plate, a spline tooth) it takes; smaller is easier. */
  readonly steps: number;
  /** The next whole shop step that also does it; null where none does. */
  readonly practicalAmount: number | null;
}

/** Search grid as a share of the range; between grid points the crossing is bisected. */
const GRID = 1 / 120;

const changeOf = ({ kind, piece }: Adjustment, amount: number): AngleChange =>
  piece === undefined ? { kind, amount } : { kind, amount, piece };

/**
 * Least change of one adjustment that succeeds, to a ten-thousandth of the grid; where none does, the one that leaves
 * least. Searched outward from nothing, so that a far cheaper answer is not missed for a far one.
 */
export const leastChange = (adjustment: Adjustment, attempt: TryChanges): WhatIf => {
  const grid = adjustment.range * GRID;
  const tryOne = (amount: number): Attempt => attempt([changeOf(adjustment, amount)]);
  const answer = (amount: number, outcome: Attempt): WhatIf => ({
    changes: [changeOf(adjustment, amount)],
    units: [adjustment.unit],
    steps: Math.abs(amount) / adjustment.step,
    practicalAmount: practical(adjustment.step, amount, tryOne),
    ...outcome,
  });
  let best = { amount: 0, outcome: attempt([]) };
  for (let count = 1; count * GRID <= 1 + GRID / 2; count++) {
    for (const amount of [count * grid, -count * grid]) {
      const outcome = tryOne(amount);
      if (outcome.reachesLimit) {
        const bad = amount - Math.sign(amount) * grid;
        const least = bisect(bad, amount, (value) => tryOne(value).reachesLimit);
        return answer(least, tryOne(least));
      }
      if (outcome.residualRadPerS2 < best.outcome.residualRadPerS2) best = { amount, outcome };
    }
  }
  return answer(best.amount, best.outcome);
};

const practical = (step: number, amount: number, tryOne: (amount: number) => Attempt): number | null => {
  const whole = Math.sign(amount) * Math.ceil(Math.abs(amount) / step - 1e-9) * step;
  return amount !== 0 && tryOne(whole).reachesLimit ? whole : null;
};

/** The good value nearest the bad one. */
const bisect = (bad: number, good: number, isGood: (value: number) => boolean): number => {
  let [low, high] = [bad, good];
  for (let round = 0; round < 14; round++) {
    const middle = (low + high) / 2;
    if (isGood(middle)) high = middle;
    else low = middle;
  }
  return high;
};

/** Most shop steps tried of each of two adjustments. */
const MOST_STEPS = 14;

/** Two adjustments together, in whole shop steps, with the fewest steps in all; null where no pair succeeds. */
export const leastPair = (adjustments: readonly Adjustment[], attempt: TryChanges): WhatIf | null => {
  const pairs = adjustments.flatMap((one, index) => adjustments.slice(index + 1).map((other) => [one, other] as const));
  for (let steps = 2; steps <= 2 * MOST_STEPS; steps++) {
    let best: WhatIf | null = null;
    for (const [one, other] of pairs) {
      for (const [countOne, countOther] of splitsOf(steps, one, other)) {
        const changes = [changeOf(one, countOne * one.step), changeOf(other, countOther * other.step)];
        const outcome = attempt(changes);
        if (!outcome.reachesLimit || (best !== null && outcome.residualRadPerS2 >= best.residualRadPerS2)) continue;
        best = { changes, units: [one.unit, other.unit], steps, practicalAmount: null, ...outcome };
      }
    }
    if (best !== null) return best;
  }
  return null;
};

/** Ways to share so many steps between two adjustments, in either sense each, within their ranges. */
const splitsOf = (steps: number, one: Adjustment, other: Adjustment): (readonly [number, number])[] => {
  const most = (adjustment: Adjustment) => Math.min(Math.floor(adjustment.range / adjustment.step), MOST_STEPS);
  const splits: (readonly [number, number])[] = [];
  for (let first = Math.max(1, steps - most(other)); first <= Math.min(steps - 1, most(one)); first++) {
    const second = steps - first;
    splits.push([first, second], [first, -second], [-first, second], [-first, -second]);
  }
  return splits;
};
