/** End play, seats and rings in words. */
import type { Centring, JointOffset, PlaneUnbalance } from '../../core/driveline/rings/centring.ts';
import type { RingSelection } from '../../core/driveline/rings/ring-selection.ts';
import type { SeatedAxis } from '../../core/driveline/rings/ring-seat.ts';
import { isOver, isTight } from '../../core/driveline/rings/ring-seat.ts';
import {
  angleText,
  forceText,
  neededRingsText,
  signedLengthText as signed,
  smallLengthText,
  weightText,
} from '../../core/report/bench-text.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { rpmText, significant } from '../../core/report/format.ts';
import { table } from '../../core/report/wrap.ts';

const planeText = ({ unbalanceGmm, forceN, shareOfAllowance }: PlaneUnbalance, units: UnitSystem): string =>
  `${weightText(unbalanceGmm, 'g·mm', units)}, ${(100 * shareOfAllowance).toFixed(0)} % of the allowance, ${forceText(forceN, units)}`;

/** Less than any dial shows counts as on center. */
const LEAST_SHOWN_MM = 0.0005;
const offCenter = (mm: number, units: UnitSystem): string =>
  Math.abs(mm) < LEAST_SHOWN_MM ? 'on center' : `off center by ${signed(mm, units)}`;

export function seatTable(axes: readonly SeatedAxis[], units: UnitSystem): string {
  const rows = axes.map((axis, index) => [
    `axis ${index + 1}`,
    signed(axis.offsetMm, units),
    `${signed(axis.offsetRangeMm[0], units)} to ${signed(axis.offsetRangeMm[1], units)}`,
  ]);
  const header = ['', 'off center, towards ring 1', 'free to be at'];
  return table([header, ...rows], ['left', 'right', 'left']);
}

/** Offset of the shaft's end with a play of 0.1 mm (0.004 in) in one axis, which a hand feels; judgment. */
const FELT_BY_HAND_MM = 0.05;

/** Axes whose parts do not fit: how much is missing, and what that may be. */
export const tightLines = (axes: readonly SeatedAxis[], units: UnitSystem): string[] =>
  axes.flatMap((axis, index) =>
    isTight(axis)
      ? `Axis ${index + 1}: cross, cups and rings are ${smallLengthText(-axis.endPlayMm, units)} longer than the room between the grooves. The joint will bind, or a size was read wrongly: measure again before forcing anything.`
      : [],
  );

interface CentringFacts {
  readonly axisCount: number;
  readonly offset: JointOffset | null;
  readonly offsetMm: number | null;
  readonly centring: Centring | null;
  readonly setting: {
    readonly rpm: number;
    readonly massKg: number;
    readonly gradeMmps: number;
    readonly estimated: boolean;
  } | null;
  readonly wholeAllowanceMm: number | null;
  readonly units: UnitSystem;
}

export function centringLines({
  offset,
  axisCount,
  offsetMm,
  centring,
  setting,
  wholeAllowanceMm,
  units,
}: CentringFacts): string[] {
  if (offsetMm === null) return [];
  const lines = [
    offset === null
      ? `The play lets the shaft’s end sit up to ${smallLengthText(offsetMm, units)} off center${offsetMm > FELT_BY_HAND_MM ? '' : ', too little to feel by hand: trust the dial'}.`
      : `${axisCount > 1 ? 'Both axes together hold' : 'With the other axis on center, this one holds'} the shaft’s end ${smallLengthText(offset.offsetMm, units)} off center at ${angleText(offset.angleDeg)}, up to ${smallLengthText(offset.greatestMm, units)} with the play.`,
  ];
  if (centring === null || setting === null) {
    lines.push('Give the mass of the piece and the shaft speed for the unbalance and force this makes.');
    return lines;
  }
  lines.push(
    `At ${rpmText(setting.rpm)} in the plane of this joint: ${planeText(centring.near, units)}; at the other end: ${planeText(centring.far, units)}.`,
    `Allowance: ${weightText(centring.allowancePerPlaneGmm, 'g·mm', units)} a plane by ISO 21940-11, G ${setting.gradeMmps}, for ${significant(setting.massKg, 2)} kg${setting.estimated ? ' (estimated from the tube)' : ''}.`,
  );
  if (wholeAllowanceMm !== null) {
    lines.push(`An offset of ${smallLengthText(wholeAllowanceMm, units)} would use all of it.`);
  }
  return lines;
}

const OVER = ' (over the limit by no more than a reading error)';

/** @param left what the rings chosen leave; null where mass or speed is not known */
export function choiceLines(selection: RingSelection, left: Centring | null, units: UnitSystem): string[] {
  const { best, centers, pairSumMm, endPlayLeastMm, endPlayLimitMm } = selection;
  if (best === null) {
    const sums = pairSumMm.map(
      ([least, most], axis) =>
        `axis ${axis + 1}: ${smallLengthText(Math.max(least, 0), units)} to ${smallLengthText(most, units)}`,
    );
    return [
      `No rings at hand leave an end play between ${smallLengthText(endPlayLeastMm, units)} and ${smallLengthText(endPlayLimitMm, units)} on every axis.`,
      `Two rings together must measure, ${sums.join('; ')}.`,
    ];
  }
  const axes = best.axes.map(
    ({ ring1Mm, ring2Mm, seat }, axis) =>
      `Axis ${axis + 1}: ${smallLengthText(ring1Mm, units)} at ring 1 and ${smallLengthText(ring2Mm, units)} at ring 2; end play ${signed(seat.endPlayMm, units)}${isOver(seat, endPlayLimitMm) ? OVER : ''}, ${offCenter(seat.offsetMm, units)}.`,
  );
  if (!centers) {
    return [
      `None of these rings center the joint: OUTSIDE the limits. Needed: ${neededRingsText(selection, units)}.`,
      `The nearest at hand, not to be fitted: ${axes.join(' ')}`,
    ];
  }
  const lines = [...axes, `The joint as a whole then sits ${offCenter(best.offsetMm, units)}.`];
  if (left !== null && best.offsetMm >= LEAST_SHOWN_MM)
    lines.push(`That leaves in the plane of this joint ${planeText(left.near, units)}.`);
  return lines;
}
