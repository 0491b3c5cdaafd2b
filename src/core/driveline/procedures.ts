/** How each bench measurement is made, its limits, and what can hurt. Data only; in our own words. */
import type { CautionId } from '../cautions.ts';
import type { LimitId } from './limits/limit.ts';

export interface Procedure {
  readonly title: string;
  readonly how: readonly string[];
  readonly limits: readonly LimitId[];
  readonly cautions: readonly CautionId[];
}

export const PROCEDURES = {
  'working-angles': {
    title: 'Working angles',
    how: [
      'Set the vehicle at ride height, weight on its wheels or its axles on stands, fuel and load as in the complaint.',
      'Read the slope of the transmission output, each shaft piece and the pinion, on machined or cleaned surfaces, two readings each with the instrument turned end for end, and take the mean.',
      'Say for each which end is lower. The reference does not matter as long as it is the same for all.',
      'Where the shaft runs sideways, measure each joint center from one straight line along the vehicle.',
      'Sight along each shaft piece: the forks at its two ends belong in line unless the maker set them otherwise.',
    ],
    limits: [
      'residual-acceleration',
      'inertia-drive',
      'inertia-coast',
      'joint-angle-difference',
      'joint-angle-least',
      'joint-angle-most',
      'flexible-disc-angle',
      'fork-twist',
    ],
    cautions: ['ride-height', 'hoist', 'turning-parts'],
  },
  'double-cardan': {
    title: 'Half-angles of a double-Cardan joint',
    how: [
      'At ride height, lay the inclinometer on the shaft in front, on the center yoke, and on the shaft behind.',
      'Turn the shaft a quarter turn and read again; a difference tells of a worn centering ball.',
    ],
    limits: ['double-cardan-split'],
    cautions: ['ride-height', 'hoist', 'turning-parts'],
  },
  'ride-height': {
    title: 'Ride height',
    how: ['On level ground, tires at their pressure, measure between the points the maker names, on both sides.'],
    limits: ['ride-height'],
    cautions: ['hoist'],
  },
  'end-play': {
    title: 'End play of a joint',
    how: [
      'Fix the dial’s base to the yoke that holds the cups of this axis, its tip on the cross or on the other yoke, in line with the trunnion.',
      'Push the other yoke to and fro along that trunnion, by hand only, and read the whole movement: the cross slides between its cups.',
      'Do both axes of the joint. The limit is too little to feel by hand: trust the dial.',
    ],
    limits: ['end-play'],
    cautions: ['hoist', 'turning-parts'],
  },
  rings: {
    title: 'Retaining rings and centering',
    how: [
      'Mark shaft, yokes and which side each ring came from before anything comes apart.',
      'Measure each ring with a micrometer, the span between the two grooves, and the cross with both cups pressed home.',
      'Clean the grooves and look for burrs: a raised edge moves the joint as a thicker ring does.',
      'Choose the pair that is equal on both sides and leaves the end play; then check by dial and by hand.',
    ],
    limits: ['end-play', 'end-play-least', 'ring-difference'],
    cautions: ['hoist', 'shaft-out', 'reassembly'],
  },
  'radial-play': {
    title: 'Radial play by dial',
    how: ['Set a dial square to the shaft close to the part, lever up and down lightly, and read the whole movement.'],
    limits: ['slip-yoke-play', 'center-bearing-play'],
    cautions: ['hoist', 'turning-parts'],
  },
  runout: {
    title: 'Runout by dial',
    how: [
      'Clean paint, rust and undercoating off the track, make a paint mark, and zero the dial there.',
      'Turn by hand and read at eight even steps around, starting at the mark; come back to zero at the end.',
      'Tube: near both welds and at mid length. Flange: on the pilot and on the face. Wheel and tire: radially and sideways.',
      'Keep the mark the same for flange and tube, so that the readings can be added as vectors.',
    ],
    limits: [
      'tube-runout-middle',
      'tube-runout-ends',
      'flange-runout',
      'wheel-runout-steel',
      'wheel-runout-alloy',
      'tire-runout',
    ],
    cautions: ['hoist', 'turning-parts', 'one-wheel-free'],
  },
  'match-mounting': {
    title: 'Tire turned on its rim',
    how: [
      'Read tire and rim radially at eight even steps from one mark, the valve, in one sense, without taking the wheel off its hub between.',
      'Mark the tire, let the air out, break both beads, lubricate them, and turn the tire to the place worked out.',
      'Seat the beads, set the pressure, read the tire again, and balance the wheel.',
    ],
    limits: ['tire-runout'],
    cautions: ['tire-off-rim', 'wheel-off', 'turning-parts'],
  },
  'flange-reindex': {
    title: 'Shaft turned on its flange',
    how: [
      'Mark shaft and flange. Undo the flange, turn the shaft on by whole bolt positions, tighten to the maker’s torque. A flange of three bolts has no half turn; where the maker’s marks fix the position, leave it there.',
      'Repeat the run at the same speed and load. Three positions well spread foretell all others.',
    ],
    limits: [],
    cautions: ['hoist', 'shaft-out', 'reassembly', 'road-test'],
  },
  'balance-with-phase': {
    title: 'Balancing with phase',
    how: [
      'Put right runout, joints and mounts first: weights do not cure them.',
      'Run at one steady speed and read amplitude and phase against a mark on the shaft.',
      'Fit a known trial weight at a known angle, run again at the same speed, and read again; one run for each plane.',
      'Count weight angles and phases in the same sense. Take the trial weight off unless you say it stays.',
      'Fit the correction and prove it with one more run.',
    ],
    limits: ['driveshaft-grade', 'unbalance-share'],
    cautions: ['hoist', 'ride-height', 'turning-parts', 'trial-weight', 'one-wheel-free'],
  },
  'balance-without-phase': {
    title: 'Balancing without phase',
    how: [
      'Put right runout, joints and mounts first: weights do not cure them.',
      'Record once as found at one steady speed.',
      'Fit one clamp at three or more positions well spread around the shaft, one run each at the same speed. Its screw is the heavy place: count its angle from a paint mark, always in one sense.',
      'Fit the correction and prove it with one more run.',
    ],
    limits: ['driveshaft-grade', 'unbalance-share'],
    cautions: ['hoist', 'ride-height', 'trial-weight', 'turning-parts', 'road-test'],
  },
  'wheel-balance': {
    title: 'Wheel on the balancer',
    how: [
      'Clean the wheel and its seat, center it by its bore, and read both planes; turn it on its cone and read again.',
    ],
    limits: ['wheel-unbalance', 'wheel-grade'],
    cautions: ['wheel-off', 'turning-parts'],
  },
  whirl: {
    title: 'Critical speed of a shaft piece',
    how: [
      'Measure joint center to joint center, the outer diameter of the tube, and its wall thickness (by ultrasound or from the maker).',
      'Compare the driveshaft’s top speed with the safe speed: wheel speed times axle ratio.',
    ],
    limits: ['whirl-share'],
    cautions: ['hoist', 'turning-parts'],
  },
} as const satisfies Record<string, Procedure>;

export type ProcedureId = keyof typeof PROCEDURES;

/** The procedure with its fields as plain lists. */
export const procedureOf = (id: ProcedureId): Procedure => PROCEDURES[id];
