/** Driveshaft 2× of a four-wheel drive: the two axles work against each other through the locked transfer case. */
import type { Cause } from './cause.ts';
import { at, both, isFourWheelDrive } from '../evidence/where.ts';

export const fourWheelDrive: readonly Cause[] = [
  {
    id: 'drive-wind-up',
    title: 'Four-wheel drive wound up: tires or axle ratios front and rear unequal',
    why: 'Locked on dry pavement, axles that want to turn at different speeds twist both driveshafts, and joints under torque at an angle shake twice a turn.',
    repair:
      'Drive unlocked on dry pavement; fit tires of one size and wear at their pressures, and give both axles one ratio.',
    applies: both(at('driveshaft', 2), isFourWheelDrive),
    reasons: {
      'axle-ratios-apart': 'locked together the axles twist the shafts at every turn',
      'axle-ratio-changed': 'a ratio changed in one axle alone fights the other',
      'tire-size-changed': 'tires of two sizes fight each other through the shafts',
      'tires-replaced': 'new tires on one axle roll further than worn ones on the other',
      'run-front-shaft-rests': 'with one shaft at rest nothing winds up',
    },
  },
];
