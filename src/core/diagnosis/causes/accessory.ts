/** What the belt drives: alternator, pumps, compressor, fan. */
import type { Cause } from './cause.ts';
import { at } from '../evidence/where.ts';

export const accessory: readonly Cause[] = [
  {
    id: 'accessory-bearing',
    title: 'Accessory bearing or rotor worn or out of balance',
    why: 'A worn bearing lets the rotor wander, and it shakes at its own turning speed.',
    repair: 'Replace the accessory, or its bearing where the maker allows it.',
    applies: at('accessory'),
  },
  {
    id: 'accessory-pulley',
    title: 'Accessory pulley bent or loose',
    why: 'A bent pulley pulls on the belt once a turn.',
    repair: 'Replace the pulley and check its seat and bolt.',
    applies: at('accessory'),
    reasons: { 'square-with-speed': 'a pulley off center pulls with the square of speed' },
  },
  {
    id: 'belt-or-tensioner',
    title: 'Belt damaged or tensioner weak',
    why: 'A lump in the belt or a tensioner that flutters pulls the accessory along with it.',
    repair: 'Replace belt and tensioner together and check that the pulleys line up.',
    applies: at('accessory'),
    reasons: { beats: 'the belt goes round at a speed of its own, so its lump drifts against the pulley' },
  },
  {
    id: 'accessory-bracket',
    title: 'Accessory bracket loose or cracked',
    why: 'A loose bracket lets a sound accessory swing at its turning speed.',
    repair: 'Tighten the bracket to the maker’s torque, or replace it where it is cracked.',
    applies: at('accessory'),
    reasons: { 'steep-with-speed': 'a loose bracket comes into resonance as the speed rises' },
  },
];
