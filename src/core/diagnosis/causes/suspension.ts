/** Tire 1× and 2×: what should hold the wheel lets a small fault of it through. Seldom alone. */
import type { Cause } from './cause.ts';
import { at } from '../evidence/where.ts';

export const suspension: readonly Cause[] = [
  {
    id: 'suspension-worn',
    title: 'Worn shock absorber, ball joint, bushing or tie rod',
    why: 'A wheel that is loosely held or not damped answers a fault too small to be felt on a sound vehicle, most of all near the speed at which it hops or shimmies.',
    repair:
      'Replace what has play or leaks by the maker’s procedure and set the alignment. Then put right the small fault of the wheel too: balance and runout.',
    applies: at('tire', 1, 2),
    reasons: {
      'wheels-balanced': 'the wheels were balanced, and what holds them was not looked at',
      'steep-with-speed': 'a loosely held wheel answers most near one speed',
      'mostly-sideways': 'play in steering and joints lets the wheel swing sideways',
    },
  },
];
