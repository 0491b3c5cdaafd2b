/** Saturday's job: what shakes only while moving off. */
import type { Fault } from '../../src/core/simulate/fault.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';
import type { DemoJob } from './demo-job.ts';
import { GOOD_ROAD_M3, mph, railLogger, steady } from './demo-job.ts';

const deliveryVan: Vehicle = {
  description: 'Long delivery van, rear drive, six cylinders, two-piece driveshaft',
  tire: { kind: 'size', size: 'LT225/75R16' },
  layout: 'rear-drive',
  axleRatio: 3.92,
  gearRatios: [4.03, 2.36, 1.53, 1.15, 0.85, 0.67],
  cylinders: 6,
  converter: true,
  driveshaftPieces: [
    { lengthMm: 1180, tubeOuterMm: 76.2, wallMm: 2.1, frontJoint: 'cross', rearJoint: 'cross' },
    { lengthMm: 1350, tubeOuterMm: 76.2, wallMm: 2.1, frontJoint: 'cross', rearJoint: 'cross' },
  ],
};
const ROLLING_M = 2.2689;

/** All of it by the couple: it goes with the torque, not with the square of the speed. */
const couple: Fault = {
  kind: 'driveshaft-angle',
  levelMps2: 0.7,
  coupleShare: 1,
  at: { speedMps: mph(14), load: 'pull', gearRatio: 2.36 },
};

const van = {
  vehicleSeed: 23,
  vehicle: deliveryVan,
  rollingCircumferenceM: ROLLING_M * 1.002,
  roadM3: GOOD_ROAD_M3,
  faults: [couple],
  normalLevel: 0.5,
  sensor: railLogger(200, 8),
} as const;

export const launch: DemoJob = {
  name: 'launch',
  title: 'Saturday: shudders when moving off loaded',
  complaint:
    'Shudders like a bad clutch from 5 to 20 mph when moving off loaded, gone on the road. Helper springs fitted.',
  made: 'The center bearing sits too low under the new springs: a couple at driveshaft 2× in proportion to the torque, 0.70 m/s² at 14 mph. Moving off in second gear from 4 to 29 mph with the speed logged in whole km/h once a second, 0.7 s late, 13 s; then a cruise at 45 mph, 12 s. 200 Hz.',
  vehicle: deliveryVan,
  work: ['springs-changed'],
  runs: [
    {
      file: 'launch-pull.csv',
      keys: { name: 'Moving off, 4 to 29 mph', speedSource: 'logged', load: 'pull' },
      layout: 'plain',
      scenario: {
        ...van,
        seed: 1130,
        drive: {
          durationS: 13,
          speed: { kind: 'ramp', fromMps: mph(4), toMps: mph(29), shape: 'linear', driftSd: 0.002, driftTimeS: 5 },
          load: 'pull',
          gearRatio: 2.36,
          converterSlip: 0.06,
        },
        log: { speed: { rateHz: 1, step: 1, unit: 'km/h', lagS: 0.7, factor: 1, noiseMps: 0.05 } },
      },
    },
    {
      file: 'launch-cruise.csv',
      keys: { name: 'Cruise, 45 mph', speed: '45 mph', speedSource: 'gps', gearRatio: 0.85, load: 'cruise' },
      layout: 'plain',
      scenario: {
        ...van,
        seed: 1131,
        drive: { durationS: 12, speed: steady(mph(45.1)), load: 'cruise', gearRatio: 0.85 },
      },
    },
  ],
};
