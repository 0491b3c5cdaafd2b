/**
 * What the bench says of random measurements, and what that tells the checks. The arithmetic has sources and brute-force
 * judges of its own in tests/core/driveline; this pins everything around it: which limit, which sentence, which speed.
 */
import { angleSensitivity } from '../../src/core/driveline/angles/angle-sensitivity.ts';
import { angleWhatIf } from '../../src/core/driveline/angles/angle-what-if.ts';
import { balanceByAmplitudes } from '../../src/core/driveline/balance/balance-amplitude.ts';
import { balanceByPhasors } from '../../src/core/driveline/balance/balance-influence.ts';
import {
  placeAvailable,
  splitBetweenClamps,
  splitBetweenHoles,
} from '../../src/core/driveline/balance/balance-split.ts';
import { slopeOfReading } from '../../src/core/driveline/angles/inclinometer.ts';
import { judgeInJob } from '../../src/app/bench/judge-in-job.ts';
import * as m from '../../src/core/driveline/measurement.ts';
import { selectRings } from '../../src/core/driveline/rings/ring-selection.ts';
import { evenReadings, fitRunout } from '../../src/core/driveline/runout/runout.ts';
import { fitsOf, indexing, tubePlanes } from '../../src/core/driveline/runout/runout-places.ts';
import { secondaryCouple } from '../../src/core/driveline/angles/secondary-couple.ts';
import { whirl } from '../../src/core/driveline/whirl.ts';
import { factsOf } from '../../src/core/diagnosis/evidence/measured-facts.ts';
import { workingAngles, type WorkingAnglesInput } from '../../src/core/driveline/angles/working-angles.ts';
import { randomSource, type RandomSource } from '../../src/core/simulate/random.ts';
import type { JointKind, RunCondition, ShaftPiece, Vehicle } from '../../src/core/vehicle/vehicle.ts';
import { leaves, type Leaf } from './leaves.ts';
import { madeJob } from '../support/made-job.ts';

type Drawing = (random: RandomSource) => unknown;

const JOINTS: readonly JointKind[] = ['cross', 'cross', 'cross', 'double-cardan', 'constant-velocity', 'flexible-disc'];
const PLACES: readonly m.JointPlace[] = ['front', 'center', 'rear'];

const some = <T>(random: RandomSource, chance: number, value: () => T): T | undefined =>
  random.chance(chance) ? value() : undefined;
const list = <T>(count: number, one: (index: number) => T): T[] => Array.from({ length: count }, (_, i) => one(i));

/** One to three pieces, in a plane or not, from the transmission back or from a front pinion. */
const drawAngles = (random: RandomSource): WorkingAnglesInput => {
  const pieces = random.pick([1, 1, 2, 3]);
  const ends = random.chance(0.25) ? (['pinion', 'transfer-case'] as const) : (['transmission', 'pinion'] as const);
  const shaft = (part: m.ShaftReading['part']): m.ShaftReading => {
    const planDeg = some(random, 0.3, () => random.between(-3, 3));
    return { part, slopeDeg: random.between(-1, 7), ...(planDeg !== undefined && { planDeg }) };
  };
  const torqueNm = some(random, 0.5, () => random.between(50, 900));
  return {
    shafts: [shaft(ends[0]), ...list(pieces, () => shaft('shaft')), shaft(ends[1])],
    phasingDeg: list(pieces, () => (random.chance(0.3) ? random.between(-95, 95) : 0)),
    joints: list(pieces + 1, () => random.pick(JOINTS)),
    splitErrorDeg: list(pieces + 1, () => (random.chance(0.3) ? random.between(-1, 1) : 0)),
    driveshaftRpm: random.chance(0.85) ? random.between(600, 4200) : null,
    ...(torqueNm !== undefined && { torqueNm, bearingSpanMm: random.between(100, 500) }),
  };
};

const drawPiece = (random: RandomSource): ShaftPiece => {
  const massKg = some(random, 0.6, () => random.between(4, 14));
  const material = some(random, 0.5, () => random.pick(['steel', 'aluminium'] as const));
  return {
    lengthMm: random.between(500, 1900),
    tubeOuterMm: random.between(50, 130),
    wallMm: random.between(1.5, 4),
    ...(massKg !== undefined && { massKg }),
    ...(material !== undefined && { material }),
  };
};

const drawVehicle = (random: RandomSource): Vehicle => ({
  layout: random.pick(['rear-drive', 'rear-drive', 'four-wheel-drive'] as const),
  tire: { kind: 'size', size: random.pick(['265/70R17', 'P215/60R16', '31x10.50R15LT']) },
  axleRatio: random.between(2.7, 4.4),
  frontAxleRatio: random.between(2.7, 4.4),
  driveshaftPieces: list(random.pick([1, 2]), () => drawPiece(random)),
});

const drawCondition = (random: RandomSource): RunCondition =>
  random.chance(0.1)
    ? {}
    : { speedMps: random.between(8, 36), speedSource: random.pick(['dial', 'gps', 'obd'] as const) };

const drawReadings = (random: RandomSource): number[] => {
  const count = random.pick([8, 8, 12, 6]);
  const [mean, once, twice] = [random.between(0, 2), random.between(0, 0.8), random.between(0, 0.5)];
  const [a, b] = [random.between(0, 6.3), random.between(0, 6.3)];
  return list(count, (i) => {
    const turn = (2 * Math.PI * i) / count;
    return mean + once * Math.cos(turn - a) + twice * Math.cos(2 * turn - b) + 0.01 * random.normal();
  });
};

const drawRing = (random: RandomSource): m.RingAxis => {
  const crossAndCupsMm = random.between(70, 110);
  const [ring1Mm, ring2Mm] = [random.between(1.4, 1.7), random.between(1.4, 1.7)];
  return {
    crossAndCupsMm,
    ring1Mm,
    ring2Mm,
    grooveSpanMm: crossAndCupsMm + ring1Mm + ring2Mm + random.between(-0.05, 0.2),
    grooveOffsetMm: random.chance(0.5) ? random.between(-0.2, 0.2) : 0,
  };
};

/** Levels that one rotor would give, and a little error; now and then readings that fit none. */
const drawAmplitudes = (random: RandomSource): m.BalanceAmplitudesMeasurement => {
  const angles = random.pick([
    [0, 120, 240],
    [0, 90, 180, 270],
    [10, 75, 200],
    [0, 20, 40],
  ]);
  const [level, effect, at] = [random.between(0.1, 1), random.between(0.05, 0.6), random.between(0, 360)];
  const error = random.pick([0.001, 0.01, 0.2]);
  const sd = some(random, 0.6, () => random.between(0.002, 0.03));
  const reading = (amplitude: number): m.AmplitudeReading => ({
    amplitude: Math.abs(amplitude + error * random.normal()),
    ...(sd !== undefined && { amplitudeSd: sd }),
  });
  const cosine = (angleDeg: number): number => Math.cos(((angleDeg - at) * Math.PI) / 180);
  return {
    kind: 'balance-amplitudes',
    part: random.pick(['driveshaft', 'tire'] as const),
    weightUnit: random.pick(['g', 'g·mm'] as const),
    trialWeight: random.between(5, 300),
    baseline: reading(level),
    positions: angles.map((angleDeg) => ({
      angleDeg,
      ...reading(Math.sqrt(level ** 2 + effect ** 2 + 2 * level * effect * cosine(angleDeg))),
    })),
  };
};

const drawPhasors = (random: RandomSource): m.BalancePhasorsMeasurement => {
  const planes = random.pick([1, 2]);
  const sensors = random.pick([planes, 2]);
  const sd = random.chance(0.5);
  const reading = (): m.PhasorReading => ({
    amplitude: random.between(0.1, 1),
    phaseDeg: random.between(0, 360),
    ...(sd && { amplitudeSd: random.between(0.001, 0.03), phaseSdDeg: random.between(0.5, 4) }),
  });
  return {
    kind: 'balance-phasors',
    part: random.pick(['driveshaft', 'tire'] as const),
    weightUnit: random.pick(['g', 'g·mm'] as const),
    baseline: list(Math.max(planes, sensors), reading),
    trials: list(planes, (plane) => ({
      plane,
      weight: random.between(5, 300),
      angleDeg: random.between(0, 360),
      readings: list(Math.max(planes, sensors), reading),
      ...(random.chance(0.3) && { leftOn: true }),
    })),
  };
};

const MEASUREMENTS: Readonly<Record<m.Measurement['kind'], (random: RandomSource) => m.Measurement>> = {
  'working-angles': (random) => {
    const { shafts, phasingDeg, joints, splitErrorDeg } = drawAngles(random);
    const driveshaft = random.pick(['rear-driveshaft', 'front-driveshaft'] as const);
    const atRideHeight = random.chance(0.8);
    return {
      kind: 'working-angles',
      shafts,
      phasingDeg,
      joints,
      splitErrorDeg,
      driveshaft,
      atRideHeight,
    } as m.Measurement;
  },
  'double-cardan': (random) => ({
    kind: 'double-cardan',
    joint: random.pick(PLACES),
    halfAnglesDeg: [random.between(0, 12), random.between(0, 12)],
  }),
  'ride-height': (random) => ({
    kind: 'ride-height',
    axle: random.pick(['front', 'rear'] as const),
    measuredMm: random.between(300, 420),
    specifiedMm: random.between(300, 420),
  }),
  'end-play': (random) => ({
    kind: 'end-play',
    joint: random.pick(PLACES),
    axisPlayMm: [random.between(0, 0.15), random.between(0, 0.15)],
  }),
  rings: (random) => ({ kind: 'rings', joint: random.pick(PLACES), axes: [drawRing(random), drawRing(random)] }),
  'radial-play': (random) => ({
    kind: 'radial-play',
    place: random.pick(['slip-yoke', 'center-bearing'] as const),
    playMm: random.between(0, 1),
  }),
  runout: (random) => ({
    kind: 'runout',
    place: random.pick(m.RUNOUT_PLACES),
    wheelMaterial: random.pick(['steel', 'alloy'] as const),
    ...(random.chance(0.5) ? { tirMm: random.between(0, 2) } : { readingsMm: drawReadings(random) }),
  }),
  'flange-reindex': (random) => {
    const boltCount = random.pick([4, 4, 6, 8]);
    const steps = random.pick([
      [0, 1],
      [0, 2],
      [0, 1, 2],
      [0, 1, 2, 3],
      [0, 5, -1],
    ]);
    return {
      kind: 'flange-reindex',
      boltCount,
      levels: steps.map((step) => ({ steps: step, amplitudeMps2: random.between(0.05, 0.6) })),
    };
  },
  'balance-amplitudes': drawAmplitudes,
  'balance-phasors': drawPhasors,
  'wheel-unbalance': (random) => ({
    kind: 'wheel-unbalance',
    innerG: random.between(-30, 30),
    outerG: random.between(-30, 30),
    radiusMm: random.between(160, 260),
  }),
  observation: (random) => ({
    kind: 'observation',
    checkId: 'mounts',
    outcome: random.pick(['fine', 'wrong'] as const),
  }),
};

const drawStock = (random: RandomSource) =>
  list(random.pick([3, 5, 8]), () => ({
    thicknessMm: Math.round(100 * random.between(1.4, 1.75)) / 100,
    count: some(random, 0.5, () => random.pick([1, 2, 3])),
  }));

const DRAWINGS: Readonly<Record<string, readonly [count: number, drawing: Drawing]>> = {
  ...Object.fromEntries(
    Object.entries(MEASUREMENTS).map(([kind, draw]) => {
      const drawing: Drawing = (random) => {
        const [measurement, vehicle] = [draw(random), drawVehicle(random)];
        const runs = [{ file: 'run.csv', ...drawCondition(random) }];
        const judged = judgeInJob(measurement, madeJob(vehicle, ...runs));
        const speeds = { driveshaftRpm: random.between(900, 4000), wheelRpm: null, once: random.chance(0.5) };
        return [judged, factsOf(measurement, vehicle, speeds)];
      };
      return [`judged ${kind}`, [kind === 'working-angles' ? 8 : 12, drawing] as const];
    }),
  ),
  'working angles': [12, (random) => workingAngles(drawAngles(random))],
  'what if': [
    16,
    (random) => {
      const splineTeeth = some(random, 0.4, () => 24);
      const geometry = random.chance(0.5)
        ? {}
        : { mountSpanMm: random.between(700, 1100), pieceLengthsMm: [1200, 900] };
      return angleWhatIf(drawAngles(random), geometry, { splineTeeth });
    },
  ],
  sensitivity: [
    5,
    (random) =>
      angleSensitivity(drawAngles(random), random.chance(0.5) ? {} : { pinionLengthMm: random.between(200, 350) }),
  ],
  'secondary couple': [6, (random) => secondaryCouple(random.between(50, 900), random.between(0.5, 12), 300)],
  whirl: [
    10,
    (random) =>
      whirl(
        list(random.pick([1, 2]), () => drawPiece(random)),
        { complaintRpm: random.between(900, 4500), topRpm: random.chance(0.5) ? random.between(3000, 6500) : null },
      ),
  ],
  'rings at hand': [
    10,
    (random) =>
      selectRings(
        list(random.pick([1, 2]), () => drawRing(random)),
        drawStock(random),
      ),
  ],
  'runout around the clock': [8, (random) => fitRunout(evenReadings(drawReadings(random)))],
  'runout at several places': [
    8,
    (random) => {
      const places = ['tube-front', 'tube-middle', 'tube-rear', 'companion-flange-radial'] as const;
      const fits = fitsOf(
        places
          .filter(() => random.chance(0.85))
          .map((place) => ({ kind: 'runout', place, readingsMm: drawReadings(random) })),
      );
      if (!fits.ok) return fits;
      const turned = random.chance(0.5) ? { readingsMm: drawReadings(random), steps: random.pick([1, 2]) } : null;
      const planes = tubePlanes(fits.value, random.between(4, 14), random.between(900, 4000));
      return [indexing(fits.value, random.pick(['tube-front', 'tube-rear'] as const), 4, turned), planes];
    },
  ],
  'balance without phase': [16, (random) => balanceByAmplitudes(drawAmplitudes(random))],
  'balance with phase': [12, (random) => balanceByPhasors(drawPhasors(random))],
  'where weights can go': [
    8,
    (random) => {
      const target = { weight: random.between(5, 60), angleDeg: random.between(0, 360) };
      const sites = list(5, () => random.between(0, 360));
      return [
        splitBetweenClamps(target, random.between(10, 60)),
        splitBetweenHoles(target, sites[0]!, sites[1]!),
        placeAvailable(target, sites, [5, 10, 20]),
      ];
    },
  ],
  'inclinometer readings': [
    10,
    (random) => {
      const lowEnd = some(random, 0.5, () => random.pick(['front', 'rear'] as const));
      const positiveMeansLow = some(random, 0.5, () => random.pick(['front', 'rear'] as const));
      const held = some(random, 0.5, () => random.pick(['along', 'across'] as const));
      const shownDeg = random.chance(0.5) ? random.between(-8, 8) : random.between(80, 92);
      const reading = { shownDeg, ...(lowEnd && { lowEnd }), ...(positiveMeansLow && { positiveMeansLow }) };
      return slopeOfReading({ ...reading, ...(held && { held }) }, { shownDeg: random.between(-2, 2) });
    },
  ],
};

/** By kind: for each drawn case, all that the program says of it. */
export const benchFigures = (): Readonly<Record<string, readonly (readonly Leaf[])[]>> =>
  Object.fromEntries(
    Object.entries(DRAWINGS).map(([name, [count, drawing]]) => [
      name,
      list(count, (seed) => leaves(drawing(randomSource(seed, name)))),
    ]),
  );
