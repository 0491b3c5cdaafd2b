/** A job: one vehicle and everything known about its complaint. What the job file holds. */
import type { RunCondition, Vehicle } from '../vehicle/vehicle.ts';
import type { LimitOverrides } from '../driveline/limits/limit.ts';
import type { Measurement } from '../driveline/measurement.ts';
import type { Given } from '../reading/given.ts';

export const JOB_SCHEMA_VERSION = 2;

/** Work done before the complaint or between runs; moves the probabilities of causes. */
export type WorkDone =
  | 'joint-replaced-front'
  | 'joint-replaced-rear'
  | 'joint-replaced-center'
  | 'ears-pressed-or-hammered'
  | 'shaft-removed'
  | 'shaft-replaced'
  | 'flange-removed'
  | 'center-bearing-replaced'
  | 'springs-changed'
  | 'ride-height-changed'
  | 'mounts-changed'
  | 'tires-rotated'
  | 'tires-replaced'
  | 'wheels-balanced'
  | 'brakes-replaced'
  | 'axle-ratio-changed'
  | 'tire-size-changed'
  | 'engine-repaired'
  | 'exhaust-changed'
  | 'transmission-removed';

/** How a run was driven, and what its file does not say itself. */
export interface Run extends RunCondition, Given {
  /** File name of the recording, relative to the job file. */
  readonly file: string;
  /** Shown name: 'Cruise, 62 mph'. */
  readonly name?: string;
  /** Only this part of the recording is used, s on its clock. */
  readonly fromS?: number;
  readonly toS?: number;
  /** 'complaint' (default), or 'proof' for a run made after the repair. */
  readonly stage?: 'complaint' | 'proof';
}

export interface Job {
  readonly schemaVersion: number;
  readonly title?: string;
  readonly complaint?: string;
  readonly vehicle: Vehicle;
  readonly work: readonly WorkDone[];
  readonly runs: readonly Run[];
  /** Ids of the causes that were put right before the runs made after the repair. */
  readonly repaired?: readonly string[];
  readonly measurements: readonly Measurement[];
  /** The maker's or the shop's own figures in place of default limits. */
  readonly limits?: LimitOverrides;
  readonly notes?: string;
  /** Keys of the file this version does not know, kept so that saving loses nothing. */
  readonly unknownKeys?: Readonly<Record<string, unknown>>;
}
