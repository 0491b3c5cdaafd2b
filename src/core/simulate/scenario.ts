/** What a simulation is told: the vehicle as it really is, how it is driven, what is wrong with it, what records it. */
import type { Load, Vehicle } from '../vehicle/vehicle.ts';
import type { Fault } from './fault.ts';

export interface Scenario {
  /** Of this run: road, drift, noise. */
  readonly seed: number;
  /** Of the vehicle: its resonances, paths and normal small orders. Runs of one vehicle share it. Default: `seed`. */
  readonly vehicleSeed?: number;
  /** Ratios, cylinders and accessories are taken from it; its tire is not, since the true rolling differs from it. */
  readonly vehicle: Vehicle;
  /** True free rolling circumference, mean of the four tires, m. */
  readonly rollingCircumferenceM: number;
  /** Standard deviation of the four circumferences about their mean, relative. Default 0.2 %. */
  readonly wheelSpread?: number;
  readonly drive: Drive;
  /** Road roughness G(n0), m³; see ROAD_CLASS_M3. 0 for a vehicle that stands or an ideal road. */
  readonly roadM3: number;
  readonly faults: readonly Fault[];
  /** Factor on the normal small orders of a sound vehicle. Default 1. */
  readonly normalLevel?: number;
  readonly sensor: Sensor;
  readonly log?: LogColumns;
  /** Components to leave out, for a look at one alone. */
  readonly without?: readonly ('road' | 'normal-orders' | 'faults' | 'sensor-noise' | 'manoeuvre')[];
}

export interface Drive {
  readonly durationS: number;
  readonly speed: SpeedProgram;
  readonly load: Load;
  /** Transmission input turns per output turn; absent where not in gear. */
  readonly gearRatio?: number;
  /** Mean slip of the torque converter, share of engine speed; 0 with the clutch locked. Default 0. */
  readonly converterSlip?: number;
  /** Engine speed out of gear, rev/min. Default 750. */
  readonly idleRpm?: number;
}

export type SpeedProgram =
  | {
      readonly kind: 'steady';
      readonly meanMps: number;
      /** Smooth random wander about the mean: relative standard deviation and time constant. */
      readonly driftSd: number;
      readonly driftTimeS: number;
    }
  | {
      readonly kind: 'ramp';
      readonly fromMps: number;
      readonly toMps: number;
      readonly shape: RampShape;
      readonly driftSd: number;
      readonly driftTimeS: number;
    };

/**
 * 'linear': even acceleration; 'coast': rolling and air drag; 'pull': even power;
 * 'ease': slow start and end; 'stages': two levels with a quicker change between.
 */
export type RampShape = 'linear' | 'coast' | 'pull' | 'ease' | 'stages';

export interface Sensor {
  readonly rateHz: number;
  /** Rows of the rotation from body axes (x forward, y left, z up; ISO 8855) to sensor axes. */
  readonly mounting: Rotation;
  /** White noise, m/s² per √Hz, one-sided. */
  readonly noiseDensity: number;
  /** Least step of the output, m/s²; 0 for none. */
  readonly stepMps2: number;
  /** End stop, m/s². Default none. */
  readonly rangeMps2?: number;
  /** Standard deviation of each sample's time about even spacing, s. */
  readonly jitterS: number;
  /** Share by which the sensor's clock runs off its nominal rate. */
  readonly clockError?: number;
  /** What the stamps tell: the true times, or an even count at the nominal rate. Default 'true'. */
  readonly stamps?: 'true' | 'nominal';
  /** Corner of the anti-alias filter (four poles), Hz. Absent: samples are taken pointwise, and what is above half the rate folds. */
  readonly antiAliasHz?: number;
}

/** Nine numbers, row by row. */
export type Rotation = readonly number[];

export interface LogColumns {
  readonly speed?: {
    /** Fresh values a second. */
    readonly rateHz: number;
    /** Step of the value in its own unit, and the unit. 0 for none. */
    readonly step: number;
    readonly unit: 'km/h' | 'mph' | 'm/s';
    /** How late the value is, s. */
    readonly lagS: number;
    /** Shown over true. */
    readonly factor: number;
    /** Standard deviation of each value, m/s. */
    readonly noiseMps: number;
  };
  readonly engine?: { readonly rateHz: number; readonly stepRpm: number; readonly lagS: number };
}
