/** Checks of what holds the driveshaft: working angles, mounts, center bearing, axle. Limits marked common practice have no published source known. */
import type { Check } from './check.ts';
import { limitTexts } from './limit-text.ts';
import { heightWasChanged } from './on-vehicle.ts';

const PRACTICE = '(common practice, no source; the maker’s figure comes first)';

export const supportChecks: readonly Check[] = [
  {
    id: 'working-angles',
    title: 'Working angles at ride height',
    kind: 'measurement',
    first: ({ part, order }, work) => part === 'driveshaft' && order === 2 && heightWasChanged(work),
    how: [
      'Bring the vehicle to ride height on a level drive-on hoist, or on stands under the axles.',
      'Read the slope of transmission output, each shaft piece and pinion with one inclinometer, always facing the same way.',
      'Enter the readings; what the joints leave of each other, and the difference of their angles, are computed.',
    ],
    limit: limitTexts('residual-acceleration', 'joint-angle-difference'),
    fine: 'Working angles are inside the limits.',
    wrong: 'Working angles are outside the limits.',
    cautions: ['hoist', 'ride-height', 'turning-parts'],
  },
  {
    id: 'joint-angle-size',
    title: 'How large the joint angles are',
    kind: 'measurement',
    how: [
      'At ride height, read the same slopes as for the working angles: entered once, they answer both checks.',
      'Equal angles may still be large: a loaded joint bends its shafts twice a turn, the more the larger its angle.',
    ],
    limit: limitTexts('joint-angle-most', 'inertia-drive'),
    fine: 'No joint angle is large.',
    wrong: 'A joint angle is large, whether or not the other equals it.',
    cautions: ['hoist', 'ride-height', 'turning-parts'],
  },
  {
    id: 'ride-height',
    title: 'Ride height',
    kind: 'measurement',
    how: [
      'Park on a level floor with normal load and tire pressure, bounce the vehicle and let it settle.',
      'Measure at the maker’s points, left and right.',
    ],
    limit: limitTexts('ride-height'),
    fine: 'Ride height is right.',
    wrong: 'Ride height is off.',
    cautions: [],
  },
  {
    id: 'mount-inspection',
    title: 'Transmission mount and crossmember',
    kind: 'inspection',
    how: [
      'Pry the transmission gently upwards and watch the mount for separated or sunken rubber.',
      'Compare its height with the maker’s figure, and look whether the crossmember sits in its holes.',
    ],
    limit: null,
    fine: 'The transmission mount is sound and at its height.',
    wrong: 'The transmission mount has sagged, is broken, or sits wrong.',
    cautions: ['hoist'],
  },
  {
    id: 'axle-seat-inspection',
    title: 'Axle seat: wedges, perches, bushings',
    kind: 'inspection',
    how: [
      'Look at wedges (there, and thick end the right way), spring perches, axle U-bolts and center bolts.',
      'Pry at control arm or spring bushings and look for movement.',
    ],
    limit: null,
    fine: 'Wedges, perches and bushings of the axle are right.',
    wrong: 'The axle can turn, or a wedge is missing or the wrong way.',
    cautions: ['hoist', 'compressed-springs'],
  },
  {
    id: 'double-cardan-play',
    title: 'Centering of the double-Cardan joint',
    kind: 'inspection',
    how: [
      'Push the joint’s center sideways by hand and feel for play of the ball in its seat; look for rust dust, and grease its own fitting where it has one.',
      'If it squeaks or feels stiff, take the shaft out and swing the joint to its full angle: it moves evenly, without a notch. One that binds is not driven.',
      'Measure both half-angles at ride height; they are equal in a sound joint.',
    ],
    limit: limitTexts('double-cardan-split'),
    fine: 'The double-Cardan joint centers well and moves freely.',
    wrong: 'The double-Cardan joint’s ball has play or binds, or its half-angles differ.',
    cautions: ['hoist', 'ride-height', 'shaft-out', 'turning-parts'],
  },
  {
    id: 'center-bearing-inspection',
    title: 'Center support bearing',
    kind: 'inspection',
    how: [
      'Push the shaft up and sideways at the bearing: look for torn rubber and for play.',
      'Turn it by hand and feel for roughness; check the bracket bolts.',
    ],
    limit: null,
    fine: 'The center bearing is tight, smooth and its rubber whole.',
    wrong: 'The center bearing has play, is rough, or its rubber is torn.',
    cautions: ['hoist', 'turning-parts'],
  },
  {
    id: 'center-bearing-height',
    title: 'Shim the center bearing and move off again',
    kind: 'swap',
    how: [
      'Fit shims of 6 mm (1/4 in) under the center bearing, or take as much away, within the maker’s range.',
      'Record moving off in the same way as before. If the level moves by a third or more, up or down, the height has a part in it.',
    ],
    limit: 'Level of driveshaft 2× on moving off changed by a third or more (common practice, no source)',
    fine: 'The height of the center bearing changed little.',
    wrong: 'The height of the center bearing changed the shudder.',
    cautions: ['hoist', 'reassembly', 'road-test'],
  },
  {
    id: 'pinion-bearing-play',
    title: 'Play of the pinion and the transmission output',
    kind: 'measurement',
    how: [
      'Lift and push the pinion flange by hand, up and down and in and out: the seal may give, the shaft may not.',
      'Turning it to and fro is backlash of the gears, which is no play of the bearing.',
      'A bolted output flange of the transmission likewise. A slip yoke has a little play up and down in its bush by nature: see its own check.',
    ],
    limit: `No play of pinion or bolted output flange to be felt ${PRACTICE}`,
    fine: 'Pinion and output bearings have no play.',
    wrong: 'A pinion or output bearing has play.',
    cautions: ['hoist', 'turning-parts'],
  },
  {
    id: 'gear-pattern',
    title: 'Contact pattern and backlash of the axle',
    kind: 'measurement',
    how: [
      'Open the axle, paint a few teeth, and turn it both ways against a drag.',
      'Measure backlash in four places and pinion preload.',
    ],
    limit: 'The maker’s pattern, backlash and preload',
    fine: 'Contact pattern and backlash are as set.',
    wrong: 'Contact pattern or backlash is off.',
    cautions: ['hoist', 'turning-parts'],
  },
  {
    id: 'axle-oil',
    title: 'Oil of the axle',
    kind: 'inspection',
    how: ['Check the level, drain a little through a cloth, and look for metal beyond a fine paste on the magnet.'],
    limit: null,
    fine: 'The axle oil is at its level and carries no metal.',
    wrong: 'The axle oil is low or carries metal.',
    cautions: ['hoist', 'hot-parts'],
  },
];
