/** One week at an invented shop, Quarry Road Garage: the demo jobs in the order they came in. */
import type { Fault } from '../../src/core/simulate/fault.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';
import type { DemoJob } from './demo-job.ts';
import { launch } from './launch-job.ts';
import { GOOD_ROAD_M3, mph, phone, railLogger, steady } from './demo-job.ts';

const SIX_SPEED = [4.17, 2.34, 1.52, 1.14, 0.87, 0.69];
const FRONT_SIX = [4.04, 2.37, 1.56, 1.16, 0.85, 0.67];

const workTruck: Vehicle = {
  description: 'Long-bed work truck, rear drive, eight cylinders',
  tire: { kind: 'size', size: '265/70R17' },
  layout: 'rear-drive',
  axleRatio: 3.73,
  gearRatios: SIX_SPEED,
  cylinders: 8,
  converter: true,
  driveshaftPieces: [{ lengthMm: 1524, tubeOuterMm: 88.9, wallMm: 2.1, frontJoint: 'cross', rearJoint: 'cross' }],
};

const jointReplaced: DemoJob = {
  name: 'joint-replaced',
  title: 'Monday: shake after a joint replacement',
  complaint: 'Shakes through seat and floor from 55 mph up since the front driveshaft joint was replaced.',
  made: 'A retaining ring of the wrong thickness leaves the front cross off centre: driveshaft 1×, 0.30 m/s² at 62 mph. Cruise on a good road, 40 s at 250 Hz, filtered logger on the seat rail. The tires roll 0.6 % less far than their size says.',
  vehicle: workTruck,
  work: ['joint-replaced-front', 'shaft-removed'],
  runs: [
    {
      file: 'joint-replaced-cruise.csv',
      keys: { name: 'Cruise, 62 mph', speed: '62 mph', speedSource: 'gps', gearRatio: 0.69, load: 'cruise' },
      layout: 'plain',
      scenario: {
        seed: 1101,
        vehicleSeed: 11,
        vehicle: workTruck,
        rollingCircumferenceM: 2.4485 * 0.994,
        drive: { durationS: 40, speed: steady(mph(62.2)), load: 'cruise', gearRatio: 0.69 },
        roadM3: GOOD_ROAD_M3,
        faults: [{ kind: 'driveshaft-unbalance', levelMps2: 0.3 }],
        sensor: railLogger(250),
      },
    },
  ],
};

const shortWagon: Vehicle = {
  description: 'Short-wheelbase utility, rear drive in this gear, six cylinders',
  tire: { kind: 'size', size: '245/70R16' },
  layout: 'rear-drive',
  axleRatio: 3.91,
  gearRatios: [3.52, 2.04, 1.4, 1.0, 0.72],
  cylinders: 6,
  converter: true,
};

const droppedMount: DemoJob = {
  name: 'dropped-mount',
  title: 'Monday: drone at 40 mph after a clutch job',
  complaint:
    'A drone and a buzz in the floor between 35 and 45 mph, worse when pulling. The transmission was out last month.',
  made: 'A transmission mount has dropped, so the working angles differ: driveshaft 2×, 0.28 m/s² at 40 mph, a third of it by torque. Cruise, 36 s at 250 Hz, decimal-comma logger.',
  vehicle: shortWagon,
  work: ['transmission-removed', 'mounts-changed'],
  runs: [
    {
      file: 'dropped-mount-cruise.csv',
      keys: { name: 'Cruise, 40 mph', speed: '40 mph', speedSource: 'gps', gearRatio: 1.4, load: 'cruise' },
      layout: 'german',
      scenario: {
        seed: 1102,
        vehicleSeed: 12,
        vehicle: shortWagon,
        rollingCircumferenceM: 2.2857 * 1.004,
        drive: { durationS: 36, speed: steady(mph(40.1)), load: 'cruise', gearRatio: 1.4, converterSlip: 0.03 },
        roadM3: GOOD_ROAD_M3,
        faults: [{ kind: 'driveshaft-angle', levelMps2: 0.28 }],
        sensor: railLogger(250, 92),
      },
    },
  ],
};

const hatchback: Vehicle = {
  description: 'Compact hatchback, front drive, four cylinders',
  tire: { kind: 'size', size: '205/55R16' },
  layout: 'front-drive',
  finalDrive: 3.94,
  gearRatios: FRONT_SIX,
  cylinders: 4,
  converter: true,
};

const tireShake: DemoJob = {
  name: 'tire-shake',
  title: 'Tuesday: seat shakes at 70, new tires',
  complaint: 'Steering wheel and seat shake around 65 to 70 mph. Four new tires two weeks ago.',
  made: 'One front tire with force variation: tire 1× 0.18 m/s², tire 2× 40 % of it, tire 3× 20 %. Cruise at 67.6 mph true where the dial shows 70, 40 s at 200 Hz, uneven sample times.',
  vehicle: hatchback,
  work: ['tires-replaced', 'wheels-balanced'],
  runs: [
    {
      file: 'tire-shake-cruise.csv',
      keys: { name: 'Cruise, dial at 70', speed: '70 mph', speedSource: 'dial', gearRatio: 0.67, load: 'cruise' },
      layout: 'spanish',
      scenario: {
        seed: 1103,
        vehicleSeed: 13,
        vehicle: hatchback,
        rollingCircumferenceM: 1.9273 * 1.003,
        drive: { durationS: 40, speed: steady(mph(67.6)), load: 'cruise', gearRatio: 0.67 },
        roadM3: GOOD_ROAD_M3,
        faults: [{ kind: 'tire-force-variation', wheel: 'front-left', orders: [1, 0.4, 0.2], levelMps2: 0.18 }],
        sensor: railLogger(200, -8, { jitterS: 0.0005, antiAliasHz: 70 }),
      },
    },
  ],
};

const minivan: Vehicle = {
  description: 'Seven-seat van, front drive, six cylinders',
  tire: { kind: 'size', size: '235/65R16' },
  layout: 'front-drive',
  finalDrive: 3.69,
  gearRatios: [4.15, 2.37, 1.56, 1.16, 0.86, 0.69],
  cylinders: 6,
  converter: true,
  accessories: [
    { name: 'alternator', ratio: 2.7 },
    { name: 'water pump', ratio: 1.2 },
  ],
};

const misfire: DemoJob = {
  name: 'misfire',
  title: 'Tuesday: rough when warm',
  complaint: 'Rocks at a steady 50 mph once warm, smoother when coasting. Owner suspects a tire.',
  made: 'One of six cylinders works at 55 %: engine ½×, 0.20 m/s², with 1×, 1½× and the other half orders that follow from the firing sequence. Cruise with 4 % converter slip, engine speed logged at 5 Hz, 36 s at 200 Hz, mixed column order.',
  vehicle: minivan,
  runs: [
    {
      file: 'misfire-cruise.csv',
      keys: { name: 'Cruise, 50 mph, warm', speed: '50 mph', speedSource: 'obd', gearRatio: 0.86, load: 'cruise' },
      layout: 'mixed-order',
      scenario: {
        seed: 1104,
        vehicleSeed: 14,
        vehicle: minivan,
        rollingCircumferenceM: 2.1714 * 0.997,
        drive: { durationS: 36, speed: steady(mph(50.3)), load: 'cruise', gearRatio: 0.86, converterSlip: 0.04 },
        roadM3: GOOD_ROAD_M3,
        faults: [{ kind: 'misfire', cylinder: 2, strength: 0.55, levelMps2: 0.2 }],
        sensor: railLogger(200, 178),
        log: { engine: { rateHz: 5, stepRpm: 0.25, lagS: 0.2 } },
      },
    },
  ],
};

const olderSedan: Vehicle = {
  description: 'Older sedan, rear drive, four-speed without overdrive, eight cylinders',
  tire: { kind: 'size', size: '225/75R15' },
  layout: 'rear-drive',
  axleRatio: 2.73,
  gearRatios: [2.74, 1.57, 1.0],
  cylinders: 8,
  converter: true,
};

const directGear: DemoJob = {
  name: 'direct-gear',
  title: 'Wednesday: shake in top gear',
  complaint: 'Shakes at 60 mph in top gear. One shop sold a shaft, another wants to open the engine.',
  made: 'The driveshaft has lost a weight: driveshaft 1×, 0.32 m/s² at 60 mph. Top gear is direct (1.00) and the converter is locked, so engine 1× turns at exactly the same speed. Cruise, 40 s at 200 Hz, tab-separated logger with decimal comma.',
  vehicle: olderSedan,
  work: ['shaft-removed'],
  runs: [
    {
      file: 'direct-gear-cruise.csv',
      keys: { name: 'Cruise, 60 mph, top gear', speed: '60 mph', speedSource: 'gps', gearRatio: 1, load: 'cruise' },
      layout: 'french',
      scenario: {
        seed: 1105,
        vehicleSeed: 15,
        vehicle: olderSedan,
        rollingCircumferenceM: 2.1914 * 1.002,
        drive: { durationS: 40, speed: steady(mph(59.9)), load: 'cruise', gearRatio: 1 },
        roadM3: GOOD_ROAD_M3,
        faults: [{ kind: 'driveshaft-unbalance', levelMps2: 0.32 }],
        sensor: railLogger(200, 0),
      },
    },
  ],
};

const sound: DemoJob = {
  name: 'sound',
  title: 'Wednesday: check before sale',
  complaint: 'None. The buyer asked for a road test with a recording.',
  made: 'Nothing is wrong. The normal small orders of tires, shaft and engine are there, below what a seat feels. Cruise on a good road, 40 s at 200 Hz, epoch time stamps, a turn-rate sensor beside the acceleration.',
  vehicle: workTruck,
  runs: [
    {
      file: 'sound-cruise.csv',
      keys: { name: 'Cruise, 60 mph', speed: '60 mph', speedSource: 'gps', gearRatio: 0.69, load: 'cruise' },
      layout: 'epoch-with-gyro',
      scenario: {
        seed: 1106,
        vehicleSeed: 16,
        vehicle: workTruck,
        rollingCircumferenceM: 2.4485 * 1.001,
        drive: { durationS: 36, speed: steady(mph(60)), load: 'cruise', gearRatio: 0.69 },
        roadM3: 2e-6,
        faults: [],
        normalLevel: 0.8,
        sensor: railLogger(200, 15),
      },
    },
  ],
};

const pickup: Vehicle = {
  description: 'Extended-cab pickup, rear drive, eight cylinders, one-piece shaft',
  tire: { kind: 'size', size: 'LT245/75R16' },
  layout: 'rear-drive',
  axleRatio: 3.42,
  gearRatios: [3.06, 1.63, 1.0, 0.7],
  cylinders: 8,
  converter: true,
};

const coastDown: DemoJob = {
  name: 'coast-down',
  title: 'Thursday: comes and goes with speed',
  complaint: 'A shake that grows with speed and does not care about the throttle.',
  made: 'Driveshaft 1×, 0.35 m/s² at 68 mph, growing with speed squared. Coasting in neutral from 70 to 36 mph while the logger writes road speed once a second in whole km/h, 0.6 s late. 44 s at 250 Hz, quoted cells and a trailing delimiter.',
  vehicle: pickup,
  work: ['shaft-removed'],
  runs: [
    {
      file: 'coast-down.csv',
      keys: { name: 'Coast in neutral, 70 to 36 mph', speedSource: 'logged', load: 'neutral' },
      layout: 'separator-line',
      scenario: {
        seed: 1107,
        vehicleSeed: 17,
        vehicle: pickup,
        rollingCircumferenceM: 2.3604 * 0.996,
        drive: {
          durationS: 44,
          speed: { kind: 'ramp', fromMps: mph(70), toMps: mph(36), shape: 'coast', driftSd: 0.002, driftTimeS: 5 },
          load: 'neutral',
          idleRpm: 690,
        },
        roadM3: GOOD_ROAD_M3,
        faults: [{ kind: 'driveshaft-unbalance', levelMps2: 0.35, at: { speedMps: mph(68), load: 'neutral' } }],
        sensor: railLogger(250, 3),
        log: { speed: { rateHz: 1, step: 1, unit: 'km/h', lagS: 0.6, factor: 1, noiseMps: 0.05 } },
      },
    },
  ],
};

const phoneFold: DemoJob = {
  name: 'phone-100hz',
  title: 'Thursday: a phone recording from the owner',
  complaint: 'Owner sent a recording from a phone in a holder. Buzz in the floor at 62 mph since a lift kit.',
  made: 'Unequal working angles: driveshaft 2× at 80 Hz, 0.35 m/s². The phone samples at 100 Hz without a filter, so the line shows folded at about 20 Hz. 40 s, uneven sample times, other sensors in the file.',
  vehicle: { ...pickup, axleRatio: 3.42 },
  work: ['ride-height-changed'],
  runs: [
    {
      file: 'phone-100hz.csv',
      keys: { name: 'Cruise, 62 mph, phone', speed: '62 mph', speedSource: 'gps', gearRatio: 0.7, load: 'cruise' },
      layout: 'pocket-recorder',
      scenario: {
        seed: 1108,
        vehicleSeed: 18,
        vehicle: pickup,
        rollingCircumferenceM: 2.3604 * 1.003,
        drive: { durationS: 40, speed: steady(mph(62.1), 0.006), load: 'cruise', gearRatio: 0.7 },
        roadM3: GOOD_ROAD_M3,
        faults: [{ kind: 'driveshaft-angle', levelMps2: 0.35 }],
        sensor: phone(100),
      },
    },
  ],
};

const sedan: Vehicle = {
  description: 'Mid-size sedan, front drive, four cylinders, tripod inner joints',
  tire: { kind: 'size', size: '215/60R16' },
  layout: 'front-drive',
  finalDrive: 3.63,
  gearRatios: FRONT_SIX,
  cylinders: 4,
  converter: true,
  tripodJoints: true,
};
const tripod: Fault = {
  kind: 'half-shaft-tripod',
  side: 'right',
  levelMps2: 0.55,
  at: { speedMps: mph(45), load: 'pull', gearRatio: 1.16 },
};

const halfShaft: DemoJob = {
  name: 'half-shaft',
  title: 'Thursday: side shake when pulling away',
  complaint: 'Front end rocks sideways under throttle at 40 to 50 mph and stops at once when lifting off.',
  made: 'A worn tripod joint: half-shaft 3× (equal in frequency to tire 3×), 0.55 m/s² at full pull, in proportion to torque. Two runs at 45 mph, pulling up a grade and coasting, 30 s each at 200 Hz.',
  vehicle: sedan,
  runs: [
    {
      file: 'half-shaft-pull.csv',
      keys: { name: 'Pull up a grade, 45 mph', speed: '45 mph', speedSource: 'gps', gearRatio: 1.16, load: 'pull' },
      layout: 'time-of-day',
      scenario: {
        seed: 1109,
        vehicleSeed: 19,
        vehicle: sedan,
        rollingCircumferenceM: 2.0265 * 0.998,
        drive: { durationS: 30, speed: steady(mph(45.2), 0.006), load: 'pull', gearRatio: 1.16 },
        roadM3: GOOD_ROAD_M3,
        faults: [tripod],
        normalLevel: 0.5,
        sensor: railLogger(200, 5),
      },
    },
    {
      file: 'half-shaft-coast.csv',
      keys: { name: 'Foot off, 45 mph', speed: '45 mph', speedSource: 'gps', gearRatio: 1.16, load: 'coast' },
      layout: 'time-of-day',
      scenario: {
        seed: 1110,
        vehicleSeed: 19,
        vehicle: sedan,
        rollingCircumferenceM: 2.0265 * 0.998,
        drive: { durationS: 30, speed: steady(mph(44.8), 0.006), load: 'coast', gearRatio: 1.16 },
        roadM3: GOOD_ROAD_M3,
        faults: [tripod],
        normalLevel: 0.5,
        sensor: railLogger(200, 5),
      },
    },
  ],
};

const hum: DemoJob = {
  name: 'fixed-hum',
  title: 'Friday: hum that never changes',
  complaint: 'A hum in the floor, there at every speed. Two sets of tires have been tried.',
  made: 'A pump that turns by itself at 31.4 Hz, 0.14 m/s²: it follows no part of the driveline. Two cruises at 50 and 65 mph, 30 s each at 200 Hz.',
  vehicle: hatchback,
  work: ['tires-replaced'],
  runs: [50, 65].map((speed, i) => ({
    file: `fixed-hum-${speed}.csv`,
    keys: { name: `Cruise, ${speed} mph`, speed: `${speed} mph`, speedSource: 'gps', gearRatio: 0.85, load: 'cruise' },
    layout: 'commented-header',
    scenario: {
      seed: 1111 + i,
      vehicleSeed: 20,
      vehicle: hatchback,
      rollingCircumferenceM: 1.9273 * 0.995,
      drive: { durationS: 30, speed: steady(mph(speed), 0.008), load: 'cruise' as const, gearRatio: 0.85 },
      roadM3: GOOD_ROAD_M3,
      faults: [{ kind: 'fixed-tone' as const, frequencyHz: 31.4, wander: 0.0003, levelMps2: 0.14 }],
      sensor: railLogger(200, 30),
    },
  })),
};

const liftedTruck: Vehicle = {
  description: 'Lifted four-door truck, rear drive, eight cylinders',
  tire: { kind: 'size', size: '33x12.50R15LT' },
  layout: 'rear-drive',
  axleRatio: 4.56,
  gearRatios: [3.06, 1.63, 1.0, 0.7],
  cylinders: 8,
  converter: true,
  driveshaftPieces: [
    { lengthMm: 1320, tubeOuterMm: 76.2, wallMm: 1.65, massKg: 9, frontJoint: 'cross', rearJoint: 'cross' },
  ],
};
const liftAngle = (levelMps2: number): Fault => ({
  kind: 'driveshaft-angle',
  levelMps2,
  coupleShare: 0.35,
  at: { speedMps: mph(41), load: 'cruise', gearRatio: 1 },
});

const comeback: DemoJob = {
  name: 'comeback',
  title: 'Friday: the comeback, from complaint to proof',
  complaint: 'Third visit. Buzz at 35 to 45 mph since the lift. Wheels were balanced twice without change.',
  made: 'The lift left the working angles unequal: driveshaft 2×, 0.50 m/s² at 41 mph. First a cruise and a pull at 41 mph (the torque couple makes the pull worse), then the measured angles and a flange check, then axle wedges, then the proving cruise, where 0.015 m/s² is left. 30 s each at 200 Hz.',
  vehicle: liftedTruck,
  work: ['ride-height-changed', 'wheels-balanced'],
  repaired: ['angles-from-ride-height'],
  notes:
    'Visit 1: wheels balanced, no change. Visit 2: balanced again on another machine, no change. Visit 3: recorded, measured, wedges of 2.5 degrees fitted under the axle, recorded again.',
  measurements: [
    {
      kind: 'working-angles',
      shafts: [
        { part: 'transmission', slopeDeg: 3.5 },
        { part: 'shaft', slopeDeg: 9.0 },
        { part: 'pinion', slopeDeg: 6.2 },
      ],
    },
    { kind: 'runout', place: 'companion-flange-radial', tirMm: 0.05 },
  ],
  runs: (
    [
      ['comeback-cruise.csv', 'Cruise, 41 mph', 'cruise', 0.5, 'complaint'],
      ['comeback-pull.csv', 'Pull up a grade, 41 mph', 'pull', 0.5, 'complaint'],
      ['comeback-proof.csv', 'Cruise, 41 mph, wedges fitted', 'cruise', 0.015, 'proof'],
    ] as const
  ).map(([file, name, load, level, stage], i) => ({
    file,
    keys: { name, speed: '41 mph', speedSource: 'gps', gearRatio: 1, load, stage },
    layout: 'quoted-trailing',
    scenario: {
      seed: 1120 + i,
      vehicleSeed: 21,
      vehicle: liftedTruck,
      rollingCircumferenceM: 2.5565 * 0.993,
      drive: {
        durationS: 30,
        speed: steady(mph(41 + 0.15 * (i - 1)), 0.005),
        load,
        gearRatio: 1,
        converterSlip: load === 'pull' ? 0.05 : 0.02,
      },
      roadM3: GOOD_ROAD_M3,
      faults: [liftAngle(level)],
      normalLevel: 0.5,
      sensor: railLogger(200, -4),
    },
  })),
};

export const DEMO_JOBS: readonly DemoJob[] = [
  jointReplaced,
  droppedMount,
  tireShake,
  misfire,
  directGear,
  sound,
  coastDown,
  phoneFold,
  halfShaft,
  hum,
  comeback,
  launch,
];
