/** A change of a driveline's angles in words, in the reader's units. */
import type { AngleChange } from '../driveline/angles/angle-change.ts';
import { mountName, noseEnd } from '../driveline/angles/driveline-names.ts';
import type { WorkingAngles } from '../driveline/angles/working-angles.ts';
import type { ShaftReading } from '../driveline/measurement.ts';
import { smallLengthText } from './bench-text.ts';
import type { UnitSystem } from './format.ts';
import { significant } from './format.ts';

/**
 * 'turn the axle by 1.5°, pinion nose up'.
 * @param shafts the driveline as read: it tells which end of the pinion is its nose
 */
export function changeText(
  { kind, amount, piece = 0, teeth }: AngleChange,
  units: UnitSystem,
  shafts: readonly ShaftReading[],
): string {
  // A positive amount turns the pinion's front end up, which on a front axle is not its nose.
  const nose = amount > 0 === (noseEnd(shafts) === 'front') ? 'nose up' : 'nose down';
  const degrees = `${Math.abs(amount).toFixed(1)}°`;
  const height = smallLengthText(Math.abs(amount), units, Math.abs(amount) < 10 ? 1 : 0);
  switch (kind) {
    case 'axle-shim':
      return `turn the axle by ${degrees}, pinion ${nose}`;
    case 'pinion-wind-up':
      return `pinion ${nose} ${degrees} by drive torque`;
    case 'mount-height':
      return `${amount > 0 ? 'raise' : 'lower'} the ${mountName(shafts)} by ${height}`;
    case 'center-bearing-height':
      return `${amount > 0 ? 'raise' : 'lower'} the center bearing behind piece ${piece + 1} by ${height}`;
    case 'phasing':
      return `turn the rear fork of piece ${piece + 1} by ${degrees}${teethText(teeth)} ${amount > 0 ? 'counter-clockwise' : 'clockwise'}, seen from behind`;
    case 'ride-height':
      return `body ${height} ${amount > 0 ? 'higher' : 'lower'}`;
  }
}

const teethText = (teeth: number | undefined): string =>
  teeth === undefined ? '' : ` (${teeth} ${teeth === 1 ? 'tooth' : 'teeth'})`;

/** '138 rad/s²'; nothing is said as 0, not as a rounding error. */
export const turningAccelerationText = (radPerS2: number): string =>
  `${Math.abs(radPerS2) < 0.05 ? '0' : significant(radPerS2, 3)}\u00a0rad/s²`;

/** What to say where no change is needed for the joints to cancel: nothing, or that their angles are too large. */
export function cancelsText({ judged, advisory }: WorkingAngles): string {
  const outside = judged.filter(({ inside }) => !inside).map(({ title }) => title);
  if (outside.length === 0) {
    const isLarge = advisory.some(({ limit, inside }) => limit.id === 'joint-angle-most' && !inside);
    return `Nothing has to be changed: what is judged at this speed is inside its limits.${isLarge ? ' Joints above the preferred angle still bend their shafts twice a turn under torque: where it shakes on pull or moving off, bring them down.' : ''}`;
  }
  return `The joints cancel, but their angles are too large (${outside.join(', ')}). Bring them down together: ride height first, then the mount and the axle alike, so that they stay equal.`;
}
