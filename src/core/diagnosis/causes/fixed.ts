/** Tones that follow no turning part of the driveline: resonances, fans, the sensor itself. */
import type { Cause } from './cause.ts';
import { at, both, burnsFuel } from '../evidence/where.ts';

const RESONANCE = 'a resonance shaken by the road is broad and wanders';
const MACHINE = 'what holds its frequency so well has a drive of its own';

export const fixed: readonly Cause[] = [
  {
    id: 'body-resonance',
    title: 'Body, frame or axle resonance',
    why: 'A part of the body swings at its own frequency, whatever shakes it, so the tone stays put as the speed changes.',
    repair: 'Find what excites it; check body and subframe mounts, bushings and added masses such as racks or bumpers.',
    applies: at('fixed'),
    reasons: {
      'narrow-line': RESONANCE,
      'low-tone': 'whole-body bending lies low',
      'high-tone': 'whole-body bending lies lower than this',
    },
  },
  {
    id: 'exhaust-resonance',
    title: 'Exhaust swings in its hangers',
    why: 'The exhaust is a long beam on soft hangers with frequencies of its own.',
    repair: 'Check hangers, flexible pipe and tuned mass of the exhaust.',
    applies: both(at('fixed'), burnsFuel),
    reasons: { 'narrow-line': RESONANCE },
  },
  {
    id: 'panel-or-rack',
    title: 'Loose panel, shield or load',
    why: 'A heat shield, panel, rack or load that rattles has its own tone.',
    repair: 'Fasten or pad it.',
    applies: at('fixed'),
    reasons: { 'narrow-line': RESONANCE },
  },
  {
    id: 'sensor-loose',
    title: 'Sensor loose or its mount too soft',
    why: 'A sensor on a soft pad, a phone in a holder or a bracket sings at its own frequency and shows what the vehicle does not do.',
    repair: 'Fix the sensor firmly to a stiff place and record again.',
    applies: at('fixed'),
    reasons: {
      'narrow-line': RESONANCE,
      'high-tone': 'small loose things sing high',
      'low-tone': 'a small sensor seldom swings this low',
    },
  },
  {
    id: 'electric-fan',
    title: 'Cooling fan, blower or electric compressor',
    why: 'A fan with its own motor keeps its own speed, so its tone stays where it is while road and engine speed change.',
    repair: 'Replace the fan, blower or compressor, or its rubber mounts.',
    applies: at('fixed'),
    reasons: {
      'narrow-line': MACHINE,
      'found-cruising': 'at road speed the air of the drive cools, and the fan mostly rests',
      beats: 'two fans at nearly the same speed pulsate together',
    },
  },
  {
    id: 'electric-pump',
    title: 'Electric pump: fuel, coolant, steering, vacuum or brake',
    why: 'A pump with its own motor keeps its own speed; 1900 rpm is 32 Hz, and its vanes or teeth make multiples of that.',
    repair: 'Replace the pump or its rubber mounts, and look where its pipes touch the body.',
    applies: at('fixed'),
    reasons: { 'narrow-line': MACHINE },
  },
  {
    id: 'outside-machine',
    title: 'Something outside the vehicle: mains-driven machine or electrical pick-up',
    why: 'Compressors and lifts near a standing vehicle, or cables beside the sensor’s, bring tones of the mains.',
    repair: 'Record away from machines and mains cables.',
    applies: at('fixed'),
    reasons: { 'narrow-line': MACHINE, 'mains-tone': 'the tone lies on the mains frequency or twice it' },
  },
];
