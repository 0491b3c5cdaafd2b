/** Random jobs within what a job file may hold. */
import fc from 'fast-check';
import type { Measurement } from '../../../src/core/driveline/measurement.ts';
import type { Job, Run } from '../../../src/core/job/job.ts';
import { WORK_DONE } from '../../../src/core/job/work-done.ts';
import type { Vehicle } from '../../../src/core/vehicle/vehicle.ts';

/** A record whose optional keys may be absent, never undefined. */
const optional = <T extends Record<string, unknown>>(
  model: { [K in keyof T]: fc.Arbitrary<T[K]> },
  requiredKeys: (keyof T)[],
): fc.Arbitrary<Partial<T>> => fc.record<T, keyof T>(model, { requiredKeys });

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min, max, noNaN: true }).map((value) => value + 0);
const words = fc.string({ maxLength: 12 });
/** Keys no version will ever know, with any JSON value. */
const unknown = fc.dictionary(
  words.map((word) => `x-${word}`),
  fc
    .jsonValue({ maxDepth: 2 })
    .filter((value) => JSON.stringify(value) === JSON.stringify(JSON.parse(JSON.stringify(value)))),
  { maxKeys: 2 },
);
const withUnknown = <T extends object>(arbitrary: fc.Arbitrary<T>): fc.Arbitrary<T> =>
  fc.tuple(arbitrary, unknown).map(([object, more]) => ({ ...object, ...JSON.parse(JSON.stringify(more)) }) as T);

const tire = fc.oneof(
  fc.constantFrom('265/70R17', 'LT245/75R16', '33x12.50R15', '165R15').map((size) => ({ kind: 'size', size })),
  between(0.7, 5).map((circumferenceM) => ({ kind: 'rolling-circumference', circumferenceM })),
  between(330, 2200).map((revsPerMile) => ({ kind: 'revs-per-mile', revsPerMile })),
  between(210, 1400).map((revsPerKm) => ({ kind: 'revs-per-km', revsPerKm })),
);
const joint = fc.constantFrom('cross', 'double-cardan', 'constant-velocity', 'flexible-disc');
const shaftPiece = optional(
  {
    lengthMm: between(50, 10_000),
    tubeOuterMm: between(5, 500),
    wallMm: between(0.2, 100),
    massKg: between(0, 1000),
    material: fc.constantFrom('steel', 'aluminium'),
    frontJoint: joint,
    rearJoint: joint,
  },
  [],
);

const vehicle = optional(
  {
    layout: fc.constantFrom('rear-drive', 'front-drive', 'four-wheel-drive', 'electric'),
    description: words,
    tire,
    axleRatio: between(0.5, 30),
    frontAxleRatio: between(0.5, 30),
    finalDrive: between(0.5, 60),
    gearRatios: fc.array(between(0.2, 40), { maxLength: 5 }),
    transferRatio: between(0.5, 10),
    cylinders: fc.integer({ min: 1, max: 24 }),
    converter: fc.boolean(),
    accessories: fc.array(fc.record({ name: words, ratio: between(0.1, 20) }), { maxLength: 2 }),
    pinionTeeth: fc.integer({ min: 1, max: 200 }),
    ringTeeth: fc.integer({ min: 1, max: 400 }),
    polePairs: fc.integer({ min: 1, max: 100 }),
    driveshaftPieces: fc.array(withUnknown(shaftPiece), { maxLength: 2 }),
    tripodJoints: fc.boolean(),
  },
  ['layout'],
) as unknown as fc.Arbitrary<Vehicle>;

const run = optional(
  {
    file: words.map((word) => `${word}.csv`),
    name: words,
    samplingRateHz: between(0.1, 1e7),
    fromS: between(0, 345_600),
    toS: between(0, 345_600),
    accelerationUnit: fc.constantFrom('g', 'mg', 'm/s²', 'mm/s²'),
    stage: fc.constantFrom('complaint', 'proof'),
    speedMps: between(0, 150),
    speedSource: fc.constantFrom('dial', 'gps', 'obd', 'logged'),
    gearRatio: between(0.2, 40),
    engineRpm: between(0, 30_000),
    load: fc.constantFrom('cruise', 'pull', 'coast', 'neutral', 'brake', 'standing'),
    note: words,
  },
  ['file'],
) as unknown as fc.Arbitrary<Run>;

const place = fc.constantFrom('front', 'center', 'rear');
const measurement = fc.oneof(
  fc.record({ kind: fc.constant('end-play'), joint: place, axisPlayMm: fc.tuple(between(0, 50), between(0, 50)) }),
  fc.record({
    kind: fc.constant('working-angles'),
    shafts: fc.array(
      optional(
        {
          part: fc.constantFrom('transmission', 'shaft', 'pinion'),
          slopeDeg: between(-89, 89),
          planDeg: between(-89, 89),
        },
        ['part', 'slopeDeg'],
      ),
      { maxLength: 4 },
    ),
  }),
  optional(
    {
      kind: fc.constant('runout'),
      place: fc.constantFrom('tube-front', 'wheel-radial', 'companion-flange-face'),
      tirMm: between(0, 100),
      readingsMm: fc.array(between(-100, 100), { maxLength: 8 }),
    },
    ['kind', 'place'],
  ),
  optional(
    {
      kind: fc.constant('observation'),
      checkId: words.map((word) => `check ${word}`),
      outcome: fc.constantFrom('fine', 'wrong'),
      note: words,
    },
    ['kind', 'checkId', 'outcome'],
  ),
) as unknown as fc.Arbitrary<Measurement>;

export const anyJob: fc.Arbitrary<Job> = (
  optional(
    {
      schemaVersion: fc.constant(2),
      title: words,
      complaint: words,
      vehicle: withUnknown(vehicle),
      work: fc.subarray([...WORK_DONE]),
      runs: fc.array(withUnknown(run), { maxLength: 3 }),
      repaired: fc.subarray(['joint-off-center', 'shaft-unbalance', 'of another version']),
      measurements: fc.array(withUnknown(measurement), { maxLength: 3 }),
      limits: optional(
        { 'end-play': optional({ value: between(0.01, 10), source: words.map((word) => `by ${word}`) }, ['value']) },
        [],
      ),
      notes: words,
    },
    ['schemaVersion', 'vehicle', 'work', 'runs', 'measurements'],
  ) as unknown as fc.Arbitrary<Job>
).chain((job) =>
  unknown.map((more) =>
    Object.keys(more).length === 0
      ? job
      : { ...job, unknownKeys: JSON.parse(JSON.stringify(more)) as Record<string, unknown> },
  ),
);
