/** Driveshaft 2×: joints at an angle speed the shaft up and slow it down twice a turn. */
import type { Cause } from './cause.ts';
import { afterJoint, at, both, mayBeTwoPiece, mayHaveDoubleCardan } from '../evidence/where.ts';

const ANGLES = 'joint angles alone shake at twice a turn and hardly at once';
const SQUARE = 'the angular acceleration left by unequal angles grows with the square of speed';
const ONCE_TOO = 'joint angles make nothing at once a turn';

export const driveshaftTwice: readonly Cause[] = [
  {
    id: 'angles-from-mount',
    title: 'Unequal working angles from a sagged or broken transmission mount',
    why: 'When the transmission drops, front and rear joint angles no longer cancel, and the rest drives the axle twice a turn.',
    repair: 'Replace the mount, check the crossmember, and measure the angles again at ride height.',
    applies: at('driveshaft', 2),
    reasons: { 'twice-alone': ANGLES, 'square-with-speed': SQUARE, 'once-too': ONCE_TOO },
  },
  {
    id: 'angles-from-ride-height',
    title: 'Unequal or excessive working angles from a changed ride height',
    why: 'Lift, lowering or tired springs move the axle against the transmission and open the joint angles.',
    repair: 'Restore the ride height, or correct transmission and axle angles until the residual is inside its limit.',
    applies: at('driveshaft', 2),
    reasons: { 'twice-alone': ANGLES, 'square-with-speed': SQUARE, 'once-too': ONCE_TOO },
  },
  {
    id: 'angles-from-axle',
    title: 'Unequal working angles from a rotated axle or a wrong wedge',
    why: 'A wedge missing or fitted the wrong way, a worn bushing or a moved perch turns the pinion up or down and upsets the rear angle.',
    repair: 'Put the axle right: wedge, perch, bushings, U-bolts. Then measure the angles again at ride height.',
    applies: at('driveshaft', 2),
    reasons: {
      'twice-alone': ANGLES,
      'square-with-speed': SQUARE,
      'once-too': ONCE_TOO,
      'found-pulling': 'torque winds the pinion up and changes the rear angle',
      'run-pull-coast': 'torque winds the pinion up on pull and down on coast, so the rear angle changes between them',
    },
  },
  {
    id: 'forks-out-of-phase',
    title: 'Forks of the driveshaft out of phase',
    why: 'With a slip spline one tooth off, or a yoke welded out of line, the two joints no longer cancel even at equal angles.',
    repair:
      'Line the forks up by the marks, or by eye along the shaft, and mark them. Some shafts are built with an offset: follow the maker.',
    applies: at('driveshaft', 2),
    reasons: {
      ...afterJoint('a slip spline goes back one tooth off as easily as right'),
      'twice-alone': ANGLES,
      'square-with-speed': 'the ripple that the joints no longer cancel grows with the square of speed',
      'shaft-removed': 'a slip spline goes back one tooth off as easily as right',
    },
  },
  {
    id: 'secondary-couple',
    title: 'Secondary couple: working angle too large for the torque',
    why: 'Under torque a joint at an angle bends its shafts twice a turn, even where speed ripple cancels.',
    repair: 'Reduce the joint angles, first of all at the end that carries the greatest angle, and renew soft mounts.',
    applies: at('driveshaft', 2),
    reasons: {
      'found-pulling': 'the bending couple is torque times angle',
      'flat-with-speed': 'the couple follows torque and not speed',
      'square-with-speed': 'the couple follows torque and not speed',
      'run-pull-coast': 'the couple follows torque',
      'run-neutral': 'without torque there is no couple',
    },
  },
  {
    id: 'double-cardan-centering',
    title: 'Worn or seized centering of the double-Cardan joint',
    why: 'The centering ball splits the angle in two halves. Worn, it leaves a difference that shakes twice a turn; dry or seized, it makes the joint bind and in the end break.',
    repair: 'Rebuild or replace the double-Cardan joint, ball, seat and spring included.',
    applies: both(at('driveshaft', 2), mayHaveDoubleCardan),
  },
  {
    id: 'launch-shudder',
    title: 'Launch shudder: center bearing angle too large under torque',
    why: 'At low speed and high torque the middle joint of a two-piece shaft pushes its support up and down twice a turn.',
    repair:
      'Set the center bearing’s height with shims within the maker’s range, renew its rubber, and put the ride height right.',
    applies: both(at('driveshaft', 2), mayBeTwoPiece),
    reasons: {
      'low-speed': 'shudder comes while moving off, where torque is high and speed low',
      'road-speed': 'shudder is over by the time the vehicle is at road speed',
      'found-pulling': 'shudder needs torque',
      'found-cruising': 'shudder needs the torque of moving off',
      'falls-with-speed': 'shudder fades as speed rises and torque falls',
      'square-with-speed': 'shudder fades as speed rises',
    },
  },
  {
    id: 'shaft-near-half-critical',
    title: 'Driveshaft runs near half its critical speed',
    why: 'At half the bending speed the joints’ push at twice a turn meets the tube’s own bending, and a small angle error grows.',
    repair:
      'Bring the working angles down, and raise the critical speed with a larger tube, a shorter shaft or two pieces.',
    applies: at('driveshaft', 2),
    reasons: {
      'steep-with-speed': 'the level rises faster than the square of speed as half the critical speed comes near',
    },
  },
];
