/**
 * Every weight of the cause ranking, in one place. All of it is JUDGMENT: the values stand for what a shop with long
 * practice would expect, not for a count of repairs, and no published table of them is known. Change them here only.
 *
 * CAUSE_WEIGHTS, a row a cause:
 *   prior   how often it is the culprit when its part and order shake and nothing else is known (only ratios count)
 *   withoutWork factor where no work on record could have brought this cause; of causes that only work brings
 *   signs   likelihood ratio of a sign: how much more often it shows with this cause than with the others
 *   work    likelihood ratio of work done before the complaint
 * CHECK_WEIGHTS, a row a check: minutes of a practised technician; P(the check finds something wrong | cause); for
 *   causes not listed the value of their part, or of its name where several parts are of a kind; for all others `rest`, the share of healthy vehicles that fail it too.
 */
import type { WorkDone } from '../job/job.ts';
import type { Part } from '../vehicle/line.ts';
import type { Sign } from './signs.ts';

export interface CauseWeights {
  readonly prior: number;
  readonly withoutWork?: number;
  readonly signs?: Readonly<Partial<Record<Sign, number>>>;
  readonly work?: Readonly<Partial<Record<WorkDone, number>>>;
}

/** Weight of 'something else' beside the listed causes; no sign or work moves it, checks fail at `rest`. */
export const SOMETHING_ELSE_PRIOR = 8;
/** A ratio nearer to 1 than this moves the numbers but is not worth a sentence. */
export const LEAST_RATIO_TOLD = 1.15;
/** A clear outcome is still believed only this far: readings are misread, and tables are judgment. */
export const OUTCOME_TRUST = 0.95;
/** What naming an unnamed tone counts beside a finding that is named and shakes more: the technician repairs that first. */
export const UNNAMED_IMPORTANCE = 0.25;
/** How fast belief turns about a limit: the odds that it is wrong grow with this power of the share of the limit used. */
export const LIMIT_SHARPNESS = 4;
/** A load run counts as stronger from this level ratio on, and how blurred (natural log) that edge is. */
export const STRONGER_RATIO = 1.5;
export const STRONGER_BLUR = 0.2;
/** kg a rotating force at the shaft seems to push where the sensor sits, and its spread as a factor. */
export const SEEMING_MASS_KG = 300;
export const SEEMING_MASS_SPREAD = 3;
/**
 * What is outside its limit may shake so many times as much as the force worked out from it says: that is the tube's
 * alone, without the joint and without what a resonance adds.
 */
export const FAULT_GAIN = 4;

/** The same ratio for a joint replaced at any place. */
const afterJoint = (ratio: number): Partial<Record<WorkDone, number>> => ({
  'joint-replaced-front': ratio,
  'joint-replaced-rear': ratio,
  'joint-replaced-center': ratio,
});

// prettier-ignore
export const CAUSE_WEIGHTS = {
  // driveshaft 1×
  'shaft-unbalance': { prior: 26, signs: { 'square-with-speed': 1.5, 'flat-with-speed': 0.4, 'once-alone': 1.4, 'twice-too': 0.7 }, work: { ...afterJoint(1.3), 'shaft-removed': 1.2, 'shaft-replaced': 2 } },
  'tube-runout': { prior: 14, signs: { 'square-with-speed': 1.3, 'steep-with-speed': 1.6, 'flat-with-speed': 0.4, 'once-alone': 1.2 }, work: { 'shaft-removed': 1.3, 'shaft-replaced': 0.7 } },
  'companion-flange-runout': { prior: 11, signs: { 'square-with-speed': 1.3, 'once-alone': 1.3 }, work: { 'flange-removed': 4, 'axle-ratio-changed': 2.5, 'shaft-removed': 1.2 } },
  'shaft-not-indexed': { prior: 6, withoutWork: 0.2, signs: { 'square-with-speed': 1.3, 'once-alone': 1.3 }, work: { ...afterJoint(2.5), 'shaft-removed': 4, 'flange-removed': 3, 'transmission-removed': 3, 'axle-ratio-changed': 2.5, 'center-bearing-replaced': 2 } },
  'joint-off-center': { prior: 10, withoutWork: 0.3, signs: { 'square-with-speed': 1.4, 'once-alone': 1.3, 'flat-with-speed': 0.5 }, work: { ...afterJoint(4.5), 'ears-pressed-or-hammered': 1.8, 'center-bearing-replaced': 1.8 } },
  'slip-yoke-worn': { prior: 9, signs: { 'twice-too': 1.3, 'found-pulling': 1.2 }, work: { 'transmission-removed': 1.3, 'shaft-replaced': 0.7 } },
  'joint-loose': { prior: 12, signs: { 'twice-too': 1.8, 'once-alone': 0.7 }, work: { ...afterJoint(0.6) } },
  'center-bearing': { prior: 8, signs: { 'two-piece': 1.6, 'twice-too': 1.2, 'found-pulling': 1.2 }, work: { 'center-bearing-replaced': 1.5 } },
  'pinion-or-output-bearing': { prior: 5, signs: { 'twice-too': 1.2 }, work: { 'axle-ratio-changed': 2, 'transmission-removed': 1.5 } },
  'shaft-near-critical': { prior: 4, signs: { 'steep-with-speed': 3, 'near-critical': 8, 'far-from-critical': 0.1 }, work: { 'axle-ratio-changed': 2, 'shaft-replaced': 2, 'tire-size-changed': 1.3 } },
  // joints: driveshaft 1× and 2×
  'new-part-bad': { prior: 4, withoutWork: 0.08, signs: { 'twice-too': 1.2 }, work: { ...afterJoint(4), 'shaft-replaced': 2.5, 'center-bearing-replaced': 1.5 } },
  'ears-bent': { prior: 5, withoutWork: 0.3, signs: { 'twice-too': 1.6, 'once-too': 1.4, 'four-times-too': 1.4 }, work: { ...afterJoint(2.5), 'ears-pressed-or-hammered': 6 } },
  'yoke-seat-burrs': { prior: 4, withoutWork: 0.3, signs: { 'twice-too': 1.2, 'once-too': 1.2 }, work: { ...afterJoint(3.5), 'ears-pressed-or-hammered': 2, 'flange-removed': 1.5 } },
  'u-bolt-overtightened': { prior: 4, withoutWork: 0.3, signs: { 'twice-too': 1.3 }, work: { ...afterJoint(2.2), 'joint-replaced-front': 1.3, 'joint-replaced-rear': 3.5, 'shaft-removed': 3, 'axle-ratio-changed': 2 } },
  'fasteners-loose': { prior: 4, withoutWork: 0.3, signs: { 'twice-too': 1.2, 'found-pulling': 1.2 }, work: { ...afterJoint(2.5), 'joint-replaced-front': 2, 'shaft-removed': 3, 'shaft-replaced': 2.5, 'flange-removed': 3, 'axle-ratio-changed': 2, 'transmission-removed': 2, 'center-bearing-replaced': 2 } },
  'needle-fallen': { prior: 3, withoutWork: 0.05, signs: { 'twice-too': 1.3, 'once-too': 1.3, 'once-alone': 0.8 }, work: { ...afterJoint(5), 'shaft-replaced': 1.5 } },
  'ring-not-seated': { prior: 3, withoutWork: 0.1, work: { ...afterJoint(4), 'ears-pressed-or-hammered': 1.5, 'shaft-replaced': 1.5 } },
  'cup-not-seated': { prior: 3, withoutWork: 0.1, signs: { 'once-alone': 0.9 }, work: { ...afterJoint(2.5), 'joint-replaced-rear': 3.5, 'shaft-removed': 2, 'axle-ratio-changed': 2 } },
  'wrong-joint': { prior: 2, withoutWork: 0.1, work: { ...afterJoint(3), 'shaft-replaced': 2 } },
  'fitting-fouls': { prior: 1, withoutWork: 0.1, work: { ...afterJoint(4), 'ride-height-changed': 2 } },
  // driveshaft 2×
  'angles-from-mount': { prior: 16, signs: { 'square-with-speed': 1.3, 'twice-alone': 1.4, 'once-too': 0.7, 'found-standing': 0.2 }, work: { 'mounts-changed': 3.5, 'transmission-removed': 3 } },
  'angles-from-ride-height': { prior: 13, signs: { 'square-with-speed': 1.3, 'twice-alone': 1.4, 'once-too': 0.7 }, work: { 'ride-height-changed': 6, 'springs-changed': 4, 'tire-size-changed': 1.3 } },
  'angles-from-axle': { prior: 12, signs: { 'square-with-speed': 1.2, 'twice-alone': 1.3, 'once-too': 0.7, 'found-pulling': 1.3 }, work: { 'springs-changed': 3, 'ride-height-changed': 2.5, 'axle-ratio-changed': 1.5 } },
  'forks-out-of-phase': { prior: 8, withoutWork: 0.25, signs: { 'square-with-speed': 1.3, 'twice-alone': 1.3, 'found-pulling': 1.1 }, work: { ...afterJoint(2.2), 'shaft-removed': 4, 'shaft-replaced': 3, 'transmission-removed': 2, 'center-bearing-replaced': 3 } },
  'ring-too-tight': { prior: 6, withoutWork: 0.25, signs: { 'once-too': 1.4, 'four-times-too': 1.4, 'flat-with-speed': 1.4 }, work: { ...afterJoint(4), 'ears-pressed-or-hammered': 2 } },
  'trunnions-worn': { prior: 16, signs: { 'once-too': 1.3, 'four-times-too': 1.6, 'twice-alone': 0.9 }, work: { ...afterJoint(0.4), 'shaft-replaced': 0.2 } },
  'secondary-couple': { prior: 8, signs: { 'found-pulling': 2, 'flat-with-speed': 2, 'square-with-speed': 0.7 }, work: { 'ride-height-changed': 2, 'springs-changed': 1.5 } },
  'double-cardan-centering': { prior: 7, signs: { 'double-cardan': 3, 'square-with-speed': 1.2, 'once-too': 1.2 }, work: { 'ride-height-changed': 1.5 } },
  'launch-shudder': { prior: 8, signs: { 'low-speed': 6, 'road-speed': 0.05, 'found-pulling': 2, 'found-cruising': 0.3, 'two-piece': 1.6, 'falls-with-speed': 2.5, 'square-with-speed': 0.4 }, work: { 'center-bearing-replaced': 2.5, 'ride-height-changed': 2, 'springs-changed': 2 } },
  'shaft-near-half-critical': { prior: 3, signs: { 'steep-with-speed': 3, 'near-half-critical': 6, 'far-from-critical': 0.1 }, work: { 'axle-ratio-changed': 1.5, 'shaft-replaced': 1.5 } },
  'drive-wind-up': { prior: 4, signs: { 'axle-ratios-apart': 5, 'flat-with-speed': 1.3, 'square-with-speed': 0.7 }, work: { 'axle-ratio-changed': 3, 'tire-size-changed': 2.5, 'tires-replaced': 1.8 } },
  // driveshaft mesh
  'gear-setting': { prior: 30, withoutWork: 0.5, signs: { heard: 1.3 }, work: { 'axle-ratio-changed': 5, 'flange-removed': 2.5 } },
  'gears-worn': { prior: 30, signs: { heard: 1.2 } },
  // tire
  'tire-unbalance': { prior: 32, signs: { 'square-with-speed': 1.6, 'flat-with-speed': 0.4, 'tire-once-alone': 1.5, 'tire-higher-too': 0.6, 'found-braking': 0.5, beats: 1.2 }, work: { 'wheels-balanced': 0.3, 'tires-replaced': 1.3 } },
  'tire-runout': { prior: 16, signs: { 'flat-with-speed': 1.4, 'tire-higher-too': 1.4, 'tire-higher-alone': 1.3, 'mostly-vertical': 1.2, beats: 1.1 }, work: { 'tires-replaced': 1.5, 'wheels-balanced': 1.4 } },
  'tire-force-variation': { prior: 16, signs: { 'flat-with-speed': 1.5, 'tire-higher-too': 1.4, 'mostly-vertical': 1.3, beats: 1.2 }, work: { 'wheels-balanced': 1.6, 'tires-replaced': 1.5 } },
  'bent-wheel': { prior: 10, signs: { 'tire-higher-too': 1.3, 'mostly-vertical': 1.1 }, work: { 'tires-replaced': 1.2, 'wheels-balanced': 1.2 } },
  'hub-runout': { prior: 6, signs: { 'tire-once-alone': 1.2, 'mostly-sideways': 1.3 }, work: { 'brakes-replaced': 1.5, 'tires-rotated': 0.8 } },
  'wheel-not-centered': { prior: 6, withoutWork: 0.4, signs: { 'tire-once-alone': 1.3 }, work: { 'tire-size-changed': 2, 'tires-rotated': 3, 'tires-replaced': 2.5, 'wheels-balanced': 2, 'brakes-replaced': 2 } },
  'flat-spot': { prior: 5, signs: { 'tire-higher-too': 1.8, 'tire-once-too': 1.4, 'tire-once-alone': 0.5, 'mostly-vertical': 1.2 }, work: { 'tires-replaced': 0.4 } },
  'belt-separated': { prior: 6, signs: { 'tire-higher-too': 1.7, 'tire-once-too': 1.4, 'tire-once-alone': 0.5 }, work: { 'tires-replaced': 0.4 } },
  'wheel-bearing-loose': { prior: 3, signs: { 'mostly-sideways': 1.2 }, work: { 'brakes-replaced': 1.3 } },
  'suspension-worn': { prior: 5, signs: { 'mostly-sideways': 1.2, 'steep-with-speed': 1.5 }, work: { 'wheels-balanced': 1.3 } },
  'rotor-thickness': { prior: 4, signs: { 'tire-higher-alone': 1.3, 'found-braking': 15, 'found-cruising': 0.15, 'found-pulling': 0.15, 'mostly-sideways': 1.2 }, work: { 'brakes-replaced': 1.5, 'tires-rotated': 1.3 } },
  'object-in-tread': { prior: 6, work: { 'tires-replaced': 0.7 } },
  'wheel-loose': { prior: 3, withoutWork: 0.4, signs: { 'mostly-sideways': 1.2 }, work: { 'tires-rotated': 3.5, 'tires-replaced': 3, 'wheels-balanced': 2.5, 'brakes-replaced': 3 } },
  'brake-rubs': { prior: 5, signs: { 'found-braking': 3 }, work: { 'brakes-replaced': 2.5 } },
  // half-shaft
  'tripod-worn': { prior: 34, signs: { 'found-pulling': 1.3, 'mostly-sideways': 1.4 } },
  'tripod-angle': { prior: 28, signs: { 'found-pulling': 1.3, 'mostly-sideways': 1.4 }, work: { 'ride-height-changed': 5, 'springs-changed': 4, 'mounts-changed': 3 } },
  'half-shaft-bent': { prior: 2, signs: { 'square-with-speed': 1.5 }, work: { 'transmission-removed': 1.3 } },
  'outer-joint-worn': { prior: 2, signs: { 'found-pulling': 1.3 } },
  // engine
  'misfire-ignition': { prior: 34, signs: { 'half-orders-too': 1.3, 'found-pulling': 1.4 }, work: { 'engine-repaired': 1.3 } },
  'misfire-fuel': { prior: 24, signs: { 'half-orders-too': 1.2 }, work: { 'engine-repaired': 1.3 } },
  'misfire-compression': { prior: 16, signs: { 'half-orders-too': 1.2 }, work: { 'engine-repaired': 1.5 } },
  'flexplate-or-converter': { prior: 24, signs: { 'square-with-speed': 1.4, 'half-orders-absent': 1.2, 'firing-low': 1.5, 'firing-too': 0.7, 'found-standing': 1.2 }, work: { 'transmission-removed': 5 } },
  'crank-damper': { prior: 17, signs: { 'square-with-speed': 1.4, 'half-orders-absent': 1.2, 'firing-low': 1.5, 'firing-too': 0.7 }, work: { 'engine-repaired': 2.5 } },
  'engine-mount': { prior: 26, signs: { 'half-orders-absent': 1.2, 'firing-low': 0.6, 'firing-too': 1.5 }, work: { 'mounts-changed': 2.5, 'engine-repaired': 1.8, 'transmission-removed': 1.8 } },
  'exhaust-grounded': { prior: 18, signs: { heard: 1.5, 'firing-low': 0.5, 'firing-too': 1.5 }, work: { 'exhaust-changed': 5, 'transmission-removed': 1.8, 'mounts-changed': 1.8 } },
  lugging: { prior: 18, signs: { 'low-engine-speed': 3, 'engine-speed-not-low': 0.2, 'found-pulling': 1.8, 'found-standing': 0.05 }, work: { 'axle-ratio-changed': 1.8, 'tire-size-changed': 1.6 } },
  'converter-shudder': { prior: 9, signs: { 'found-pulling': 1.4, 'low-engine-speed': 1.4, converter: 1.3, 'found-standing': 0.05 } },
  'dual-mass-flywheel': { prior: 8, signs: { 'low-engine-speed': 1.8, 'found-pulling': 1.3, 'found-standing': 0.6, converter: 0.1 }, work: { 'transmission-removed': 1.8 } },
  'balance-shaft': { prior: 8, withoutWork: 0.3, signs: { 'square-with-speed': 1.6, 'mostly-vertical': 1.3 }, work: { 'engine-repaired': 6 } },
  'motor-rotor': { prior: 30, signs: { 'square-with-speed': 1.5, 'flat-with-speed': 0.5 } },
  'motor-torque-ripple': { prior: 40, signs: { 'found-pulling': 1.4, heard: 1.4, 'flat-with-speed': 1.3 } },
  'reduction-gears': { prior: 40, signs: { heard: 1.4 } },
  // accessory
  'accessory-bearing': { prior: 34, signs: { heard: 1.2 } },
  'accessory-pulley': { prior: 24, signs: { 'square-with-speed': 1.4 } },
  'belt-or-tensioner': { prior: 20, signs: { beats: 1.3 }, work: { 'engine-repaired': 1.8 } },
  'accessory-bracket': { prior: 14, signs: { 'steep-with-speed': 1.5 }, work: { 'engine-repaired': 2 } },
  // fixed tones
  'body-resonance': { prior: 28, signs: { 'narrow-line': 0.1, 'low-tone': 1.5, 'high-tone': 0.4, 'mains-tone': 0.5 } },
  'exhaust-resonance': { prior: 18, signs: { 'narrow-line': 0.1, 'middle-tone': 1.4, 'low-tone': 0.8 }, work: { 'exhaust-changed': 4 } },
  'panel-or-rack': { prior: 12, signs: { 'narrow-line': 0.1, 'middle-tone': 1.2 } },
  'sensor-loose': { prior: 14, signs: { 'narrow-line': 0.1, 'high-tone': 1.8, 'low-tone': 0.6 } },
  'electric-fan': { prior: 14, signs: { 'narrow-line': 5, 'found-cruising': 0.7, 'middle-tone': 1.3, 'high-tone': 0.6, beats: 1.3, 'found-standing': 1.5 } },
  'electric-pump': { prior: 12, signs: { 'narrow-line': 5, 'found-standing': 1.5 } },
  'outside-machine': { prior: 4, signs: { 'narrow-line': 3, 'mains-tone': 5, 'found-standing': 1.5 } },
} as const satisfies Record<string, CauseWeights>;

export type CauseId = keyof typeof CAUSE_WEIGHTS;

/** The shaft out of the vehicle; a joint of it taken apart besides. */
export type Access = 'shaft-out' | 'joint-open';
/** Minutes of getting there and back, part of the minutes of each check that needs it. */
export const ACCESS_MINUTES: Readonly<Record<Access, number>> = { 'shaft-out': 10, 'joint-open': 25 };

export interface CheckWeights {
  readonly minutes: number;
  /** What has to be out of the way first; its share of the minutes is spent once, by the first check that needs it. */
  readonly access?: Access;
  readonly rest: number;
  readonly parts?: Readonly<Partial<Record<Part, number>>>;
  /** For one of several parts of a kind, by its name. */
  readonly names?: Readonly<Record<string, number>>;
  readonly wrong: Readonly<Partial<Record<CauseId, number>>>;
}

// prettier-ignore
export const CHECK_WEIGHTS = {
  // driveshaft and its joints
  'working-angles': { minutes: 30, rest: 0.12, wrong: { 'angles-from-mount': 0.9, 'angles-from-ride-height': 0.9, 'angles-from-axle': 0.9, 'launch-shudder': 0.4 } },
  'joint-angle-size': { minutes: 30, rest: 0.3, wrong: { 'secondary-couple': 0.85, 'launch-shudder': 0.65 } },
  'phasing-marks': { minutes: 5, rest: 0.02, wrong: { 'forks-out-of-phase': 0.92 } },
  'joint-fasteners': { minutes: 5, rest: 0.03, wrong: { 'fasteners-loose': 0.9, 'cup-not-seated': 0.85, 'ring-not-seated': 0.75, 'needle-fallen': 0.4, 'u-bolt-overtightened': 0.2 } },
  'ring-thickness': { minutes: 45, access: 'joint-open', rest: 0.06, wrong: { 'joint-off-center': 0.9, 'new-part-bad': 0.15, 'wrong-joint': 0.25 } },
  'ring-fit': { minutes: 45, access: 'joint-open', rest: 0.05, wrong: { 'needle-fallen': 0.4, 'wrong-joint': 0.5, 'ring-too-tight': 0.88, 'ears-bent': 0.35, 'yoke-seat-burrs': 0.25 } },
  'joint-end-play': { minutes: 10, rest: 0.08, wrong: { 'ring-not-seated': 0.7, 'cup-not-seated': 0.4, 'fasteners-loose': 0.4, 'needle-fallen': 0.25, 'yoke-seat-burrs': 0.2, 'wrong-joint': 0.3, 'joint-loose': 0.85, 'trunnions-worn': 0.5, 'joint-off-center': 0.3, 'new-part-bad': 0.35 } },
  'joint-free-movement': { minutes: 20, access: 'shaft-out', rest: 0.05, wrong: { 'needle-fallen': 0.8, 'fitting-fouls': 0.85, 'wrong-joint': 0.5, 'cup-not-seated': 0.3, 'ears-bent': 0.85, 'ring-too-tight': 0.85, 'trunnions-worn': 0.75, 'u-bolt-overtightened': 0.6, 'yoke-seat-burrs': 0.5, 'new-part-bad': 0.5, 'joint-loose': 0.3 } },
  'joint-apart': { minutes: 45, access: 'joint-open', rest: 0.08, wrong: { 'needle-fallen': 0.95, 'wrong-joint': 0.85, 'trunnions-worn': 0.92, 'yoke-seat-burrs': 0.85, 'new-part-bad': 0.8, 'joint-loose': 0.85, 'u-bolt-overtightened': 0.5, 'ears-bent': 0.4 } },
  'ear-alignment': { minutes: 40, access: 'joint-open', rest: 0.04, wrong: { 'ears-bent': 0.88, 'joint-off-center': 0.15 } },
  'companion-flange-runout': { minutes: 20, access: 'shaft-out', rest: 0.06, wrong: { 'companion-flange-runout': 0.92, 'pinion-or-output-bearing': 0.4 } },
  'tube-runout': { minutes: 15, rest: 0.06, wrong: { 'tube-runout': 0.92, 'shaft-near-critical': 0.25, 'companion-flange-runout': 0.4, 'joint-off-center': 0.3, 'cup-not-seated': 0.3, 'needle-fallen': 0.25 } },
  'shaft-inspection': { minutes: 5, rest: 0.05, wrong: { 'fasteners-loose': 0.7, 'forks-out-of-phase': 0.4, 'ring-not-seated': 0.4, 'shaft-unbalance': 0.45, 'tube-runout': 0.45, 'shaft-not-indexed': 0.5 } },
  'reindex-shaft': { minutes: 20, rest: 0.1, wrong: { 'fasteners-loose': 0.4, 'cup-not-seated': 0.4, 'companion-flange-runout': 0.8, 'shaft-not-indexed': 0.9, 'shaft-unbalance': 0.35, 'joint-off-center': 0.35, 'tube-runout': 0.25 } },
  'clamp-trial': { minutes: 35, rest: 0.08, wrong: { 'shaft-unbalance': 0.92, 'joint-off-center': 0.75, 'tube-runout': 0.65, 'shaft-not-indexed': 0.65, 'companion-flange-runout': 0.55, 'shaft-near-critical': 0.4 } },
  'center-bearing-inspection': { minutes: 10, rest: 0.04, wrong: { 'center-bearing': 0.88, 'launch-shudder': 0.3 } },
  'slip-yoke-play': { minutes: 10, rest: 0.06, wrong: { 'slip-yoke-worn': 0.9 } },
  'u-bolt-torque': { minutes: 10, rest: 0.08, wrong: { 'u-bolt-overtightened': 0.85, 'fasteners-loose': 0.8 } },
  'pinion-bearing-play': { minutes: 10, rest: 0.03, wrong: { 'pinion-or-output-bearing': 0.85, 'gears-worn': 0.4 } },
  'mount-inspection': { minutes: 10, rest: 0.07, wrong: { 'angles-from-mount': 0.85 } },
  'ride-height': { minutes: 10, rest: 0.1, wrong: { 'angles-from-ride-height': 0.92, 'tripod-angle': 0.6, 'launch-shudder': 0.3 } },
  'axle-seat-inspection': { minutes: 10, rest: 0.06, wrong: { 'angles-from-axle': 0.75, 'angles-from-ride-height': 0.15 } },
  'double-cardan-play': { minutes: 15, rest: 0.03, wrong: { 'double-cardan-centering': 0.88 } },
  'center-bearing-height': { minutes: 25, rest: 0.1, wrong: { 'launch-shudder': 0.8, 'secondary-couple': 0.4 } },
  'axles-matched': { minutes: 15, rest: 0.06, wrong: { 'drive-wind-up': 0.88 } },
  'critical-speed': { minutes: 10, rest: 0.05, wrong: { 'shaft-near-critical': 0.92, 'shaft-near-half-critical': 0.92 } },
  'gear-pattern': { minutes: 60, rest: 0.08, wrong: { 'gear-setting': 0.88, 'gears-worn': 0.5 } },
  'axle-oil': { minutes: 15, rest: 0.05, wrong: { 'gears-worn': 0.75 } },
  // wheels and brakes
  'tire-inspection': { minutes: 5, rest: 0.07, wrong: { 'belt-separated': 0.7, 'flat-spot': 0.6, 'tire-unbalance': 0.35, 'wheel-not-centered': 0.3, 'wheel-loose': 0.9, 'object-in-tread': 0.85 } },
  'wheel-balancer': { minutes: 40, rest: 0.15, wrong: { 'tire-unbalance': 0.93, 'bent-wheel': 0.25 } },
  'tire-runout': { minutes: 15, rest: 0.08, wrong: { 'tire-runout': 0.9, 'belt-separated': 0.75, 'bent-wheel': 0.6, 'flat-spot': 0.45, 'wheel-not-centered': 0.5, 'hub-runout': 0.4 } },
  'rim-runout': { minutes: 15, rest: 0.06, wrong: { 'bent-wheel': 0.9, 'wheel-not-centered': 0.4, 'hub-runout': 0.4 } },
  'hub-runout': { minutes: 25, rest: 0.04, wrong: { 'hub-runout': 0.9, 'wheel-bearing-loose': 0.45 } },
  'road-force': { minutes: 45, rest: 0.1, wrong: { 'tire-force-variation': 0.92, 'belt-separated': 0.85, 'tire-runout': 0.7, 'flat-spot': 0.7, 'bent-wheel': 0.45 } },
  'wheels-swapped': { minutes: 25, rest: 0.12, parts: { driveshaft: 0.03, engine: 0.03, accessory: 0.03, fixed: 0.05, 'half-shaft': 0.05 }, wrong: { 'tire-unbalance': 0.8, 'tire-runout': 0.8, 'tire-force-variation': 0.8, 'bent-wheel': 0.8, 'belt-separated': 0.85, 'flat-spot': 0.75, 'wheel-not-centered': 0.5, 'hub-runout': 0.06, 'wheel-bearing-loose': 0.05, 'rotor-thickness': 0.05, 'brake-rubs': 0.05, 'object-in-tread': 0.85, 'wheel-loose': 0.5, 'suspension-worn': 0.5 } },
  'wheel-turned-on-hub': { minutes: 20, rest: 0.1, wrong: { 'wheel-not-centered': 0.75, 'hub-runout': 0.55 } },
  'wheel-bearing-play': { minutes: 10, rest: 0.03, wrong: { 'wheel-bearing-loose': 0.88, 'wheel-loose': 0.5, 'brake-rubs': 0.5, 'suspension-worn': 0.3 } },
  'suspension-inspection': { minutes: 15, rest: 0.12, wrong: { 'suspension-worn': 0.88 } },
  'rotor-thickness': { minutes: 30, rest: 0.07, wrong: { 'rotor-thickness': 0.92, 'hub-runout': 0.25, 'brake-rubs': 0.6 } },
  'run-warm-tires': { minutes: 20, rest: 0.05, parts: { driveshaft: 0.03, engine: 0.05 }, wrong: { 'flat-spot': 0.75 } },
  // half-shafts
  'half-shaft-inspection': { minutes: 15, rest: 0.06, wrong: { 'tripod-worn': 0.8, 'outer-joint-worn': 0.4, 'half-shaft-bent': 0.15 } },
  'half-shaft-angle': { minutes: 10, rest: 0.08, wrong: { 'tripod-angle': 0.88 } },
  'half-shaft-runout': { minutes: 15, rest: 0.04, wrong: { 'half-shaft-bent': 0.88 } },
  'outer-joint-play': { minutes: 10, rest: 0.05, wrong: { 'outer-joint-worn': 0.85 } },
  // engine, motor, accessories
  'cylinder-contribution': { minutes: 10, rest: 0.05, wrong: { 'misfire-ignition': 0.9, 'misfire-fuel': 0.9, 'misfire-compression': 0.92 } },
  'ignition-swap': { minutes: 20, rest: 0.04, wrong: { 'misfire-ignition': 0.85 } },
  'fuel-balance': { minutes: 25, rest: 0.06, wrong: { 'misfire-fuel': 0.82 } },
  'compression-test': { minutes: 45, rest: 0.05, wrong: { 'misfire-compression': 0.92 } },
  'flexplate-inspection': { minutes: 40, rest: 0.05, wrong: { 'flexplate-or-converter': 0.82 } },
  'flywheel-play': { minutes: 30, rest: 0.05, wrong: { 'dual-mass-flywheel': 0.85 } },
  'damper-inspection': { minutes: 15, rest: 0.05, wrong: { 'crank-damper': 0.82 } },
  'engine-mounts': { minutes: 10, rest: 0.1, wrong: { 'engine-mount': 0.88, 'tripod-angle': 0.4, 'angles-from-mount': 0.2 } },
  'exhaust-clearance': { minutes: 10, rest: 0.08, wrong: { 'exhaust-grounded': 0.88, 'exhaust-resonance': 0.65 } },
  'lockup-off': { minutes: 5, rest: 0.1, parts: { tire: 0.03, driveshaft: 0.04, fixed: 0.05 }, wrong: { 'converter-shudder': 0.88, lugging: 0.5, 'engine-mount': 0.2 } },
  'lower-gear': { minutes: 8, rest: 0.15, parts: { tire: 0.03, driveshaft: 0.05, fixed: 0.08 }, wrong: { lugging: 0.92, 'dual-mass-flywheel': 0.5, 'converter-shudder': 0.6, 'engine-mount': 0.25 } },
  'balance-shaft-timing': { minutes: 60, rest: 0.02, wrong: { 'balance-shaft': 0.88 } },
  'motor-bearing': { minutes: 15, rest: 0.05, wrong: { 'motor-rotor': 0.75, 'reduction-gears': 0.3 } },
  'motor-scan': { minutes: 10, rest: 0.05, wrong: { 'motor-torque-ripple': 0.7 } },
  'reduction-oil': { minutes: 20, rest: 0.05, wrong: { 'reduction-gears': 0.75 } },
  'belt-off': { minutes: 10, rest: 0.03, parts: { accessory: 0.93, engine: 0.05 }, wrong: { 'accessory-bearing': 0.93, 'accessory-pulley': 0.93, 'belt-or-tensioner': 0.9, 'accessory-bracket': 0.85, 'crank-damper': 0.12 } },
  'accessory-spin': { minutes: 10, rest: 0.06, wrong: { 'accessory-bearing': 0.85 } },
  'pulley-runout': { minutes: 10, rest: 0.06, wrong: { 'accessory-pulley': 0.87, 'crank-damper': 0.4 } },
  'belt-inspection': { minutes: 5, rest: 0.08, wrong: { 'belt-or-tensioner': 0.85 } },
  'bracket-inspection': { minutes: 10, rest: 0.05, wrong: { 'accessory-bracket': 0.85 } },
  // fixed tones
  'tap-test': { minutes: 10, rest: 0.06, wrong: { 'body-resonance': 0.85, 'exhaust-resonance': 0.35, 'panel-or-rack': 0.4 } },
  'panel-press': { minutes: 5, rest: 0.04, wrong: { 'panel-or-rack': 0.82 } },
  'sensor-remount': { minutes: 5, rest: 0.04, parts: { fixed: 0.06 }, wrong: { 'sensor-loose': 0.88 } },
  'fans-off': { minutes: 5, rest: 0.02, wrong: { 'electric-fan': 0.92, 'electric-pump': 0.2 } },
  'pumps-off': { minutes: 10, rest: 0.02, wrong: { 'electric-pump': 0.9, 'electric-fan': 0.1 } },
  'still-recording': { minutes: 5, rest: 0.02, wrong: { 'outside-machine': 0.92, 'sensor-loose': 0.2 } },
  // runs
  'run-other-gear': { minutes: 8, rest: 0.15, parts: { engine: 0.95, accessory: 0.95, tire: 0.03, driveshaft: 0.03, 'half-shaft': 0.03, fixed: 0.03 }, wrong: {} },
  'run-other-speed': { minutes: 10, rest: 0.3, parts: { fixed: 0.95, tire: 0.03, driveshaft: 0.03, 'half-shaft': 0.03, engine: 0.04, accessory: 0.04 }, wrong: {} },
  'run-neutral': { minutes: 8, rest: 0.2, parts: { engine: 0.95, accessory: 0.95, tire: 0.04, driveshaft: 0.08, 'half-shaft': 0.5, fixed: 0.1 }, wrong: { 'secondary-couple': 0.88, 'launch-shudder': 0.9, 'tripod-worn': 0.85, 'tripod-angle': 0.85, 'angles-from-axle': 0.35, 'angles-from-mount': 0.2, 'gear-setting': 0.6, 'gears-worn': 0.5 } },
  'run-pull-coast': { minutes: 10, rest: 0.15, parts: { tire: 0.05, driveshaft: 0.12, engine: 0.4, 'half-shaft': 0.5, fixed: 0.08 }, wrong: { 'secondary-couple': 0.85, 'launch-shudder': 0.92, 'angles-from-axle': 0.55, 'angles-from-mount': 0.35, 'slip-yoke-worn': 0.3, 'tripod-worn': 0.85, 'tripod-angle': 0.85, 'misfire-ignition': 0.7, lugging: 0.9, 'converter-shudder': 0.8, 'motor-torque-ripple': 0.75, 'motor-rotor': 0.08, 'crank-damper': 0.12, 'flexplate-or-converter': 0.12, 'balance-shaft': 0.1 } },
  'run-standing': { minutes: 6, rest: 0.1, parts: { engine: 0.65, accessory: 0.9, tire: 0.01, driveshaft: 0.02, 'half-shaft': 0.01, fixed: 0.1 }, wrong: { 'flexplate-or-converter': 0.93, 'crank-damper': 0.93, 'balance-shaft': 0.93, 'misfire-ignition': 0.55, lugging: 0.04, 'converter-shudder': 0.03, 'electric-fan': 0.6, 'electric-pump': 0.7, 'outside-machine': 0.6 } },
  'run-front-shaft-rests': { minutes: 20, rest: 0.05, parts: { driveshaft: 0.05 }, names: { 'front driveshaft': 0.92 }, wrong: { 'drive-wind-up': 0.88 } },
  'run-braking': { minutes: 10, rest: 0.08, parts: { driveshaft: 0.04 }, wrong: { 'rotor-thickness': 0.93, 'brake-rubs': 0.4, 'wheel-bearing-loose': 0.3, 'hub-runout': 0.15 } },
} as const satisfies Record<string, CheckWeights>;

export type CheckId = keyof typeof CHECK_WEIGHTS;
