/** Unevenness and changes of angles in words. */
import type { WhatIf } from '../../../core/driveline/angles/least-change.ts';
import type { RippleAtSpeed } from '../../../core/driveline/angles/joint-chain.ts';
import type { ShaftReading } from '../../../core/driveline/measurement.ts';
import { turningAccelerationText, changeText } from '../../../core/report/angle-change-text.ts';
import type { UnitSystem } from '../../../core/report/format.ts';
import { benchResults } from '../../texts/bench-results.ts';
import { capitalized } from '../../../core/words.ts';

const words = benchResults.angles;

/** '2.14°, 138 rad/s²'; without a speed the angle alone. */
export const rippleText = ({ equivalentAngleDeg, accelerationRadPerS2 }: RippleAtSpeed): string =>
  [
    `${equivalentAngleDeg.toFixed(2)}°`,
    ...(accelerationRadPerS2 === null ? [] : [turningAccelerationText(accelerationRadPerS2)]),
  ].join(', ');

/** '+12.3 rad/s²', or degrees where no speed is known. */
export function differenceText(radPerS2: number | null, deg: number): string {
  const value = radPerS2 ?? deg;
  const size = radPerS2 === null ? `${Math.abs(deg).toFixed(3)}°` : `${Math.abs(radPerS2).toFixed(1)}\u00a0rad/s²`;
  return `${value < 0 ? '−' : '+'}${size}`;
}

/** One answer of the search: what to change, what it leaves, and why not where it does not do. */
export function whatIfText(one: WhatIf, shafts: readonly ShaftReading[], units: UnitSystem): string {
  const text = one.changes.map((change) => changeText(change, units, shafts)).join(', and ');
  const left = words.leaves(turningAccelerationText(one.residualRadPerS2));
  if (!one.reachesLimit) {
    const why = one.spoils.length > 0 ? one.spoils.map((what) => words.spoils[what]).join(' and ') : words.best;
    return words.notAlone(text, left, why);
  }
  const [change] = one.changes;
  const isWhole = one.practicalAmount === null || change === undefined || one.changes.length > 1;
  const whole = isWhole ? '' : ` ${words.whole(changeText({ ...change, amount: one.practicalAmount }, units, shafts))}`;
  const still = one.stillOutside.length === 0 ? '' : words.still(one.stillOutside.join(' and '));
  return `${capitalized(text)}: ${left}${still}.${whole}`;
}
