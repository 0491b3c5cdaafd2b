import { describe, expect, test } from 'vitest';
import type { Measurement } from '../../../src/core/driveline/measurement.ts';
import { readJob, writeJob } from '../../../src/core/job/job-file.ts';
import { must } from '../../support/must.ts';

const fileWith = (measurement: unknown): string =>
  JSON.stringify({ schemaVersion: 1, vehicle: { layout: 'rear-drive' }, measurements: [measurement] });
const read = (measurement: unknown): Measurement => {
  const job = must(readJob(fileWith(measurement), 'a.job.json'));
  const [first] = job.measurements;
  if (first === undefined) throw new Error('none read');
  expect(must(readJob(writeJob(job), 'a.job.json'))).toEqual(job);
  return first;
};
const refusal = (measurement: unknown): string => {
  const result = readJob(fileWith(measurement), 'a.job.json');
  return result.ok ? 'read' : result.problem.message;
};

/** One full measurement of every kind; a kind added to the union does not compile until it stands here. */
const EVERY_KIND: { readonly [K in Measurement['kind']]: Extract<Measurement, { readonly kind: K }> } = {
  'working-angles': {
    kind: 'working-angles',
    shafts: [
      { part: 'transmission', slopeDeg: 3, planDeg: 0 },
      { part: 'shaft', slopeDeg: 6.2, planDeg: 1.5 },
      { part: 'pinion', slopeDeg: 2.4 },
    ],
    phasingDeg: [0],
    joints: ['cross', 'double-cardan'],
    splitErrorDeg: [0.2],
    driveshaft: 'front-driveshaft',
    atRideHeight: true,
  },
  'double-cardan': { kind: 'double-cardan', joint: 'front', halfAnglesDeg: [10.2, 9.8] },
  'ride-height': { kind: 'ride-height', axle: 'rear', measuredMm: 480, specifiedMm: 500 },
  'end-play': { kind: 'end-play', joint: 'center', axisPlayMm: [0.05, 0.03] },
  rings: {
    kind: 'rings',
    joint: 'rear',
    axes: [{ grooveSpanMm: 81.85, crossAndCupsMm: 78.6, ring1Mm: 1.55, ring2Mm: 1.65, grooveOffsetMm: -0.02 }],
  },
  'radial-play': { kind: 'radial-play', place: 'slip-yoke', playMm: 0.2 },
  runout: {
    kind: 'runout',
    place: 'tube-middle',
    tirMm: 0.5,
    readingsMm: [0, -0.2, 0.3],
    driveshaft: 'rear-driveshaft',
  },
  'flange-reindex': {
    kind: 'flange-reindex',
    boltCount: 4,
    levels: [
      { steps: 0, amplitudeMps2: 0.4, amplitudeSdMps2: 0.02 },
      { steps: 2, amplitudeMps2: 0.1 },
    ],
  },
  'balance-amplitudes': {
    kind: 'balance-amplitudes',
    part: 'driveshaft',
    baseline: { amplitude: 5, amplitudeSd: 0.1 },
    trialWeight: 25,
    weightUnit: 'g',
    positions: [
      { angleDeg: 0, amplitude: 6 },
      { angleDeg: 120, amplitude: 4 },
      { angleDeg: 240, amplitude: 7 },
    ],
  },
  'balance-phasors': {
    kind: 'balance-phasors',
    part: 'driveshaft',
    weightUnit: 'g·mm',
    baseline: [{ amplitude: 5, phaseDeg: 30, phaseSdDeg: 2 }],
    trials: [{ plane: 0, weight: 100, angleDeg: 45, readings: [{ amplitude: 4, phaseDeg: 60 }], leftOn: false }],
  },
  'wheel-unbalance': { kind: 'wheel-unbalance', innerG: 15, outerG: 30, radiusMm: 200 },
  observation: { kind: 'observation', checkId: 'mount-look', outcome: 'wrong', note: 'torn' },
};

describe('every kind of measurement', () => {
  test.each(Object.entries(EVERY_KIND))('%s is read as it is written', (_, measurement) => {
    expect(read(measurement)).toEqual(measurement);
  });
  test.each(Object.entries(EVERY_KIND))('%s keeps keys it does not know', (_, measurement) => {
    expect(read({ ...measurement, 'x-by': 'bay 3' })).toEqual({ ...measurement, 'x-by': 'bay 3' });
  });
  test.each(Object.entries(EVERY_KIND))(
    '%s with a wrong value in any key is refused with that key',
    (_, measurement) => {
      for (const key of Object.keys(measurement)) {
        expect(refusal({ ...measurement, [key]: { wrong: true } }), key).toContain(`measurements[0].${key}`);
      }
    },
  );
});

describe('readings with their unit', () => {
  test.each([
    [{ kind: 'end-play', joint: 'rear', axisPlay: ['0.0019 in', '2 thou'] }, { axisPlayMm: [0.04826, 0.0508] }],
    [{ kind: 'radial-play', place: 'center-bearing', play: '1/64 in' }, { playMm: 0.396875 }],
    [
      { kind: 'runout', place: 'tube-rear', tir: '0.020 in', readings: ['-1 thou', '5 thou'] },
      { tirMm: 0.508, readingsMm: [-0.0254, 0.127] },
    ],
    [
      { kind: 'ride-height', axle: 'rear', measured: '19 in', specified: '500 mm' },
      { measuredMm: 482.6, specifiedMm: 500 },
    ],
    [
      { kind: 'wheel-unbalance', inner: '0.5 oz', outer: '30 g', radius: '7 7/8 in' },
      { innerG: 14.1747615625, outerG: 30, radiusMm: 200.025 },
    ],
    [{ kind: 'double-cardan', joint: 'rear', halfAngles: ['10,2°', '9.8 deg'] }, { halfAnglesDeg: [10.2, 9.8] }],
  ] as const)('%j', (typed, expected) => {
    const measurement = read(typed) as unknown as Record<string, unknown>;
    for (const [key, value] of Object.entries(expected)) {
      const found = [measurement[key]].flat() as number[];
      [value].flat().forEach((number, index) => expect(found[index]).toBeCloseTo(number, 9));
    }
  });
  test('a reading that can be taken in two ways is refused', () => {
    expect(refusal({ kind: 'ride-height', axle: 'rear', measured: '1,320 mm', specifiedMm: 500 })).toBe(
      'measurements[0].measured: "1,320 mm" can be read in two ways: 1.32 or 1320.',
    );
  });
});
