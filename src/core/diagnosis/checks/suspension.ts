/** Checks of what holds the wheels, and of two axles against each other. Limits marked common practice have no published source known. */
import type { Check } from './check.ts';
import { drivesFront } from './on-vehicle.ts';

const PRACTICE = '(common practice, no source; the maker’s figure comes first)';

export const suspensionChecks: readonly Check[] = [
  {
    id: 'suspension-inspection',
    title: 'Shocks, ball joints, bushings and tie rods',
    kind: 'inspection',
    how: [
      'Look for oil on the shocks; bounce each corner and let go: it should come to rest after one swing.',
      'Take the load off the joints as the maker tells, rock the wheel top and bottom and side to side, and watch which joint moves.',
      'Pry at the bushings and look for torn rubber.',
    ],
    limit: `No play to be seen in joints without their load, no oil running from a shock ${PRACTICE}`,
    fine: 'Shocks, ball joints, bushings and tie rods are sound.',
    wrong: 'A shock leaks or does not damp, or a joint or bushing has play.',
    cautions: ['hoist', 'compressed-springs', 'turning-parts'],
  },
  {
    id: 'axles-matched',
    title: 'Tires and axle ratios, front against rear',
    kind: 'measurement',
    applies: drivesFront,
    how: [
      'At their pressures, mark each tire at the ground, roll the vehicle straight for one turn, and measure the way.',
      'Read both axle ratios from their tags or the maker’s plate, and divide the way by the ratio, front and rear.',
      'Ask whether the drive is used locked on dry pavement, and feel whether it scrubs in tight turns.',
    ],
    limit: `Way of a tire over axle ratio within 1 % front to rear ${PRACTICE}`,
    fine: 'Front and rear tires and axle ratios match.',
    wrong: 'Front and rear tires or axle ratios do not match.',
    cautions: ['locked-drive'],
  },
];
