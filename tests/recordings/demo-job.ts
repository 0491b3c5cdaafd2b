/** What a demo job is made from: the job file's own words, and for each run the simulated drive behind it. */
import type { Scenario, Sensor } from '../../src/core/simulate/scenario.ts';
import { rotationFromAngles } from '../../src/core/simulate/sensor.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';

export interface DemoRun {
  /** CSV file name. */
  readonly file: string;
  /** The run's other keys in the job file, as a person would type them. */
  readonly keys: Readonly<Record<string, string | number>>;
  readonly layout: string;
  readonly scenario: Scenario;
}

export interface DemoJob {
  /** `<name>.job.json` */
  readonly name: string;
  readonly title: string;
  readonly complaint: string;
  /** For the README: what is really wrong and how it was driven and recorded. */
  readonly made: string;
  readonly vehicle: Vehicle;
  readonly work?: readonly string[];
  /** Ids of the causes put right before the proving run. */
  readonly repaired?: readonly string[];
  readonly measurements?: readonly unknown[];
  readonly notes?: string;
  readonly runs: readonly DemoRun[];
}

/** A small logger with a proper filter, screwed to the seat rail a little out of level. */
export const railLogger = (rateHz: number, yawDeg = 4, more: Partial<Sensor> = {}): Sensor => ({
  rateHz,
  mounting: rotationFromAngles(yawDeg, -3, 2),
  noiseDensity: 0.0015,
  stepMps2: 0.0012,
  jitterS: 0,
  antiAliasHz: 0.4 * rateHz,
  ...more,
});

/** A phone in a holder: no filter before its samples, uneven times. */
export const phone = (rateHz: number, yawDeg = 70): Sensor => ({
  rateHz,
  mounting: rotationFromAngles(yawDeg, 35, -20),
  noiseDensity: 0.002,
  stepMps2: 0.002,
  jitterS: 0.0004,
});

export const mph = (value: number): number => value * 0.44704;

export const steady = (meanMps: number, driftSd = 0.004): Scenario['drive']['speed'] => ({
  kind: 'steady',
  meanMps,
  driftSd,
  driftTimeS: 6,
});

/** A good road, between the smooth end of class A and what few roads reach. */
export const GOOD_ROAD_M3 = 4e-6;
