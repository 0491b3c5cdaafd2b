/** Tooth mesh of pinion and ring gear: a whine at driveshaft speed times pinion teeth. */
import type { Cause } from './cause.ts';
import { both, burnsFuel } from '../evidence/where.ts';

const mesh: Cause['applies'] = (basis) =>
  basis.role === 'mesh' && (basis.part === 'driveshaft' || basis.part === 'tire' || basis.part === 'half-shaft');

export const axleGears: readonly Cause[] = [
  {
    id: 'gear-setting',
    title: 'Pinion depth, backlash or preload of the axle not as set',
    why: 'When the contact patch leaves the middle of the tooth each tooth pair gives a small push, and the axle sings at tooth frequency.',
    repair: 'Take the contact pattern and backlash, and set pinion depth and preload by the maker’s procedure.',
    applies: both(mesh, burnsFuel),
    reasons: {
      heard: 'gear whine is heard long before it is felt',
      'axle-ratio-changed': 'a new gear set has to be set up from nothing',
      'flange-removed': 'taking the flange off can change the pinion preload',
    },
  },
  {
    id: 'gears-worn',
    title: 'Worn or damaged axle gears or bearings',
    why: 'Worn tooth flanks and loose bearings change the mesh, and the tooth frequency grows.',
    repair: 'Drain and look for metal, inspect the teeth, and overhaul the axle.',
    applies: both(mesh, burnsFuel),
    reasons: { heard: 'gear whine is heard long before it is felt' },
  },
];
