/** Half-shafts: the tripod's three pushes a turn under torque, and what turns with the wheel, at the tire's rate. */
import type { Cause } from './cause.ts';
import { at, both, either, hasHalfShafts, knocks } from '../evidence/where.ts';

const TORQUE = 'the tripod pushes only under drive torque';
const SIDEWAYS = 'the tripod pushes along its shaft, across the vehicle';

export const halfShaft: readonly Cause[] = [
  {
    id: 'tripod-worn',
    title: 'Worn inner tripod joint',
    why: 'Grooves in the housing make the three rollers stick as they slide, so the joint pushes the vehicle sideways three times a turn.',
    repair: 'Replace the inner joint or the half-shaft, with the maker’s grease and the right amount of it.',
    applies: at('half-shaft', 3, 6),
    reasons: { 'found-pulling': TORQUE, 'mostly-sideways': SIDEWAYS, 'run-pull-coast': TORQUE, 'run-neutral': TORQUE },
  },
  {
    id: 'tripod-angle',
    title: 'Inner joint angle too large',
    why: 'The tripod’s sideways push grows with its angle, and with it the shake at three times a turn.',
    repair: 'Restore ride height and power-unit mounts until the inner joint runs at the maker’s angle.',
    applies: at('half-shaft', 3, 6),
    reasons: { 'found-pulling': TORQUE, 'mostly-sideways': SIDEWAYS, 'run-pull-coast': TORQUE, 'run-neutral': TORQUE },
  },
  {
    id: 'half-shaft-bent',
    title: 'Bent half-shaft or lost damper',
    why: 'A bent shaft turns with the wheel and pulls once a turn.',
    repair: 'Replace the half-shaft; check the clamp and place of its damper ring.',
    applies: both(hasHalfShafts, at('tire', 1, 2)),
    reasons: { 'square-with-speed': 'a bent shaft pulls with the square of speed' },
  },
  {
    id: 'outer-joint-worn',
    title: 'Worn outer joint of the half-shaft',
    why: 'Worn ball tracks let the joint bind and clunk as it turns with the wheel.',
    repair: 'Replace the joint or the half-shaft, and find out how the boot was lost.',
    applies: both(hasHalfShafts, either(at('tire', 1, 2), knocks('tire'))),
    reasons: { 'found-pulling': 'torque loads the worn tracks' },
  },
];
