/**
 * What is expected of random vehicles: every line with its uncertainty, what is missing, what coincides. Single formulas
 * have sources in tests/core/vehicle; this pins how they come together.
 */
import { collisions } from '../../src/core/vehicle/collisions.ts';
import { expectedLines } from '../../src/core/vehicle/expected-lines.ts';
import { missingData } from '../../src/core/vehicle/missing-data.ts';
import { rollingCircumference } from '../../src/core/vehicle/rolling.ts';
import { vehicleNotes } from '../../src/core/vehicle/vehicle-notes.ts';
import type { RunCondition, TireSpec, Vehicle } from '../../src/core/vehicle/vehicle.ts';
import { randomSource, type RandomSource } from '../../src/core/simulate/random.ts';
import { leaves, type Leaf } from './leaves.ts';

const CASES = 40;
const SIZES = [
  'P215/60R16',
  '265/70R17',
  'LT245/75R16',
  '31x10.50R15LT',
  '195R14C',
  '205/75R14C',
  'T125/70D16',
  '185R14',
  '225/50ZR17',
  'P235/75-15',
  '235/85R16E',
  '33x12.50R15',
] as const;

const drawTire = (random: RandomSource): TireSpec =>
  random.pick<() => TireSpec>([
    () => ({ kind: 'size', size: random.pick(SIZES) }),
    () => ({ kind: 'size', size: random.pick(SIZES) }),
    () => ({ kind: 'rolling-circumference', circumferenceM: random.between(1.7, 2.7) }),
    () => ({ kind: 'revs-per-mile', revsPerMile: random.between(600, 900) }),
    () => ({ kind: 'revs-per-km', revsPerKm: random.between(380, 560) }),
  ])();

const drawVehicle = (random: RandomSource): Vehicle => ({
  layout: random.pick(['rear-drive', 'front-drive', 'four-wheel-drive', 'electric'] as const),
  ...(random.chance(0.9) && { tire: drawTire(random) }),
  ...(random.chance(0.85) && { axleRatio: random.between(2.7, 4.4) }),
  ...(random.chance(0.4) && { frontAxleRatio: random.between(2.7, 4.4) }),
  ...(random.chance(0.8) && { finalDrive: random.between(3.2, 9) }),
  ...(random.chance(0.7) && { gearRatios: [3.6, 2.1, 1.4, 1, 0.74] }),
  ...(random.chance(0.3) && { transferRatio: random.pick([1, 2.72]) }),
  ...(random.chance(0.85) && { cylinders: random.pick([3, 4, 5, 6, 8, 10]) }),
  ...(random.chance(0.6) && { converter: random.chance(0.6) }),
  ...(random.chance(0.4) && { accessories: [{ name: 'alternator', ratio: random.between(2, 3.2) }] }),
  ...(random.chance(0.4) && { pinionTeeth: random.pick([9, 11, 13]), ringTeeth: random.pick([37, 41, 43]) }),
  ...(random.chance(0.4) && { polePairs: random.pick([3, 4]) }),
  ...(random.chance(0.3) && { tripodJoints: random.chance(0.5) }),
});

const drawCondition = (random: RandomSource): RunCondition => ({
  ...(random.chance(0.85) && { speedMps: random.between(3, 36) }),
  ...(random.chance(0.9) && { speedSource: random.pick(['dial', 'gps', 'obd', 'logged'] as const) }),
  ...(random.chance(0.6) && { gearRatio: random.pick([3.6, 2.1, 1.4, 1, 0.74]) }),
  ...(random.chance(0.3) && { engineRpm: random.between(700, 4000) }),
  load: random.pick(['cruise', 'pull', 'coast', 'neutral', 'brake', 'standing'] as const),
});

const figuresOf = (random: RandomSource): unknown => {
  const [vehicle, condition] = [drawVehicle(random), drawCondition(random)];
  const lines = expectedLines(vehicle, condition, {
    engineLogged: random.chance(0.3),
    ...(random.chance(0.7) && { samplingRateHz: random.pick([50, 100, 400, 1000]) }),
  });
  const missing = missingData(vehicle, condition).map(({ text }) => text);
  const notes = vehicleNotes(vehicle).map(({ text }) => text);
  if (!lines.ok) return [lines, missing, notes];
  const { lines: all, ...speeds } = lines.value;
  return [
    speeds,
    all.map(({ label, role, frequencyHz, frequencySdHz, visibility }) => [
      label,
      role,
      frequencyHz,
      frequencySdHz,
      visibility,
    ]),
    collisions(all, random.between(20, 90)).slice(0, 3),
    missing,
    notes,
  ];
};

/** Random vehicles, then every form of tire size. */
export const vehicleFigures = (): Readonly<Record<string, readonly (readonly Leaf[])[]>> => ({
  'expected lines': Array.from({ length: CASES }, (_, seed) => leaves(figuresOf(randomSource(seed, 'vehicles')))),
  'tire sizes': SIZES.map((size) => leaves(rollingCircumference({ kind: 'size', size }))),
});
