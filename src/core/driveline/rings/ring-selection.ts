/** The retaining rings, out of those at hand, that centre a joint and keep its end play. */
import type { Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import type { LimitOverrides } from '../limits/limit.ts';
import { limitOf } from '../limits/limit.ts';
import type { RingAxis } from '../measurement.ts';
import type { SeatedAxis } from './ring-seat.ts';
import { READING_ERROR_MM, SAME_MM, seatAxis } from './ring-seat.ts';

export interface RingStock {
  readonly thicknessMm: number;
  /** How many there are; as many as wanted where absent. */
  readonly count?: number | undefined;
}

export type BareAxis = Omit<RingAxis, 'ring1Mm' | 'ring2Mm'>;

export interface RingChoice {
  /** For each axis: the ring for either side, and how the cross then sits. */
  readonly axes: readonly { readonly ring1Mm: number; readonly ring2Mm: number; readonly seat: SeatedAxis }[];
  /** Offset of the joint, both axes as a vector, mm. */
  readonly offsetMm: number;
}

export interface RingSelection {
  readonly endPlayLeastMm: number;
  readonly endPlayLimitMm: number;
  /** False where even the best choice leaves an axis further off center than rings of the limit's difference would. */
  readonly centers: boolean;
  /** For each axis: thinnest and thickest ring for side 1 and for side 2, mm, that center it and keep the end play. */
  readonly neededMm: readonly { readonly ring1Mm: Span; readonly ring2Mm: Span }[];
  /** The best choice; null where no rings at hand keep the end play on every axis. */
  readonly best: RingChoice | null;
  /** For each axis: what two rings must add up to, mm, to leave no less than the least end play and no more than the limit. */
  readonly pairSumMm: readonly Span[];
}

/** Least and greatest, mm. */
type Span = readonly [number, number];

interface Pair {
  readonly kinds: readonly [number, number];
  readonly ring1Mm: number;
  readonly ring2Mm: number;
  readonly seat: SeatedAxis;
  /** How far the end play is from the middle of its limits, mm. */
  readonly offMiddleMm: number;
}

/** More kinds of rings than any shop has at hand; also bounds the search. */
const MOST_KINDS = 200;

/**
 * Choose rings for one or two axes from one stock.
 *
 * First the end play must lie between its two limits on every axis: with none at all the joint binds. Above the greatest
 * a reading error is let pass, so that an equal pair is not lost for it. Of what is left the joint offset is made least;
 * of equals the one whose end play is nearest the middle of its limits, so that a few hundredths of reading error
 * neither bind nor loosen the joint.
 */
export const selectRings = (
  axes: readonly BareAxis[],
  stock: readonly RingStock[],
  limits?: LimitOverrides,
): Result<RingSelection> => {
  const sizes = [
    ...axes.flatMap((axis) => [axis.grooveSpanMm, axis.crossAndCupsMm]),
    ...stock.map((ring) => ring.thicknessMm),
  ];
  const countable = stock.length > 0 && stock.length <= MOST_KINDS;
  if (axes.length < 1 || axes.length > 2 || !countable || !sizes.every((size) => size > 0 && size < 1e6)) {
    return failure({
      code: 'ring-size-missing',
      key: 'stock',
      message: `Ring selection needs one or two axes with groove span and cross length, and up to ${MOST_KINDS} kinds of rings.`,
      remedy: 'Measure the groove span and the cross with its cups on each axis, and list the rings at hand, in mm.',
    });
  }
  const endPlayLimitMm = limitOf('end-play', limits).value;
  const endPlayLeastMm = Math.min(limitOf('end-play-least', limits).value, endPlayLimitMm);
  const pairSumMm = axes.map((axis) => {
    const room = axis.grooveSpanMm - axis.crossAndCupsMm;
    return [room - endPlayLimitMm, room - endPlayLeastMm] as const;
  });
  const pairs = axes.map((axis) => feasiblePairs(axis, stock, [endPlayLeastMm, endPlayLimitMm]));
  const best = bestChoice(pairs, stock);
  // Rings that differ by their limit hold the cross half of it off center.
  const mostOffMm = limitOf('ring-difference', limits).value / 2;
  const centers = best?.axes.every(({ seat }) => Math.abs(seat.offsetMm) <= mostOffMm + SAME_MM) ?? false;
  const neededMm = axes.map(({ grooveOffsetMm = 0 }, axis) => {
    const [least, most] = pairSumMm[axis]!;
    const side = (sign: number): Span => [least / 2 + sign * grooveOffsetMm, most / 2 + sign * grooveOffsetMm];
    return { ring1Mm: side(1), ring2Mm: side(-1) };
  });
  return success({ endPlayLeastMm, endPlayLimitMm, best, centers, neededMm, pairSumMm });
};

const feasiblePairs = (
  axis: BareAxis,
  stock: readonly RingStock[],
  [leastMm, mostMm]: readonly [number, number],
): Pair[] => {
  const pairs: Pair[] = [];
  for (const [one, ring1] of stock.entries()) {
    for (const [two, ring2] of stock.entries()) {
      if (!enough(stock, [one, two])) continue;
      const rings = { ring1Mm: ring1.thicknessMm, ring2Mm: ring2.thicknessMm };
      const seat = seatAxis({ ...axis, ...rings });
      if (seat.endPlayMm < leastMm - SAME_MM || seat.endPlayMm > mostMm + READING_ERROR_MM + SAME_MM) continue;
      const offMiddleMm = Math.abs(seat.endPlayMm - (leastMm + mostMm) / 2);
      pairs.push({ kinds: [one, two], ...rings, seat, offMiddleMm });
    }
  }
  return pairs.sort((a, b) => Math.abs(a.seat.offsetMm) - Math.abs(b.seat.offsetMm) || a.offMiddleMm - b.offMiddleMm);
};

const bestChoice = (pairs: readonly (readonly Pair[])[], stock: readonly RingStock[]): RingChoice | null => {
  const [first = [], second] = pairs;
  let best: { pairs: Pair[]; offsetMm: number; offMiddleMm: number } | null = null;
  for (const one of first) {
    if (best !== null && Math.abs(one.seat.offsetMm) > best.offsetMm + SAME_MM) break;
    for (const two of second ?? [null]) {
      const offsetMm = Math.hypot(one.seat.offsetMm, two?.seat.offsetMm ?? 0);
      if (best !== null && offsetMm > best.offsetMm + SAME_MM) break;
      const offMiddleMm = one.offMiddleMm + (two?.offMiddleMm ?? 0);
      const better = best === null || offsetMm < best.offsetMm - SAME_MM || offMiddleMm < best.offMiddleMm - SAME_MM;
      if (!better || !enough(stock, [...one.kinds, ...(two?.kinds ?? [])])) continue;
      best = { pairs: two === null ? [one] : [one, two], offsetMm, offMiddleMm };
    }
  }
  if (best === null) return null;
  return {
    axes: best.pairs.map(({ ring1Mm, ring2Mm, seat }) => ({ ring1Mm, ring2Mm, seat })),
    offsetMm: best.offsetMm,
  };
};

/** Whether the stock holds all these rings at once. */
const enough = (stock: readonly RingStock[], kinds: readonly number[]): boolean =>
  kinds.every((kind) => kinds.filter((other) => other === kind).length <= (stock[kind]?.count ?? Infinity));
