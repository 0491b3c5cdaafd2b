/** Where a cross sits between its two retaining rings, and how far it can move. Derived. */
import type { Problem, Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import type { JudgedNumber, LimitOverrides } from '../limits/limit.ts';
import { judge, limitOf } from '../limits/limit.ts';
import type { RingAxis } from '../measurement.ts';

export interface SeatedAxis {
  /** Groove span less cross, cups and both rings, mm. Negative: the joint is tight and will bind. */
  readonly endPlayMm: number;
  /** Middle of the cross off the shaft's axis, mm, positive towards ring 1: half the thickness difference. */
  readonly offsetMm: number;
  /** Least and greatest offset with the cross pushed to either side, mm. */
  readonly offsetRangeMm: readonly [number, number];
  /** Thickness difference of the pair, mm, without sign. */
  readonly ringDifferenceMm: number;
}

/** How the cross sits on one axis. */
export const seatAxis = ({
  grooveSpanMm,
  crossAndCupsMm,
  ring1Mm,
  ring2Mm,
  grooveOffsetMm = 0,
}: RingAxis): SeatedAxis => {
  const endPlayMm = grooveSpanMm - crossAndCupsMm - ring1Mm - ring2Mm;
  const offsetMm = (ring2Mm - ring1Mm) / 2 + grooveOffsetMm;
  const freeMm = Math.max(endPlayMm, 0) / 2;
  return {
    endPlayMm,
    offsetMm,
    offsetRangeMm: [offsetMm - freeMm, offsetMm + freeMm],
    ringDifferenceMm: Math.abs(ring2Mm - ring1Mm),
  };
};

export interface RingsJudgment {
  readonly axes: readonly SeatedAxis[];
  /** Axis by axis: end play, then ring difference. */
  readonly judged: readonly JudgedNumber[];
  /** True where an axis is tight: less room than the parts need. */
  readonly tight: boolean;
  readonly inside: boolean;
}

/** Four micrometer readings leave a sum about this unsure, mm: no less than it decides against rings (judgment). */
export const READING_ERROR_MM = 0.005;
/** Lengths closer than this, mm, are the same: rounding of sums. */
export const SAME_MM = 1e-9;

/** Less room than the parts need. */
export const isTight = ({ endPlayMm }: SeatedAxis): boolean => endPlayMm < -READING_ERROR_MM;
/** More end play than this limit, mm. */
export const isOver = ({ endPlayMm }: SeatedAxis, limitMm: number): boolean => endPlayMm > limitMm + SAME_MM;

/** End play against the limit it is nearer to breaking: too little binds, too much lets the cross move. */
const judgePlay = (playMm: number, axis: number, limits?: LimitOverrides): JudgedNumber => {
  const [least, most] = [limitOf('end-play-least', limits), limitOf('end-play', limits)];
  const title = `end play, axis ${axis}`;
  // A maker's limit below the least end play is followed: no more is asked for than it allows.
  if (playMm < Math.min(least.value, most.value) - READING_ERROR_MM - SAME_MM) return judge(playMm, least, title);
  const judged = judge(playMm, most, title);
  return judged.inside || playMm > most.value + READING_ERROR_MM + SAME_MM
    ? judged
    : { ...judged, inside: true, title: `${title}, within reading error` };
};

/** Parts of one joint fit each other within this, mm; beyond it a figure or its unit is wrong. Judgment. */
const BELONG_WITHIN_MM = 5;

const doNotBelong = (index: number, { grooveSpanMm, crossAndCupsMm, ring1Mm, ring2Mm }: RingAxis): Problem => ({
  code: 'rings-do-not-belong',
  message:
    `On axis ${index + 1} the grooves are ${grooveSpanMm.toFixed(2)} mm apart, cross and rings together measure ` +
    `${(crossAndCupsMm + ring1Mm + ring2Mm).toFixed(2)} mm: they do not belong together.`,
  remedy: 'Check each figure and its unit, and that all were read at the same joint and axis.',
});

/** Seat each axis and hold it to the limits. */
export const judgeRings = (axes: readonly RingAxis[], limits?: LimitOverrides): Result<RingsJudgment> => {
  const sizes = axes.flatMap((axis) => [axis.grooveSpanMm, axis.crossAndCupsMm, axis.ring1Mm, axis.ring2Mm]);
  if (axes.length === 0 || !sizes.every((size) => Number.isFinite(size) && size > 0)) {
    return failure({
      code: 'ring-size-missing',
      key: 'axes',
      message: 'A groove span, a cross length or a ring thickness is missing or not above zero.',
      remedy: 'For each axis measure the groove span, the cross with both cups, and both rings, in mm.',
    });
  }
  const seated = axes.map(seatAxis);
  const apart = seated.findIndex(({ endPlayMm }) => Math.abs(endPlayMm) > BELONG_WITHIN_MM);
  if (apart >= 0) return failure(doNotBelong(apart, axes[apart]!));
  const judged = seated.flatMap((axis, index) => [
    judgePlay(axis.endPlayMm, index + 1, limits),
    judge(axis.ringDifferenceMm, limitOf('ring-difference', limits), `ring difference, axis ${index + 1}`),
  ]);
  const tight = seated.some(isTight);
  return success({ axes: seated, judged, tight, inside: !tight && judged.every((number) => number.inside) });
};
