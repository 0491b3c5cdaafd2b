/** Tire 1× to 4×, and knocks once a turn: tire, wheel, hub, and the way they are put together. */
import type { Cause } from './cause.ts';
import { at, either, knocks } from '../evidence/where.ts';

const FLAT = 'a stiffness or shape error pushes about equally at all road speeds';
const WHEELS_OFF = 'the wheels were off';
const SHAPE = 'an error of shape or stiffness is rarely a pure once-a-turn and shows multiples';

export const tire: readonly Cause[] = [
  {
    id: 'tire-unbalance',
    title: 'Wheel and tire out of balance',
    why: 'A heavy spot or a lost weight pulls once a turn, with the square of speed.',
    repair: 'Clean the wheel, seat it well on the balancer, and balance it in two planes.',
    applies: at('tire', 1),
    reasons: {
      'square-with-speed': 'the force of a heavy spot grows with the square of speed',
      'flat-with-speed': 'unbalance would grow with the square of speed',
      'tire-once-alone': 'a heavy spot makes once a turn only',
      'tire-higher-too': 'a heavy spot makes no multiples',
      beats: 'two wheels with heavy spots of nearly the same size pulsate together',
      'wheels-balanced': 'the wheels were balanced, and the shake is still there',
    },
  },
  {
    id: 'tire-runout',
    title: 'Tire out of round',
    why: 'A tire whose radius changes around the turn lifts the hub once a turn and at multiples.',
    repair: 'Check that the beads are seated, match the tire’s high spot to the wheel’s low spot, or replace the tire.',
    applies: at('tire', 1, 2, 3, 4),
    reasons: {
      'flat-with-speed': FLAT,
      'tire-higher-too': SHAPE,
      'mostly-vertical': 'a changing radius pushes upwards',
      'wheels-balanced': 'balancing does not cure a tire that is out of round',
    },
  },
  {
    id: 'tire-force-variation',
    title: 'Stiffness of the tire uneven around its turn',
    why: 'A stiff place in the tire pushes the hub up each time it meets the road, even in a round and balanced wheel.',
    repair: 'Measure the force under load, turn the tire on its wheel to match, or replace the tire.',
    applies: at('tire', 1, 2, 3, 4),
    reasons: {
      'flat-with-speed': FLAT,
      'tire-higher-too': SHAPE,
      'mostly-vertical': 'uneven stiffness pushes upwards',
      'wheels-balanced': 'force variation stays after balancing',
    },
  },
  {
    id: 'bent-wheel',
    title: 'Bent wheel',
    why: 'A rim bent by a pothole carries the tire in an out-of-round path and adds multiples of the wheel’s turn.',
    repair: 'Replace the wheel, or have it assessed by someone licensed to repair wheels where the law allows it.',
    applies: at('tire', 1, 2, 3, 4),
    reasons: { 'tire-higher-too': SHAPE },
  },
  {
    id: 'hub-runout',
    title: 'Hub or axle flange bent or running out',
    why: 'A hub face that wobbles swings the whole wheel once a turn, whichever wheel is fitted.',
    repair:
      'Clean the face, measure it with the wheel off, and replace the hub or axle shaft if it is outside the limit.',
    applies: at('tire', 1),
    reasons: {
      'mostly-sideways': 'a wobbling face shakes sideways',
      'wheels-swapped': 'a hub’s fault stays at its corner when the wheels move',
    },
  },
  {
    id: 'wheel-not-centered',
    title: 'Wheel not centered or not seated on its hub',
    why: 'Rust on the face, a wrong centering ring or uneven nuts leave the wheel off center, and it lifts and pulls once a turn.',
    repair:
      'Clean both faces, use the right centering ring, and tighten the nuts in a star pattern to the maker’s torque with the wheel free.',
    applies: at('tire', 1),
    reasons: { 'tire-once-alone': 'a wheel off center makes once a turn only' },
  },
  {
    id: 'flat-spot',
    title: 'Flat-spotted tire',
    why: 'A flat from standing or from locked brakes strikes once a turn with many multiples.',
    repair: 'Drive the tires warm; if the shake does not go, replace the tire.',
    applies: at('tire'),
    reasons: {
      'tire-higher-too': 'a short flat makes many multiples',
      'tire-once-too': 'a short flat makes once a turn and many multiples',
      'tire-once-alone': 'a flat would make multiples',
    },
  },
  {
    id: 'belt-separated',
    title: 'Separated belt or bulge in a tire',
    why: 'A belt that lets go makes a bump that grows with every mile, felt at once a turn and at multiples.',
    repair: 'Replace the tire before it is driven again: a separated belt can burst.',
    applies: at('tire'),
    reasons: { 'tire-higher-too': 'a bump makes many multiples', 'tire-once-alone': 'a bump would make multiples' },
  },
  {
    id: 'object-in-tread',
    title: 'Stone, nail or patch in the tread',
    why: 'What sticks out of the tread strikes the road once a turn and makes a row of multiples.',
    repair:
      'Take it out with the pressure watched; have a puncture judged and repaired from the inside, or replace the tire.',
    applies: knocks('tire'),
  },
  {
    id: 'wheel-loose',
    title: 'Loose wheel nuts or bolts',
    why: 'A wheel that is not clamped shifts on its hub as it turns: it wobbles and knocks, and it can come off.',
    repair:
      'Do not drive it so. Look at studs, holes and seats, replace what is stretched or worn, and tighten in a star pattern to the maker’s torque.',
    applies: either(at('tire', 1, 2), knocks('tire')),
    reasons: {
      'tires-rotated': WHEELS_OFF,
      'tires-replaced': WHEELS_OFF,
      'wheels-balanced': WHEELS_OFF,
      'brakes-replaced': WHEELS_OFF,
    },
  },
  {
    id: 'wheel-bearing-loose',
    title: 'Loose or worn wheel bearing',
    why: 'Play in the bearing lets the wheel wobble and makes every other wheel fault worse.',
    repair: 'Set or replace the bearing by the maker’s procedure.',
    applies: at('tire'),
    reasons: { 'wheels-swapped': 'a bearing’s fault stays at its corner when the wheels move' },
  },
];
