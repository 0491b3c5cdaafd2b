/**
 * The outcome of a check, as entered. Judged by driveline/ (numbers against limits) and weighed by diagnosis/
 * (what it says for or against a cause). Readings are kept as read; everything derived is computed again.
 */
import type { JointKind } from '../vehicle/vehicle.ts';

export type Measurement =
  | WorkingAnglesMeasurement
  | DoubleCardanMeasurement
  | RideHeightMeasurement
  | EndPlayMeasurement
  | RingsMeasurement
  | PlayMeasurement
  | RunoutMeasurement
  | FlangeReindexMeasurement
  | BalanceAmplitudesMeasurement
  | BalancePhasorsMeasurement
  | WheelUnbalanceMeasurement
  | ObservationMeasurement;

export type JointPlace = 'front' | 'center' | 'rear';

export type ShaftPlace = 'rear-driveshaft' | 'front-driveshaft';

export interface WorkingAnglesMeasurement {
  readonly kind: 'working-angles';
  /** Inclinometer and plan readings, front to rear: transmission, each shaft piece, pinion. */
  readonly shafts: readonly ShaftReading[];
  /** Fork twist of each shaft piece, degrees; 0 = forks in line. */
  readonly phasingDeg?: readonly number[];
  /** Kind of each joint, front to rear; cross joints where absent. */
  readonly joints?: readonly JointKind[];
  /** Centring error of each joint's half-angles (double-Cardan only), degrees. */
  readonly splitErrorDeg?: readonly number[];
  /** Which driveshaft; the rear one where absent. */
  readonly driveshaft?: ShaftPlace;
  /** False where the suspension hung: the angles then say nothing. */
  readonly atRideHeight?: boolean;
}

/** The two half-angles of a double-Cardan joint, measured at the center yoke. */
export interface DoubleCardanMeasurement {
  readonly kind: 'double-cardan';
  readonly joint: JointPlace;
  readonly halfAnglesDeg: readonly [number, number];
}

export interface RideHeightMeasurement {
  readonly kind: 'ride-height';
  readonly axle: 'front' | 'rear';
  readonly measuredMm: number;
  /** The maker's figure for this vehicle. */
  readonly specifiedMm: number;
}

export interface EndPlayMeasurement {
  readonly kind: 'end-play';
  readonly joint: JointPlace;
  /** Dial reading along each of the joint's two axes, mm. */
  readonly axisPlayMm: readonly [number, number];
}

export interface RingsMeasurement {
  readonly kind: 'rings';
  readonly joint: JointPlace;
  readonly axes: readonly RingAxis[];
}

/** Radial play, by dial: slip yoke on its splines and bush, or the center bearing. */
export interface PlayMeasurement {
  readonly kind: 'radial-play';
  readonly place: 'slip-yoke' | 'center-bearing';
  readonly playMm: number;
}

export interface RunoutMeasurement {
  readonly kind: 'runout';
  readonly place: RunoutPlace;
  /** Total indicator reading, mm. */
  readonly tirMm?: number;
  /** Dial readings at even steps around the clock, mm, where they were taken. */
  readonly readingsMm?: readonly number[];
  /** Which driveshaft; the rear one where absent. */
  readonly driveshaft?: ShaftPlace;
  /** Wheels only; steel where absent. */
  readonly wheelMaterial?: 'steel' | 'alloy';
}

/** Level after the shaft was turned on its flange by whole bolt positions. */
export interface FlangeReindexMeasurement {
  readonly kind: 'flange-reindex';
  readonly boltCount: number;
  /** Level of driveshaft 1× with the shaft moved by so many bolt positions; 0 is as found. */
  readonly levels: readonly {
    readonly steps: number;
    readonly amplitudeMps2: number;
    readonly amplitudeSdMps2?: number;
  }[];
}

/** Trial runs without phase: amplitude at rest weight, and with one trial weight at three or more positions. */
export interface BalanceAmplitudesMeasurement {
  readonly kind: 'balance-amplitudes';
  readonly part: 'driveshaft' | 'tire';
  readonly baseline: AmplitudeReading;
  readonly trialWeight: number;
  readonly weightUnit: WeightUnit;
  readonly positions: readonly (AmplitudeReading & { readonly angleDeg: number })[];
}

/** Trial runs with phase. */
export interface BalancePhasorsMeasurement {
  readonly kind: 'balance-phasors';
  readonly part: 'driveshaft' | 'tire';
  readonly weightUnit: WeightUnit;
  /** One reading per sensor (or sensor and speed). */
  readonly baseline: readonly PhasorReading[];
  readonly trials: readonly TrialRun[];
}

/** What a wheel balancer showed, per plane. */
export interface WheelUnbalanceMeasurement {
  readonly kind: 'wheel-unbalance';
  readonly innerG: number;
  readonly outerG: number;
  readonly radiusMm: number;
}

export interface ObservationMeasurement {
  readonly kind: 'observation';
  /** Id of the check that was made, and whether it found something wrong. */
  readonly checkId: string;
  readonly outcome: 'fine' | 'wrong';
  readonly note?: string;
}

export const RUNOUT_PLACES = [
  'tube-front',
  'tube-middle',
  'tube-rear',
  'companion-flange-radial',
  'companion-flange-face',
  'wheel-radial',
  'wheel-lateral',
  'tire-radial',
  'tire-lateral',
] as const;
export type RunoutPlace = (typeof RUNOUT_PLACES)[number];

export interface ShaftReading {
  readonly part: 'transmission' | 'transfer-case' | 'shaft' | 'pinion';
  /** Slope in degrees, positive where the rear end is lower (down to the rear). */
  readonly slopeDeg: number;
  /** Plan angle in degrees, positive where the rear end lies to the right; 0 where in line with the vehicle. */
  readonly planDeg?: number;
}

export interface RingAxis {
  /** Groove span in the yoke, mm; cross with cups, mm; the two retaining rings, mm. */
  readonly grooveSpanMm: number;
  readonly crossAndCupsMm: number;
  readonly ring1Mm: number;
  readonly ring2Mm: number;
  /** Middle of the grooves off the shaft's axis, mm, positive towards ring 1; 0 where not measured. */
  readonly grooveOffsetMm?: number;
}

/** Unit of trial and correction weights: mass at one fixed radius, or unbalance. */
export type WeightUnit = 'g' | 'g·mm';

/** Amplitude in any one unit, with its standard uncertainty where known (both in that unit). */
export interface AmplitudeReading {
  readonly amplitude: number;
  readonly amplitudeSd?: number;
}

/** Amplitude and phase; all phases in one sense, the same sense in which weight angles are counted. */
export interface PhasorReading extends AmplitudeReading {
  readonly phaseDeg: number;
  readonly phaseSdDeg?: number;
}

export interface TrialRun {
  /** 0-based correction plane the trial weight sat in. */
  readonly plane: number;
  readonly weight: number;
  readonly angleDeg: number;
  /** In the order of the baseline's readings. */
  readonly readings: readonly PhasorReading[];
  /** True where the trial weight stays on: the answer is then what to add to it. */
  readonly leftOn?: boolean;
}
