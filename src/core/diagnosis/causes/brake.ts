/** Tire 1× to 4× under braking: the brake grips and lets go as the rotor turns. Knocks once a turn: it touches. */
import type { Cause } from './cause.ts';
import { at, knocks } from '../evidence/where.ts';

export const brake: readonly Cause[] = [
  {
    id: 'rotor-thickness',
    title: 'Brake rotor thickness varies, or a drum is out of round',
    why: 'Where the rotor is thicker the pads grip harder, so the braking force pulsates at wheel speed and its multiples.',
    repair:
      'Measure thickness around the rotor and runout on the hub, clean the hub face, and replace or turn rotors in pairs within the maker’s limits.',
    applies: at('tire', 1, 2, 3, 4),
    reasons: {
      'found-braking': 'the shake was recorded under braking',
      'found-cruising': 'rotor thickness is felt only with the brake applied',
      'found-pulling': 'rotor thickness is felt only with the brake applied',
      'run-braking': 'only the brake brings rotor thickness into play',
      'wheels-swapped': 'the rotor stays at its corner when the wheels move',
      'brakes-replaced': 'new rotors on an unclean hub run out and wear to uneven thickness',
    },
  },
  {
    id: 'brake-rubs',
    title: 'Brake part that touches once a turn',
    why: 'A bent shield, a loose pad or a ridge of rust on the rotor touches at one place of the turn and makes a row of multiples.',
    repair: 'Free the shield, secure or replace the pads and their springs, and clean, turn or replace the rotors.',
    applies: knocks('tire'),
    reasons: {
      'found-braking': 'the brake was applied',
      'brakes-replaced': 'shield and pads were moved',
      'wheels-swapped': 'the brake stays at its corner when the wheels move',
    },
  },
];
