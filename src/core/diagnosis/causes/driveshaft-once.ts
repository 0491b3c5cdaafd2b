/** Driveshaft 1×: something heavy, bent, off centre or loose goes round once a turn. */
import type { Cause } from './cause.ts';
import { either, knocks, afterJoint, at, both, mayBeTwoPiece } from '../evidence/where.ts';

const SQUARE = 'the force of a heavy spot grows with the square of speed';

export const driveshaftOnce: readonly Cause[] = [
  {
    id: 'shaft-unbalance',
    title: 'Unbalanced driveshaft or lost balance weight',
    why: 'A heavy spot pulls outwards once a turn, with a force that grows with the square of speed.',
    repair:
      'Clean the tube, replace a lost weight, and balance the shaft on the vehicle or on a balancing machine. Balance last: only after runout, rings and joints are right.',
    applies: at('driveshaft', 1),
    reasons: {
      ...afterJoint('a balance weight is easily knocked off on the bench'),
      'square-with-speed': SQUARE,
      'flat-with-speed': 'unbalance would grow with the square of speed',
      'once-alone': 'unbalance shakes once a turn and hardly at twice a turn',
      'twice-too': 'unbalance by itself makes little at twice a turn',
      'clamp-trial': 'a weight can take away only what a weight has caused',
    },
  },
  {
    id: 'tube-runout',
    title: 'Bent or dented driveshaft tube',
    why: 'A bowed tube carries its own mass off the line of the joints, so it pulls once a turn like a heavy spot.',
    repair:
      'Straighten or replace the tube and balance the shaft anew. A weight on a bent tube cures one speed and spoils another.',
    applies: at('driveshaft', 1),
    reasons: {
      'square-with-speed': 'the mass of a bowed tube pulls with the square of speed',
      'steep-with-speed': 'a bowed tube bends out further as it nears its critical speed',
      'flat-with-speed': 'a bowed tube would grow with the square of speed',
    },
  },
  {
    id: 'companion-flange-runout',
    title: 'Bent or off-center companion flange',
    why: 'A flange that runs out carries the end of the shaft around in a small circle once a turn.',
    repair:
      'Re-index the shaft on the flange to the position of least runout; if it stays outside the limit replace the flange, following the maker’s procedure for pinion bearing preload.',
    applies: at('driveshaft', 1),
    reasons: {
      'square-with-speed': 'the end of the shaft is carried off center, and that pulls with the square of speed',
      'reindex-shaft': 'turning the shaft on a flange that runs out adds to or takes from its own heavy spot',
      'flange-removed': 'a flange drawn off or driven on can be bent or seated crooked',
    },
  },
  {
    id: 'shaft-not-indexed',
    title: 'Driveshaft not back in its marked position',
    why: 'Shaft and flange were balanced together; in another position their errors add instead of cancelling.',
    repair: 'Find the old marks or try the other bolt positions, keep the one that shakes least, and mark it.',
    applies: at('driveshaft', 1),
    reasons: {
      ...afterJoint('the shaft was out, and without marks it goes back in any position'),
      'shaft-removed': 'the shaft may have gone back turned against its flange',
      'reindex-shaft': 'a shaft out of its position answers strongly to being turned',
      'square-with-speed': SQUARE,
    },
  },
  {
    id: 'joint-off-center',
    title: 'Joint off center from unequal retaining rings',
    why: 'Rings of unequal thickness hold the cross off the middle by half their difference, and the shaft turns about that offset line.',
    repair:
      'Choose ring pairs of equal thickness, or the pair that centers the cross, and keep the end play within its limit.',
    applies: at('driveshaft', 1),
    reasons: {
      ...afterJoint('new rings may differ from the ones that centered the joint'),
      'square-with-speed': 'the offset mass pulls with the square of speed',
      'once-alone': 'an offset joint shakes once a turn',
      'clamp-trial': 'a weight can hide an offset, which is why rings come before weights',
    },
  },
  {
    id: 'slip-yoke-worn',
    title: 'Worn slip yoke, spline or extension bush',
    why: 'Play in the sliding connection lets the front of the shaft fly outwards, now to one side and now to another.',
    repair: 'Replace the worn yoke, bush and seal; check the yoke’s running surface for grooves.',
    applies: either(at('driveshaft', 1), knocks('driveshaft')),
    reasons: { 'found-pulling': 'torque moves the yoke in its play' },
  },
  {
    id: 'joint-loose',
    title: 'Loose, worn or dry universal joint',
    why: 'A loose joint lets the shaft run off center and knocks twice a turn as the load passes from trunnion to trunnion.',
    repair: 'Replace the joint, with rings chosen for center and end play, and check the ears for alignment.',
    applies: either(at('driveshaft', 1), knocks('driveshaft')),
    reasons: {
      ...afterJoint('a new joint should be tight'),
      'twice-too': 'a loose or dry joint shakes at once and at twice a turn',
      'once-alone': 'a loose or dry joint would show twice a turn as well',
    },
  },
  {
    id: 'center-bearing',
    title: 'Worn or loose center support bearing',
    why: 'A worn bearing or torn rubber lets the middle of a two-piece shaft swing outwards.',
    repair:
      'Replace the center bearing, set it square and at the maker’s height, and keep the forks marked and in phase.',
    applies: both(at('driveshaft', 1, 2), mayBeTwoPiece),
    reasons: { 'found-pulling': 'torque lifts the middle joint against soft rubber' },
  },
  {
    id: 'pinion-or-output-bearing',
    title: 'Loose pinion or transmission output bearing',
    why: 'Play in the bearing that carries the yoke lets the end of the shaft leave its center.',
    repair: 'Set or replace the bearing by the maker’s procedure, preload included.',
    applies: at('driveshaft', 1),
  },
  {
    id: 'shaft-near-critical',
    title: 'Driveshaft runs near its critical speed',
    why: 'Near the speed at which the tube bends by itself even a small heavy spot grows many times.',
    repair:
      'Keep below the safe speed. A larger tube, a shorter shaft or two pieces raise it; a shorter axle ratio or smaller tires lower the margin.',
    applies: at('driveshaft', 1),
    reasons: { 'steep-with-speed': 'the level rises faster than the square of speed as the critical speed comes near' },
  },
];
