/** Checks of a cross joint: rings, end play, free movement, ears. */
import type { Check } from './check.ts';
import { limitTexts } from './limit-text.ts';
import { fastenersWereOff } from './on-vehicle.ts';

export const jointChecks: readonly Check[] = [
  {
    id: 'joint-fasteners',
    title: 'Fasteners and seats of the joints',
    kind: 'inspection',
    first: ({ part }, work) => part === 'driveshaft' && fastenersWereOff(work),
    how: [
      'Before it is driven again: put a torque wrench on every bolt, strap and U-bolt of joints and flanges, and look for bright rubbed faces.',
      'Look whether each cup lies down in its seat between the tabs, and each retaining ring sits in its groove all the way round.',
    ],
    limit: 'The maker’s torque',
    fine: 'Fasteners are at their torque, cups and rings are seated.',
    wrong: 'A fastener is loose, or a cup or ring is not seated.',
    cautions: ['hoist', 'stop-at-once', 'turning-parts'],
  },
  {
    id: 'ring-thickness',
    title: 'Thickness of the retaining rings in pairs',
    kind: 'measurement',
    how: [
      'Take the rings out one axis at a time and measure each with a micrometer.',
      'Note which side each came from; enter both axes.',
    ],
    limit: limitTexts('ring-difference'),
    fine: 'The retaining rings of each axis are equal.',
    wrong: 'The retaining rings of an axis are unequal, so the cross sits off center.',
    cautions: ['hoist', 'shaft-out', 'reassembly'],
  },
  {
    id: 'ring-fit',
    title: 'End play from grooves, cups and rings',
    kind: 'measurement',
    how: [
      'Measure the span between the ring grooves, the cross with its cups, and both rings.',
      'Span less cross and rings is the end play. With nothing left over the joint is pressed together.',
    ],
    limit: `${limitTexts('end-play-least', 'end-play')} That is too little to feel by hand.`,
    fine: 'Grooves and rings leave the joint its end play.',
    wrong: 'The rings leave no end play: the joint is pressed together.',
    cautions: ['hoist', 'shaft-out', 'reassembly'],
  },
  {
    id: 'joint-end-play',
    title: 'End play of each joint by dial',
    kind: 'measurement',
    how: [
      'Fix the dial’s base to the yoke that holds the cups, its tip on the cross or the other yoke along the trunnion, and push that to and fro.',
      'Do both axes of each joint.',
    ],
    limit: `${limitTexts('end-play')} That is too little to feel by hand.`,
    fine: 'End play of the joints is inside its limit.',
    wrong: 'End play of a joint is beyond its limit.',
    cautions: ['hoist', 'turning-parts'],
  },
  {
    id: 'joint-free-movement',
    title: 'Free movement of each cross by hand',
    kind: 'inspection',
    how: [
      'Mark and take out the shaft.',
      'Swing each yoke about both axes by hand to its full angle: it moves with an even light drag, without notch, stiff place or looseness, and no grease fitting touches.',
    ],
    limit: 'Even light drag through the whole swing (common practice, no source)',
    fine: 'Each cross moves freely and evenly by hand.',
    wrong: 'A cross is stiff, notchy or loose by hand.',
    cautions: ['hoist', 'shaft-out', 'reassembly'],
  },
  {
    id: 'joint-apart',
    title: 'Take the joint apart and look',
    kind: 'inspection',
    how: [
      'Press the cups out with the ears supported, and look at trunnions, needles, cups, seats and grooves; count the needles.',
      'Measure the cross over its cups on both axes, and compare it with the figures of the joint that belongs there.',
    ],
    limit: 'No grooves, rust, dry needles, burrs or squeezed cups (common practice, no source)',
    fine: 'Trunnions, needles, cups and seats are good.',
    wrong: 'Trunnions, needles, cups or seats are damaged.',
    cautions: ['hoist', 'shaft-out', 'reassembly'],
  },
  {
    id: 'ear-alignment',
    title: 'Alignment of the yoke ears',
    kind: 'inspection',
    how: [
      'With the cross out, pass a close-fitting bar through both bores of the yoke.',
      'It must slide through both without force; look for hammer marks.',
    ],
    limit: 'Bar slides through both bores (common practice, no source)',
    fine: 'Both bores of each yoke are in line.',
    wrong: 'The bores of a yoke are out of line: an ear is bent.',
    cautions: ['hoist', 'shaft-out', 'reassembly'],
  },
];
