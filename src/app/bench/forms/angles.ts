/** The form of working angles: readings front to rear, and what stands around them. */
import type { InclinometerReading } from '../../../core/driveline/angles/inclinometer.ts';
import { isUpright, slopeOfReading } from '../../../core/driveline/angles/inclinometer.ts';
import type { ShaftReading } from '../../../core/driveline/measurement.ts';
import type { JointKind } from '../../../core/vehicle/vehicle.ts';
import { texts } from '../../texts.ts';
import { benchFacts as words } from '../../texts/bench-facts.ts';
import type { Entry, MeasureChoice, MeasureField, MeasureForm, MeasureRow, Surroundings } from '../measure-form.ts';
import { given } from '../measure-form.ts';
import { ofVehicle, speedRow } from './facts.ts';
import { planOf, sidewaysChoice, sidewaysFields } from './sideways.ts';

const { fields, forms } = texts.bench;

interface ShaftRow {
  readonly id: string;
  readonly part: ShaftReading['part'];
  readonly heading: string;
}

const PIECES: Readonly<Record<string, readonly string[]>> = {
  one: [fields.shaft],
  two: [fields.frontPiece, fields.rearPiece],
  three: [fields.frontPiece, fields.middlePiece, fields.rearPiece],
};

/** Front to rear: on a front axle's shaft the pinion comes first. */
function shaftRows(entry: Entry): readonly ShaftRow[] {
  const pieces = (PIECES[entry.choice('pieces')] ?? [fields.shaft]).map((heading, index): ShaftRow => {
    return { id: `shaft${index + 1}`, part: 'shaft', heading };
  });
  const pinion: ShaftRow = { id: 'pinion', part: 'pinion', heading: fields.pinion };
  if (entry.choice('driveshaft') === 'front-driveshaft') {
    return [pinion, ...pieces, { id: 'transmission', part: 'transfer-case', heading: fields.transferCase }];
  }
  return [{ id: 'transmission', part: 'transmission', heading: fields.transmission }, ...pieces, pinion];
}

const lowEndChoice = (id: string): MeasureChoice => ({
  id: `${id}.low`,
  label: fields.lowEnd,
  options: [
    ['rear', fields.rearLow],
    ['front', fields.frontLow],
  ],
});

const jointKindChoice = (id: string): MeasureChoice => ({
  id: `${id}.joint`,
  label: fields.jointBehind,
  options: Object.entries(texts.bench.jointKinds),
});

function angleRow({ id, part, heading }: ShaftRow, index: number, count: number, entry: Entry): MeasureRow {
  const [isFirst, isLast] = [index === 0, index === count - 1];
  const isSplit = !isLast && entry.choice(`${id}.joint`) === 'double-cardan';
  return {
    heading,
    choices: [lowEndChoice(id), ...(isLast ? [] : [jointKindChoice(id)])],
    fields: [
      { id: `${id}.slope`, label: fields.slope, kind: 'angle', ...(isFirst && { hint: fields.uprightFace }) },
      ...sidewaysFields(id, entry),
      ...(part === 'shaft'
        ? [{ id: `${id}.twist`, label: fields.phasing, kind: 'angle' as const, optional: true }]
        : []),
      ...(isSplit ? [{ id: `${id}.split`, label: fields.splitError, kind: 'angle' as const, optional: true }] : []),
    ],
  };
}

/** A sign that was typed counts beside the choice: −2 'rear lower' is 2 'front lower'. On an upright face it says nothing. */
const inclinometerReading = (shownDeg: number, low: string): InclinometerReading =>
  isUpright(shownDeg)
    ? { shownDeg, held: 'across', lowEnd: low === 'front' ? 'front' : 'rear' }
    : { shownDeg: low === 'front' ? -shownDeg : shownDeg };

function readingOf(entry: Entry, { id, part }: ShaftRow): ShaftReading | null {
  const shown = entry.number(`${id}.slope`);
  if (shown === undefined) return null;
  const slope = slopeOfReading(
    inclinometerReading(shown, entry.choice(`${id}.low`)),
    inclinometerReading(entry.number('reference.slope') ?? 0, entry.choice('reference.low')),
  );
  if (!slope.ok) return null;
  const planDeg = planOf(id, slope.value, entry);
  return planDeg === null ? null : { part, slopeDeg: slope.value, ...given('planDeg', planDeg) };
}

/** A list with its gaps filled; undefined where there is nothing but gaps. */
function filledUp(values: readonly (number | undefined)[]): number[] | undefined {
  return values.some((value) => value !== undefined) ? values.map((value) => value ?? 0) : undefined;
}

export const anglesForm: MeasureForm = {
  id: 'working-angles',
  title: forms.angles,
  procedure: 'working-angles',
  choices: [
    {
      id: 'driveshaft',
      label: fields.driveshaft,
      options: [
        ['rear-driveshaft', fields.rearShaft],
        ['front-driveshaft', fields.frontShaft],
      ],
    },
    {
      id: 'pieces',
      label: fields.pieces,
      options: [
        ['one', fields.one],
        ['two', fields.two],
        ['three', fields.three],
      ],
    },
    {
      id: 'height',
      label: fields.suspension,
      options: [
        ['loaded', fields.atRideHeight],
        ['hung', fields.hanging],
      ],
    },
    sidewaysChoice,
  ],
  rows: (entry) => {
    const rows = shaftRows(entry);
    const reference = { id: 'reference.slope', label: fields.slope, kind: 'angle', optional: true } as const;
    return [
      ...rows.map((row, index) => angleRow(row, index, rows.length, entry)),
      { heading: fields.reference, fields: [reference], choices: [lowEndChoice('reference')] },
    ];
  },
  build: (entry) => {
    const rows = shaftRows(entry);
    const shafts = rows.map((row) => readingOf(entry, row));
    if (!shafts.every((reading) => reading !== null)) return null;
    const pieces = rows.slice(1, -1);
    const fronts = rows.slice(0, -1);
    const kinds = fronts.map(({ id }) => entry.choice(`${id}.joint`) as JointKind);
    const isFront = entry.choice('driveshaft') === 'front-driveshaft';
    return {
      kind: 'working-angles',
      shafts,
      ...given('phasingDeg', filledUp(pieces.map(({ id }) => entry.number(`${id}.twist`)))),
      ...(kinds.some((kind) => kind !== 'cross') && { joints: kinds }),
      ...given('splitErrorDeg', filledUp(fronts.map(({ id }) => entry.number(`${id}.split`)))),
      ...(isFront && { driveshaft: 'front-driveshaft' as const }),
      ...(entry.choice('height') === 'hung' && { atRideHeight: false }),
    };
  },
  extras: (entry, around) => [
    speedRow(around, entry.choice('driveshaft') === 'front-driveshaft' ? 'front-driveshaft' : undefined),
    { heading: words.distances, fields: [...pieceLengths(entry, around), ...DISTANCES] },
    { heading: words.load, fields: LOAD },
  ],
};

const DISTANCES = [
  { id: 'mountSpan', label: words.mountSpan, kind: 'length', of: 'distance', optional: true },
  { id: 'mountToJoint', label: words.mountToJoint, kind: 'length', of: 'distance', optional: true },
  { id: 'pinionLength', label: words.pinionLength, kind: 'length', of: 'distance', optional: true },
] as const;
const LOAD = [
  { id: 'torque', label: words.torque, kind: 'torque', optional: true },
  { id: 'bearingSpan', label: words.bearingSpan, kind: 'length', of: 'distance', optional: true },
  { id: 'teeth', label: words.splineTeeth, kind: 'count', optional: true },
] as const;

const pieceLengths = (entry: Entry, { job, units }: Surroundings): MeasureField[] =>
  shaftRows(entry)
    .slice(1, -1)
    .map(({ id, heading }, index) => ({
      id: `${id}.length`,
      label: words.pieceLength(heading),
      kind: 'length',
      of: 'piece',
      optional: true,
      ...given('hint', ofVehicle(job.vehicle.driveshaftPieces?.[index]?.lengthMm, units)),
    }));
