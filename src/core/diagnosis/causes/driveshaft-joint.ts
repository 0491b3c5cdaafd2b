/** Faults of joint replacement and assembly, which show at driveshaft 1×, at 2×, or at both. */
import type { Cause } from './cause.ts';
import { afterJoint, at } from '../evidence/where.ts';

export const driveshaftJoint: readonly Cause[] = [
  {
    id: 'new-part-bad',
    title: 'New part is bad: joint, cup or yoke out of size',
    why: 'A new cross with uneven trunnions or cups sits off center or binds, just as a worn one does.',
    repair:
      'Measure the new cross over its cups on both axes, and replace it with one that agrees within the ring tolerance.',
    applies: at('driveshaft', 1, 2),
    reasons: afterJoint('new joints are not all of one size'),
  },
  {
    id: 'ears-bent',
    title: 'Bent yoke ear',
    why: 'An ear bent by pressing or hammering puts its bore out of line: the cross sits off center and its needles bind twice a turn.',
    repair:
      'Check the bores for alignment with a close-fitting bar; replace the yoke. Bending an ear back does not last.',
    applies: at('driveshaft', 1, 2, 4),
    reasons: {
      ...afterJoint('cups pressed out without support bend ears'),
      'twice-too': 'a bent ear moves the cross off center and binds it, so both once and twice a turn show',
      'once-too': 'a bent ear moves the cross off center and binds it, so both once and twice a turn show',
      'four-times-too': 'a binding joint is not smooth and adds a multiple of twice a turn',
      'ears-pressed-or-hammered': 'blows and unsupported pressing bend ears',
    },
  },
  {
    id: 'yoke-seat-burrs',
    title: 'Burrs or dirt under a bearing cup or ring',
    why: 'A chip in the seat or groove holds the cup crooked and the cross off center.',
    repair:
      'Take the joint apart, stone the burrs off, clean grooves and seats, and seat the cups with light taps on the ears’ outside.',
    applies: at('driveshaft', 1, 2),
    reasons: afterJoint('pressing cups out and in raises burrs'),
  },
  {
    id: 'u-bolt-overtightened',
    title: 'U-bolts or straps of the joint overtightened',
    why: 'Too much torque squeezes the cups out of round, and the needles bind as the joint works.',
    repair: 'Fit new U-bolts or straps and tighten them evenly to the maker’s torque; replace cups that were squeezed.',
    applies: at('driveshaft', 1, 2),
    reasons: afterJoint('U-bolts were tightened anew'),
  },
  {
    id: 'ring-too-tight',
    title: 'Binding joint from too thick a retaining ring',
    why: 'Rings that leave no end play press the cups on the trunnion ends, so the joint resists each swing, twice a turn.',
    repair: 'Fit thinner rings in pairs until the cross moves freely by hand and the end play is within its limit.',
    applies: at('driveshaft', 2, 4),
    reasons: {
      ...afterJoint('a ring set chosen too thick leaves no end play'),
      'flat-with-speed': 'friction that binds does not grow with speed as inertia does',
      'four-times-too': 'a binding joint is not smooth and adds a multiple of twice a turn',
    },
  },
  {
    id: 'trunnions-worn',
    title: 'Worn or grooved trunnions',
    why: 'Needles that have pressed grooves into the trunnions catch at each swing of the joint, twice a turn.',
    repair: 'Replace the joint and look for what starved or overloaded it: no grease, too small or too large an angle.',
    applies: at('driveshaft', 2, 4),
    reasons: {
      ...afterJoint('new trunnions are not worn yet'),
      'four-times-too': 'grooves make the motion rough, which adds a multiple of twice a turn',
      'joint-free-movement': 'grooves are felt as notches in the middle of the swing',
    },
  },
];
