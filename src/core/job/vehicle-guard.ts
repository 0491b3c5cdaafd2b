/** The vehicle of a job file. */
import { success } from '../note.ts';
import { parseLengthM } from '../quantity/quantity.ts';
import { rollingCircumference } from '../vehicle/rolling.ts';
import { parseTireSize } from '../vehicle/tire-size.ts';
import type { Accessory, ShaftPiece, TireSpec, Vehicle } from '../vehicle/vehicle.ts';
import { listOf, nonEmptyText, oneOf, text, trueOrFalse, wrongKey } from './guards.ts';
import type { Guard } from './guards.ts';
import { circumferenceM, count, lengthMm, massKg, ratio } from './number-guards.ts';
import { byKind, shape } from './shape.ts';

type OfKind<K extends TireSpec['kind']> = Extract<TireSpec, { readonly kind: K }>;

const tireByKind = byKind<TireSpec>({
  size: shape<OfKind<'size'>>({ kind: oneOf('size'), size: nonEmptyText }, { required: ['kind', 'size'] }),
  'rolling-circumference': shape<OfKind<'rolling-circumference'>>(
    { kind: oneOf('rolling-circumference'), circumferenceM },
    { required: ['kind', 'circumferenceM'], withUnit: { circumference: 'circumferenceM' } },
  ),
  'revs-per-mile': shape<OfKind<'revs-per-mile'>>(
    { kind: oneOf('revs-per-mile'), revsPerMile: ratio(200, 3000) },
    { required: ['kind', 'revsPerMile'] },
  ),
  'revs-per-km': shape<OfKind<'revs-per-km'>>(
    { kind: oneOf('revs-per-km'), revsPerKm: ratio(100, 2000) },
    { required: ['kind', 'revsPerKm'] },
  ),
});

/** Also the short forms "265/70R17" and "2.36 m". */
const tire: Guard<TireSpec> = (value, key) => {
  if (typeof value === 'string') {
    const size = parseTireSize(value);
    if (size.ok) return success({ kind: 'size', size: value });
    const length = parseLengthM(value, undefined, { range: [0.7, 5] });
    if (length.ok) return success({ kind: 'rolling-circumference', circumferenceM: length.value });
    return wrongKey(key, size.problem.message.replace(/\.$/u, ''), size.problem.remedy);
  }
  const spec = tireByKind(value, key);
  if (!spec.ok) return spec;
  const rolling = rollingCircumference(spec.value);
  const inside = spec.value.kind === 'size' ? `${key}.size` : key;
  return rolling.ok ? spec : wrongKey(inside, rolling.problem.message.replace(/\.$/u, ''), rolling.problem.remedy);
};

const accessory = shape<Accessory>({ name: text, ratio: ratio(0.1, 20) }, { required: ['name', 'ratio'] });

const joint = oneOf('cross', 'double-cardan', 'constant-velocity', 'flexible-disc');

const shaftPiece = shape<ShaftPiece>(
  {
    lengthMm: lengthMm(50, 10_000),
    tubeOuterMm: lengthMm(5, 500),
    wallMm: lengthMm(0.2, 100),
    massKg,
    material: oneOf('steel', 'aluminium'),
    frontJoint: joint,
    rearJoint: joint,
  },
  {
    required: [],
    withUnit: { length: 'lengthMm', tubeOuter: 'tubeOuterMm', wall: 'wallMm', mass: 'massKg' },
  },
);

export const vehicleGuard = shape<Vehicle>(
  {
    description: text,
    tire,
    layout: oneOf('rear-drive', 'front-drive', 'four-wheel-drive', 'electric'),
    axleRatio: ratio(0.5, 30),
    frontAxleRatio: ratio(0.5, 30),
    finalDrive: ratio(0.5, 60),
    gearRatios: listOf(ratio(0.2, 40)),
    transferRatio: ratio(0.5, 10),
    cylinders: count(1, 24),
    converter: trueOrFalse,
    accessories: listOf(accessory),
    pinionTeeth: count(1, 200),
    ringTeeth: count(1, 400),
    polePairs: count(1, 100),
    driveshaftPieces: listOf(shaftPiece),
    tripodJoints: trueOrFalse,
  },
  { required: ['layout'] },
);
