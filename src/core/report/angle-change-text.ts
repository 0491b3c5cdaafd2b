/** A change of a driveline's angles in words, in the reader's units. */
import type { AngleChange } from '../driveline/angles/angle-change.ts';
import { smallLengthText } from './bench-text.ts';
import type { UnitSystem } from './format.ts';

/** 'turn the axle by 1.5°, pinion front end up'. */
export function changeText({ kind, amount, piece = 0, teeth }: AngleChange, units: UnitSystem): string {
  const degrees = `${Math.abs(amount).toFixed(1)}°`;
  const height = smallLengthText(Math.abs(amount), units, Math.abs(amount) < 10 ? 1 : 0);
  switch (kind) {
    case 'axle-shim':
      return `turn the axle by ${degrees}, pinion ${amount > 0 ? 'front end up' : 'front end down'}`;
    case 'pinion-wind-up':
      return `pinion front end up ${degrees} by drive torque`;
    case 'mount-height':
      return `${amount > 0 ? 'raise' : 'lower'} the transmission mount by ${height}`;
    case 'centre-bearing-height':
      return `${amount > 0 ? 'raise' : 'lower'} the center bearing behind piece ${piece + 1} by ${height}`;
    case 'phasing':
      return `turn the rear fork of piece ${piece + 1} by ${degrees}${teethText(teeth)} ${amount > 0 ? 'counter-clockwise' : 'clockwise'}, seen from behind`;
    case 'ride-height':
      return `body ${height} ${amount > 0 ? 'higher' : 'lower'}`;
  }
}

const teethText = (teeth: number | undefined): string =>
  teeth === undefined ? '' : ` (${teeth} ${teeth === 1 ? 'tooth' : 'teeth'})`;
