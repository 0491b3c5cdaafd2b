/** Checks of the driveshaft itself. Limits marked common practice have no published source known. */
import type { Check } from './check.ts';
import { limitTexts } from './limit-text.ts';

export const driveshaftChecks: readonly Check[] = [
  {
    id: 'phasing-marks',
    title: 'Phase of the forks and their marks',
    kind: 'inspection',
    how: [
      'Sight along the shaft: the forks at both ends of a piece stand in line, or at the maker’s offset.',
      'Look for alignment marks at the slip spline and whether they meet.',
    ],
    limit: limitTexts('fork-twist'),
    fine: 'The forks are in phase.',
    wrong: 'The forks are out of phase, or the marks do not meet.',
    cautions: ['hoist', 'turning-parts'],
  },
  {
    id: 'companion-flange-runout',
    title: 'Runout of the companion flange',
    kind: 'measurement',
    how: [
      'Mark and lower the shaft.',
      'Set a dial on the flange’s pilot, then on its face, and turn the pinion by hand through a full turn.',
    ],
    limit: limitTexts('flange-runout'),
    fine: 'The companion flange runs true.',
    wrong: 'The companion flange runs out beyond its limit.',
    cautions: ['hoist', 'shaft-out', 'turning-parts'],
  },
  {
    id: 'tube-runout',
    title: 'Runout of the tube at three stations',
    kind: 'measurement',
    how: [
      'Clean the tube 75 mm (3 in) from each weld and in the middle.',
      'Set a dial at each station and turn the wheels by hand, transmission in neutral.',
    ],
    limit: limitTexts('tube-runout-middle', 'tube-runout-ends'),
    fine: 'The tube runs true at all stations measured.',
    wrong: 'The tube runs out beyond its limit.',
    cautions: ['hoist', 'one-wheel-free', 'turning-parts'],
  },
  {
    id: 'shaft-inspection',
    title: 'Look over the driveshaft',
    kind: 'inspection',
    how: [
      'Look for a clean or rusty patch where a weight sat, for dents, and for undercoating or mud on the tube.',
      'Look for paint marks at the flange and whether they meet.',
    ],
    limit: null,
    fine: 'Nothing to be seen on the shaft: weights in place, no dent, no mud, marks meet.',
    wrong: 'The shaft shows a lost weight, a dent, mud, or marks that do not meet.',
    cautions: ['hoist', 'turning-parts'],
  },
  {
    id: 'reindex-shaft',
    title: 'Turn the shaft 180° on its flange',
    kind: 'swap',
    how: [
      'Mark the shaft and flange, unbolt the shaft, turn it by half a turn on the flange and bolt it up to torque.',
      'Record again at the same speed. It counts as changed from a third up or down.',
    ],
    limit: 'Level of driveshaft 1× changed by a third or more (common practice, no source)',
    fine: 'Turning the shaft on its flange changed little.',
    wrong: 'Turning the shaft on its flange changed the level by a third or more.',
    cautions: ['hoist', 'shaft-out', 'reassembly', 'road-test'],
  },
  {
    id: 'clamp-trial',
    title: 'Trial clamp on the shaft',
    kind: 'measurement',
    how: [
      'Fit one worm-drive clamp near the rear weld and record; move it to 120° and 240° and record again.',
      'Enter the levels; the best place and weight are computed. It counts as answered when the level can be halved.',
    ],
    limit: 'Level brought to half or less (common practice, no source)',
    fine: 'No place of the clamp brought the level down.',
    wrong: 'A clamp brings the level to half or less.',
    cautions: ['trial-weight', 'hoist', 'ride-height', 'one-wheel-free', 'turning-parts', 'road-test'],
  },
  {
    id: 'slip-yoke-play',
    title: 'Play of the slip yoke',
    kind: 'measurement',
    how: [
      'Set a dial on the slip yoke close to the seal and lift the shaft by hand.',
      'Feel for twist play in the splines.',
    ],
    limit: limitTexts('slip-yoke-play'),
    fine: 'The slip yoke is tight in its bush and splines.',
    wrong: 'The slip yoke has too much play.',
    cautions: ['hoist', 'turning-parts'],
  },
  {
    id: 'u-bolt-torque',
    title: 'Torque of the joint’s U-bolts or straps',
    kind: 'measurement',
    how: [
      'Loosen each nut, marking its place, and tighten it evenly to the maker’s torque.',
      'Note whether it had been far above, and look for squeezed cups.',
    ],
    limit: 'The maker’s torque',
    fine: 'The U-bolts or straps were at their torque.',
    wrong: 'The U-bolts or straps were far from their torque, or the cups are squeezed.',
    cautions: ['hoist', 'shaft-out'],
  },
  {
    id: 'critical-speed',
    title: 'Critical speed from tube and length',
    kind: 'measurement',
    how: [
      'Measure joint-to-joint length, outer diameter and wall of each piece and enter them.',
      'Compare the speed of the complaint with the critical speed, and with half of it.',
    ],
    limit: limitTexts('whirl-share'),
    fine: 'The shaft runs well clear of its critical speed.',
    wrong: 'The shaft runs near its critical speed or near half of it.',
    cautions: ['turning-parts'],
  },
];
