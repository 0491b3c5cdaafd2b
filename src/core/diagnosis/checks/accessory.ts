/** Checks of what the belt drives. */
import type { Check } from './check.ts';

export const accessoryChecks: readonly Check[] = [
  {
    id: 'belt-off',
    title: 'Belt off, engine at the same speed',
    kind: 'swap',
    how: [
      'Standing and cold, take the belt off and hold the engine at the speed of the complaint for half a minute; record.',
      'If the shake is gone, it is something that the belt drives.',
    ],
    limit: 'Level fallen to half or less (common practice, no source)',
    fine: 'The shake stays with the belt off.',
    wrong: 'The shake is gone with the belt off.',
    cautions: ['belt-off', 'standing-engine', 'turning-parts'],
  },
  {
    id: 'accessory-spin',
    title: 'Turn the accessory by hand',
    kind: 'inspection',
    how: ['Belt off and engine stopped: turn each accessory by hand, feel for roughness, rock its shaft for play.'],
    limit: null,
    fine: 'The accessory turns smoothly and has no play.',
    wrong: 'The accessory is rough or has play.',
    cautions: ['belt-off', 'turning-parts'],
  },
  {
    id: 'pulley-runout',
    title: 'Runout of the pulleys',
    kind: 'measurement',
    how: ['Watch each pulley against a fixed pointer as the engine is turned by hand, or set a dial on its face.'],
    limit: '0.5 mm (0.020 in) at the face (common practice, no source; the maker’s figure comes first)',
    fine: 'The pulleys run true.',
    wrong: 'A pulley wobbles or runs out.',
    cautions: ['turning-parts'],
  },
  {
    id: 'belt-inspection',
    title: 'Belt and tensioner',
    kind: 'inspection',
    how: [
      'Look for lumps, cracks and missing ribs around the whole belt; watch the tensioner’s arm with the engine running, from a distance.',
    ],
    limit: null,
    fine: 'Belt and tensioner are sound and still.',
    wrong: 'The belt is damaged or the tensioner flutters.',
    cautions: ['standing-engine', 'turning-parts'],
  },
  {
    id: 'bracket-inspection',
    title: 'Brackets of the accessories',
    kind: 'inspection',
    how: [
      'Engine stopped: pry each accessory against its bracket, look for cracks and bright lines, and check the bolts’ torque.',
    ],
    limit: 'The maker’s torque',
    fine: 'The brackets are tight and whole.',
    wrong: 'A bracket is loose or cracked.',
    cautions: ['turning-parts', 'hot-parts'],
  },
];
