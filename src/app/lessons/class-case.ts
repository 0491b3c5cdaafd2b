/** A case for the class: which vehicle, which fault, how it is driven; and what the simulation and the job file need. */
import type { Job } from '../../core/job/job.ts';
import { JOB_SCHEMA_VERSION } from '../../core/job/job.ts';
import type { Fault } from '../../core/simulate/fault.ts';
import { randomSource } from '../../core/simulate/random.ts';
import type { Scenario } from '../../core/simulate/scenario.ts';
import { rotationFromAngles } from '../../core/simulate/sensor.ts';
import { rollingCircumference } from '../../core/vehicle/rolling.ts';
import type { TireSpec, Vehicle } from '../../core/vehicle/vehicle.ts';
import { lessonTexts } from '../texts/lessons.ts';

export type VehicleKind = keyof typeof lessonTexts.build.vehicles;
export type FaultKind = keyof typeof lessonTexts.build.faults;

export interface ClassCase {
  readonly vehicle: VehicleKind;
  readonly fault: FaultKind;
  /** Level of the fault's main order at the seat, 0 to peak, m/s². */
  readonly levelMps2: number;
  /** As the job file will state it; the true speed differs a little. */
  readonly speedMps: number;
  readonly durationS: number;
  readonly rateHz: number;
  readonly seed: number;
}

interface Model {
  readonly vehicle: Vehicle;
  readonly topGear: number;
  readonly faults: readonly FaultKind[];
}

const REAR: readonly FaultKind[] = [
  'tire-unbalance',
  'tire-force-variation',
  'driveshaft-unbalance',
  'driveshaft-angle',
  'misfire',
];
const size = (text: string): TireSpec => ({ kind: 'size', size: text });

export const MODELS: Readonly<Record<VehicleKind, Model>> = {
  truck: {
    vehicle: { layout: 'rear-drive', tire: size('265/70R17'), axleRatio: 3.73, cylinders: 8, converter: true },
    topGear: 0.69,
    faults: REAR,
  },
  wagon: {
    vehicle: { layout: 'rear-drive', tire: size('225/60R16'), axleRatio: 3.27, cylinders: 6, converter: true },
    topGear: 0.75,
    faults: REAR,
  },
  hatch: {
    vehicle: { layout: 'front-drive', tire: size('205/55R16'), finalDrive: 3.94, cylinders: 4, converter: true },
    topGear: 0.67,
    faults: ['tire-unbalance', 'tire-force-variation', 'misfire', 'half-shaft-tripod'],
  },
};

/** The recording's file name without its ending: tells nothing but the number of the case. */
export const caseName = (seed: number): string => `class-${String(seed % 100_000).padStart(5, '0')}`;

/** A fault of the vehicle drawn by chance; the same seed draws the same one. */
export const drawnFault = (vehicle: VehicleKind, seed: number): FaultKind =>
  randomSource(seed, 'class fault').pick(MODELS[vehicle].faults);

function faultOf({ fault, levelMps2, seed }: ClassCase): Fault {
  const random = randomSource(seed, 'class place');
  const wheel = random.pick(['front-left', 'front-right', 'rear-left', 'rear-right'] as const);
  switch (fault) {
    case 'tire-unbalance':
      return { kind: fault, wheel, levelMps2 };
    case 'tire-force-variation':
      return { kind: fault, wheel, orders: [1, random.between(0.2, 0.6), random.between(0.1, 0.3)], levelMps2 };
    case 'misfire':
      return { kind: fault, cylinder: 1, strength: 0.3, levelMps2 };
    case 'half-shaft-tripod':
      return { kind: fault, side: random.pick(['left', 'right'] as const), levelMps2 };
    case 'driveshaft-unbalance':
    case 'driveshaft-angle':
      return { kind: fault, levelMps2 };
  }
}

/** A good road, between the smooth end of class A of ISO 8608 and what few roads reach. */
const ROAD_M3 = 4e-6;

/** What is simulated. Tires roll up to 1 % off their size and the true speed is up to 1 % off, as on a real test. */
export function scenarioOf(one: ClassCase): Scenario {
  const { vehicle, topGear } = MODELS[one.vehicle];
  const random = randomSource(one.seed, 'class drive');
  const rolling = vehicle.tire ? rollingCircumference(vehicle.tire) : null;
  if (!rolling?.ok) throw new Error('every vehicle offered has a tire size');
  return {
    seed: one.seed,
    vehicle: { ...vehicle, gearRatios: [topGear] },
    rollingCircumferenceM: rolling.value.circumferenceM * random.between(0.99, 1.01),
    drive: {
      durationS: one.durationS,
      speed: { kind: 'steady', meanMps: one.speedMps * random.between(0.99, 1.01), driftSd: 0.004, driftTimeS: 6 },
      load: 'cruise',
      gearRatio: topGear,
    },
    roadM3: ROAD_M3,
    faults: [faultOf(one)],
    sensor: {
      rateHz: one.rateHz,
      mounting: rotationFromAngles(random.between(-20, 20), -3, 2),
      noiseDensity: 0.0015,
      stepMps2: 0.0012,
      jitterS: 0,
      antiAliasHz: 0.4 * one.rateHz,
    },
  };
}

/** The job file that goes with the recording. Nothing in it tells the fault. */
export function jobOf(one: ClassCase): Job {
  const { vehicle, topGear } = MODELS[one.vehicle];
  const name = caseName(one.seed);
  return {
    schemaVersion: JOB_SCHEMA_VERSION,
    title: lessonTexts.build.job.title(name),
    complaint: lessonTexts.build.job.complaint,
    vehicle: { ...vehicle, gearRatios: [topGear] },
    work: [],
    runs: [{ file: `${name}.csv`, speedMps: one.speedMps, speedSource: 'gps', gearRatio: topGear, load: 'cruise' }],
    measurements: [],
  };
}
