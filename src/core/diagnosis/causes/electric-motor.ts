/** The motor and reduction gear of an electric vehicle. */
import type { Cause } from './cause.ts';
import { both, isElectric } from '../evidence/where.ts';

export const electricMotor: readonly Cause[] = [
  {
    id: 'motor-rotor',
    title: 'Motor rotor out of balance or its bearing worn',
    why: 'The rotor turns many times faster than the wheels; a small heavy spot or bearing play shakes once a turn.',
    repair: 'Have the drive unit’s bearings and rotor checked by a shop licensed for high voltage.',
    applies: both(isElectric, (basis) => basis.part === 'engine' && basis.role !== 'mesh' && basis.role !== 'electric'),
    reasons: { 'square-with-speed': 'a heavy spot pulls with the square of speed' },
  },
  {
    id: 'motor-torque-ripple',
    title: 'Torque ripple of the motor: phase current or position sensor',
    why: 'Uneven phase currents make the torque pulsate at multiples of the electrical frequency.',
    repair:
      'Read the fault memory, have the position sensor learned anew, and the inverter tested by a shop licensed for high voltage.',
    applies: both(isElectric, (basis) => basis.part === 'engine' && basis.role === 'electric'),
    reasons: {
      'found-pulling': 'ripple follows torque',
      heard: 'ripple is heard as a whine',
      'run-pull-coast': 'ripple follows torque',
    },
  },
  {
    id: 'reduction-gears',
    title: 'Reduction gear worn or out of line',
    why: 'Each tooth pair gives a small push; worn flanks and loose bearings make it a whine.',
    repair: 'Drain the oil and look for metal; overhaul or replace the reduction gear by the maker’s procedure.',
    applies: both(isElectric, (basis) => basis.role === 'mesh'),
    reasons: { heard: 'gear whine is heard before it is felt' },
  },
];
