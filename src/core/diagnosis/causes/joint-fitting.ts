/** Slips in fitting a joint: fasteners, cups, rings and needles that are not where they belong. */
import type { Cause } from './cause.ts';
import { afterJoint, at, either, knocks } from '../evidence/where.ts';

export const jointFitting: readonly Cause[] = [
  {
    id: 'fasteners-loose',
    title: 'Loose U-bolts, straps or flange bolts',
    why: 'A joint or flange that is not clamped shifts in its seat, so the shaft runs off center and knocks; it can let go of the shaft altogether.',
    repair:
      'Do not drive it so. Clean and check the seats, fit new bolts, straps or U-bolts (most are single use), and tighten them evenly to the maker’s torque.',
    applies: either(at('driveshaft', 1, 2), knocks('driveshaft')),
    reasons: {
      ...afterJoint('its fasteners were off'),
      'shaft-removed': 'its fasteners were off',
      'flange-removed': 'the bolts of the flange were off',
      'twice-too': 'a joint that shifts knocks at once and at twice a turn',
      'found-pulling': 'torque moves a joint that is not clamped',
    },
  },
  {
    id: 'needle-fallen',
    title: 'Needle fallen across the bottom of a bearing cup',
    why: 'A needle that tips over while the cup is pressed in keeps the cup from going home: the cross sits off center and binds.',
    repair:
      'Take the joint apart, count the needles, and fit a new joint where a needle or trunnion is marked. Hold the needles with grease and start each cup on its trunnion.',
    applies: at('driveshaft', 1, 2),
    reasons: {
      ...afterJoint('it is the commonest slip in pressing cups in; the ring then hardly enters its groove'),
      'twice-too': 'a cup held off its seat moves the cross and binds it, so both once and twice a turn show',
      'once-too': 'a cup held off its seat moves the cross and binds it, so both once and twice a turn show',
    },
  },
  {
    id: 'ring-not-seated',
    title: 'Retaining ring not in its groove, or missing',
    why: 'Without its ring a cup walks outwards, the cross leaves the center, and the cup can come out.',
    repair:
      'Do not drive it so. Seat the ring all the way round, or fit a new one; if it will not enter, find what holds the cup off its seat.',
    applies: at('driveshaft', 1, 2),
    reasons: afterJoint('a ring that is not driven home springs out again'),
  },
  {
    id: 'cup-not-seated',
    title: 'Bearing cup not down in the seat of the yoke',
    why: 'A cup that rides on the tab or on dirt in the seat holds the cross off center, and its strap works loose.',
    repair:
      'Take the joint off its yoke, clean the seats, lay the cups between their tabs, and fit new straps or U-bolts.',
    applies: at('driveshaft', 1, 2),
    reasons: { ...afterJoint('cups are easily laid on a tab'), 'shaft-removed': 'the cups were out of their seats' },
  },
  {
    id: 'wrong-joint',
    title: 'Joint of another series, or parts of two kits mixed',
    why: 'Cups or cross a few tenths off are forced in or held loosely, and the cross is centered by chance.',
    repair:
      'Measure cups, cross and groove span against the maker’s figures, and fit the joint that belongs to both yokes.',
    applies: at('driveshaft', 1, 2),
    reasons: afterJoint('series look alike and differ by little'),
  },
  {
    id: 'fitting-fouls',
    title: 'Grease fitting touches the yoke',
    why: 'A fitting that meets the yoke at full swing stops the joint short and pries at it each turn, the more the larger the angle.',
    repair:
      'Turn the joint so that the fitting points into the open side, or fit a plug, and look whether the yoke was marked.',
    applies: either(at('driveshaft', 1, 2), knocks('driveshaft')),
    reasons: {
      ...afterJoint('the fitting may point the other way now'),
      'ride-height-changed': 'larger angles bring it nearer',
    },
  },
];
