/** The critical speed of each shaft piece. Not a measurement of the fault: the tubes are kept with the vehicle. */
import type { ShaftPiece } from '../../../core/vehicle/vehicle.ts';
import { texts } from '../../texts.ts';
import { benchFacts as words } from '../../texts/bench-facts.ts';
import type { Entry, MeasureForm, MeasureRow, Surroundings } from '../measure-form.ts';
import { given } from '../measure-form.ts';
import { ofVehicle, speedRow } from './facts.ts';

const { fields, forms } = texts.bench;
const COUNTS: readonly string[] = ['one', 'two', 'three'];

export const whirlForm: MeasureForm = {
  id: 'whirl',
  title: forms.whirl,
  procedure: 'whirl',
  choices: [],
  rows: () => [],
  build: () => null,
  extras: (entry, around) => [...pieceRows(entry, around), { ...speedRow(around), fields: speedFields(around) }],
};

const pieceCount = (entry: Entry, vehiclePieces: number): number => {
  const chosen = COUNTS.indexOf(entry.choice('pieces'));
  return chosen < 0 ? Math.max(1, vehiclePieces) : chosen + 1;
};

function pieceRows(entry: Entry, { job, units }: Surroundings): MeasureRow[] {
  const known = job.vehicle.driveshaftPieces ?? [];
  return Array.from({ length: pieceCount(entry, known.length) }, (_, index): MeasureRow => {
    const id = `piece${index + 1}`;
    const hint = (mm: number | undefined) => given('hint', ofVehicle(mm, units));
    const material = known[index]?.material ?? 'steel';
    const options = (['steel', 'aluminium'] as const).map((one) => [one, words[one]] as const);
    return {
      heading: words.piece(index + 1),
      fields: [
        { id: `${id}.length`, label: words.lengthJoints, kind: 'length', of: 'piece', ...hint(known[index]?.lengthMm) },
        { id: `${id}.outer`, label: words.tubeOuter, kind: 'length', of: 'tube', ...hint(known[index]?.tubeOuterMm) },
        { id: `${id}.wall`, label: words.wall, kind: 'length', of: 'wall', ...hint(known[index]?.wallMm) },
      ],
      choices: [
        {
          id: `${id}.material`,
          label: words.material,
          options: options.toSorted(([one]) => (one === material ? -1 : 1)),
        },
        ...(index === 0 ? [countChoice(known.length)] : []),
      ],
    };
  });
}

/** Begins with as many pieces as the vehicle has. */
const countChoice = (known: number) => ({
  id: 'pieces',
  label: fields.pieces,
  options: COUNTS.map((id, index) => [id, [fields.one, fields.two, fields.three][index] ?? id] as const).toSorted(
    ([one], [other]) => Number(other === COUNTS[known - 1]) - Number(one === COUNTS[known - 1]),
  ),
});

const speedFields = (around: Surroundings): MeasureRow['fields'] => [
  ...speedRow(around).fields,
  { id: 'topSpeed', label: words.topSpeed, kind: 'road-speed', optional: true },
  { id: 'topRpm', label: words.topRpm, kind: 'turning-speed', optional: true },
];

/** The pieces as typed, else as the vehicle tells. */
export function piecesOf(entry: Entry, known: readonly ShaftPiece[]): ShaftPiece[] {
  return Array.from({ length: pieceCount(entry, known.length) }, (_, index): ShaftPiece => {
    const id = `piece${index + 1}`;
    return {
      ...known[index],
      ...given('lengthMm', entry.number(`${id}.length`)),
      ...given('tubeOuterMm', entry.number(`${id}.outer`)),
      ...given('wallMm', entry.number(`${id}.wall`)),
      material: entry.choice(`${id}.material`) === 'aluminium' ? 'aluminium' : 'steel',
    };
  });
}
