/** Signs in the vehicle itself: pieces of the shaft, kinds of joints, critical speed, axle ratios, converter. */
import { tubeOf } from '../../driveline/shaft-tube.ts';
import { criticalSpeedRpm } from '../../driveline/whirl.ts';
import { rpmFromHz } from '../../units.ts';
import { AXLES_APART, axleRatiosApart } from '../../vehicle/ratios.ts';
import type { Clue } from './clue.ts';
import { hasDoubleCardan, isFrontShaft, piecesOf } from './where.ts';

/** Turning speed over critical speed from which the shaft counts as near it, and below which it is well clear. */
const NEAR_CRITICAL = 0.75;
const CLEAR_OF_CRITICAL = 0.6;
/** Band about half the critical speed. */
const HALF_BAND = 0.05;

export const vehicleClues: readonly Clue[] = [
  {
    signs: ['two-piece'],
    missing: 'Whether the driveshaft has one piece or two was not given.',
    asks: (basis) => basis.part === 'driveshaft' && !isFrontShaft(basis),
    read: (_, { vehicle }) => {
      const pieces = piecesOf(vehicle);
      if (pieces === null) return null;
      return pieces === 'one'
        ? 'neither'
        : { sign: 'two-piece', text: 'The driveshaft has more than one piece', strength: 1 };
    },
  },
  {
    signs: ['double-cardan'],
    missing: 'The kinds of joints in the driveshaft were not given.',
    asks: (basis) => basis.part === 'driveshaft' && !isFrontShaft(basis),
    read: (_, { vehicle }) => {
      const double = hasDoubleCardan(vehicle);
      if (double === null) return null;
      return double
        ? { sign: 'double-cardan', text: 'The driveshaft has a double-Cardan joint', strength: 1 }
        : 'neither';
    },
  },
  {
    signs: ['near-critical', 'near-half-critical', 'far-from-critical'],
    missing: 'Length, tube and wall of the driveshaft were not given, so its critical speed is not known.',
    asks: (basis) => basis.part === 'driveshaft' && !isFrontShaft(basis),
    read: (basis, { vehicle }) => {
      const tubes = (vehicle.driveshaftPieces ?? []).map(tubeOf).filter((tube) => tube !== null);
      if (tubes.length === 0 || !basis.order) return null;
      const ratio = rpmFromHz(basis.frequencyHz / basis.order) / Math.min(...tubes.map(criticalSpeedRpm));
      const text = `The driveshaft turned at ${Math.round(100 * ratio)} % of its critical speed`;
      if (ratio >= NEAR_CRITICAL) return { sign: 'near-critical', text, strength: 1 };
      if (Math.abs(ratio - 0.5) <= HALF_BAND && basis.order === 2)
        return { sign: 'near-half-critical', text, strength: 1 };
      return ratio <= CLEAR_OF_CRITICAL ? { sign: 'far-from-critical', text, strength: 1 } : 'neither';
    },
  },
  {
    signs: ['axle-ratios-apart'],
    missing: 'The ratio of the front axle was not given, so whether it matches the rear’s is not known.',
    asks: ({ part, order }, { vehicle }) =>
      part === 'driveshaft' && order === 2 && vehicle.layout === 'four-wheel-drive',
    read: (_, { vehicle }) => {
      const share = axleRatiosApart(vehicle);
      if (share === null) return null;
      if (share < AXLES_APART) return 'neither';
      const text = `Front and rear axle ratio are ${Math.round(100 * share)} % apart`;
      return { sign: 'axle-ratios-apart', text, strength: 1 };
    },
  },
  {
    signs: ['converter'],
    missing: 'Whether the vehicle has a torque converter was not given.',
    asks: ({ part }) => part === 'engine',
    read: (_, { vehicle }) => {
      if (vehicle.converter === undefined) return null;
      return vehicle.converter
        ? { sign: 'converter', text: 'The vehicle has a torque converter', strength: 1 }
        : 'neither';
    },
  },
];
