/** Forms about angles: working angles, half-angles of a double-Cardan joint, ride height. */
import type { JointPlace, ShaftReading } from '../../../core/driveline/measurement.ts';
import { texts } from '../../texts.ts';
import type { Entry, MeasureForm, MeasureRow } from '../measure-form.ts';
import { allOf, given } from '../measure-form.ts';
import { jointChoice } from './joint-choice.ts';

const { fields, forms } = texts.bench;

interface ShaftRow {
  readonly id: string;
  readonly part: ShaftReading['part'];
  readonly heading: string;
}

function shaftRows(entry: Entry): readonly ShaftRow[] {
  const shaft = (id: string, heading: string): ShaftRow => ({ id, part: 'shaft', heading });
  const pieces =
    entry.choice('pieces') === 'two'
      ? [shaft('shaft1', fields.frontPiece), shaft('shaft2', fields.rearPiece)]
      : [shaft('shaft1', fields.shaft)];
  return [
    { id: 'transmission', part: 'transmission', heading: fields.transmission },
    ...pieces,
    { id: 'pinion', part: 'pinion', heading: fields.pinion },
  ];
}

function angleRow({ id, part, heading }: ShaftRow): MeasureRow {
  const twist = { id: `${id}.twist`, label: fields.phasing, kind: 'angle', optional: true } as const;
  return {
    heading,
    choices: [
      {
        id: `${id}.low`,
        label: fields.lowEnd,
        options: [
          ['rear', fields.rearLow],
          ['front', fields.frontLow],
        ],
      },
    ],
    fields: [
      { id: `${id}.slope`, label: fields.slope, kind: 'angle' },
      { id: `${id}.plan`, label: fields.plan, kind: 'angle', optional: true },
      ...(part === 'shaft' ? [twist] : []),
    ],
  };
}

function readingOf(entry: Entry, { id, part }: ShaftRow): ShaftReading | null {
  const slope = entry.number(`${id}.slope`);
  if (slope === undefined) return null;
  const slopeDeg = entry.choice(`${id}.low`) === 'front' ? -slope : slope;
  return { part, slopeDeg, ...given('planDeg', entry.number(`${id}.plan`)) };
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
      ],
    },
  ],
  rows: (entry) => shaftRows(entry).map(angleRow),
  build: (entry) => {
    const rows = shaftRows(entry);
    const shafts = rows.map((row) => readingOf(entry, row));
    if (!shafts.every((reading) => reading !== null)) return null;
    const twists = rows.filter(({ part }) => part === 'shaft').map(({ id }) => entry.number(`${id}.twist`));
    const isTwisted = twists.some((twist) => twist !== undefined);
    const isFront = entry.choice('driveshaft') === 'front-driveshaft';
    return {
      kind: 'working-angles',
      shafts,
      ...(isTwisted && { phasingDeg: twists.map((twist) => twist ?? 0) }),
      ...(isFront && { driveshaft: 'front-driveshaft' as const }),
    };
  },
};

export const doubleCardanForm: MeasureForm = {
  id: 'double-cardan',
  title: forms.doubleCardan,
  procedure: 'double-cardan',
  choices: [jointChoice],
  rows: () => [
    {
      heading: '',
      fields: [1, 2].map((n) => ({ id: `half${n}`, label: fields.halfAngle(n), kind: 'angle' as const })),
    },
  ],
  build: (entry) => {
    const [one, two] = allOf(entry, ['half1', 'half2']) ?? [];
    if (one === undefined || two === undefined) return null;
    return { kind: 'double-cardan', joint: entry.choice('joint') as JointPlace, halfAnglesDeg: [one, two] };
  },
};

export const rideHeightForm: MeasureForm = {
  id: 'ride-height',
  title: forms.rideHeight,
  procedure: 'ride-height',
  choices: [
    {
      id: 'axle',
      label: fields.axle,
      options: [
        ['rear', fields.rear],
        ['front', fields.front],
      ],
    },
  ],
  rows: () => [
    {
      heading: '',
      fields: [
        { id: 'measured', label: fields.measured, kind: 'length' },
        { id: 'specified', label: fields.specified, kind: 'length' },
      ],
    },
  ],
  build: (entry) => {
    const [measuredMm, specifiedMm] = allOf(entry, ['measured', 'specified']) ?? [];
    if (measuredMm === undefined || specifiedMm === undefined) return null;
    return { kind: 'ride-height', axle: entry.choice('axle') as 'front' | 'rear', measuredMm, specifiedMm };
  },
};
