/** Forms about balancing by trial weights, without and with phase. */
import type { AmplitudeReading, Measurement, PhasorReading, WeightUnit } from '../../../core/driveline/measurement.ts';
import { texts } from '../../texts.ts';
import { benchFacts as words } from '../../texts/bench-facts.ts';
import type { Entry, MeasureChoice, MeasureForm, MeasureRow, Surroundings } from '../measure-form.ts';
import { allOf, given } from '../measure-form.ts';
import { bareWeightUnit } from '../parse-field.ts';
import { massRow, speedRow } from './facts.ts';

const { fields, forms } = texts.bench;
type BalancedPart = Extract<Measurement, { kind: 'balance-amplitudes' }>['part'];

const partChoice: MeasureChoice = {
  id: 'part',
  label: fields.part,
  options: [
    ['driveshaft', fields.driveshaftPart],
    ['tire', fields.tirePart],
  ],
};
const unitChoice: MeasureChoice = {
  id: 'unit',
  label: fields.unit,
  options: [
    ['g', bareWeightUnit('g', 'metric')],
    ['g·mm', bareWeightUnit('g·mm', 'metric')],
  ],
  usLabels: { g: bareWeightUnit('g', 'us'), 'g·mm': bareWeightUnit('g·mm', 'us') },
};

/** Three positions are the least; six show a reading that is wrong. */
const POSITIONS = [1, 2, 3, 4, 5, 6] as const;
const LEAST_POSITIONS = 3;

export const amplitudesForm: MeasureForm = {
  id: 'balance-amplitudes',
  title: forms.amplitudes,
  procedure: 'balance-without-phase',
  choices: [partChoice, unitChoice],
  rows: () => [
    {
      heading: '',
      fields: [
        { id: 'base', label: fields.asFound, kind: 'level', hint: fields.anyUnit },
        { id: 'weight', label: fields.trialWeight, kind: 'weight' },
      ],
    },
    ...POSITIONS.map((position): MeasureRow => ({
      heading: fields.position(position),
      fields: [
        { id: `angle${position}`, label: fields.angle, kind: 'angle', optional: position > LEAST_POSITIONS },
        { id: `level${position}`, label: fields.amplitude, kind: 'level', optional: position > LEAST_POSITIONS },
      ],
    })),
  ],
  build: (entry) => {
    const trialWeight = entry.number('weight');
    const baseline = amplitudeOf(entry, 'base');
    const positions = POSITIONS.flatMap((position) => {
      const angleDeg = entry.number(`angle${position}`);
      const level = amplitudeOf(entry, `level${position}`);
      return angleDeg === undefined || level === null ? [] : [{ angleDeg, ...level }];
    });
    if (baseline === null || trialWeight === undefined || positions.length < LEAST_POSITIONS) return null;
    return {
      kind: 'balance-amplitudes',
      part: entry.choice('part') as BalancedPart,
      weightUnit: entry.choice('unit') as WeightUnit,
      baseline,
      trialWeight,
      positions,
    };
  },
  extras: balanceExtras,
};

function amplitudeOf(entry: Entry, id: string): AmplitudeReading | null {
  const amplitude = entry.number(id);
  return amplitude === undefined ? null : { amplitude, ...given('amplitudeSd', entry.uncertainty(id)) };
}

/** Where weights can go, and what the standard allows. */
function balanceExtras(entry: Entry, around: Surroundings): readonly MeasureRow[] {
  const isShaft = entry.choice('part') === 'driveshaft';
  return [
    {
      heading: words.placing,
      fields: [
        { id: 'clamp', label: words.clamp, kind: 'weight', optional: true },
        { id: 'holes', label: words.holes, kind: 'angles', optional: true, hint: words.holesHint },
        { id: 'sites', label: words.sites, kind: 'angles', optional: true, hint: words.sitesHint },
        { id: 'weights', label: words.weights, kind: 'weights', optional: true, hint: words.weightsHint[around.units] },
      ],
    },
    ...(isShaft ? [speedRow(around), massRow(around, 'rear')] : []),
  ];
}

const planesOf = (entry: Entry): readonly number[] => (entry.choice('planes') === 'two' ? [1, 2] : [1]);

const reading = (heading: string, id: string): MeasureRow => ({
  heading,
  fields: [
    {
      id: `${id}.amplitude`,
      label: fields.amplitude,
      kind: 'level',
      ...(id === 'base1' && { hint: fields.anyUnit }),
    },
    { id: `${id}.phase`, label: fields.phase, kind: 'phase' },
  ],
});

function phasorOf(entry: Entry, id: string): PhasorReading | null {
  const amplitude = amplitudeOf(entry, `${id}.amplitude`);
  const phaseDeg = entry.number(`${id}.phase`);
  if (amplitude === null || phaseDeg === undefined) return null;
  return { ...amplitude, phaseDeg, ...given('phaseSdDeg', entry.uncertainty(`${id}.phase`)) };
}

const complete = <T>(items: readonly (T | null)[]): T[] | null =>
  items.every((item) => item !== null) ? (items as T[]) : null;

export const phasorsForm: MeasureForm = {
  id: 'balance-phasors',
  title: forms.phasors,
  procedure: 'balance-with-phase',
  choices: [
    partChoice,
    unitChoice,
    {
      id: 'planes',
      label: fields.planes,
      options: [
        ['one', fields.one],
        ['two', fields.two],
      ],
    },
  ],
  rows: (entry) => {
    const planes = planesOf(entry);
    return [
      ...planes.map((sensor) => reading(`${fields.asFound}: ${fields.sensor(sensor)}`, `base${sensor}`)),
      ...planes.flatMap((plane) => [
        {
          heading: fields.trial(plane),
          fields: [
            { id: `weight${plane}`, label: fields.trialWeight, kind: 'weight' as const },
            { id: `angle${plane}`, label: fields.angle, kind: 'angle' as const },
          ],
        },
        ...planes.map((sensor) => reading(fields.withTrial(plane, sensor), `trial${plane}.${sensor}`)),
      ]),
    ];
  },
  build: (entry) => {
    const planes = planesOf(entry);
    const baseline = complete(planes.map((sensor) => phasorOf(entry, `base${sensor}`)));
    const trials = complete(
      planes.map((plane) => {
        const [weight, angleDeg] = allOf(entry, [`weight${plane}`, `angle${plane}`]) ?? [];
        const readings = complete(planes.map((sensor) => phasorOf(entry, `trial${plane}.${sensor}`)));
        if (weight === undefined || angleDeg === undefined || readings === null) return null;
        return { plane: plane - 1, weight, angleDeg, readings };
      }),
    );
    if (baseline === null || trials === null) return null;
    const part = entry.choice('part') as BalancedPart;
    return { kind: 'balance-phasors', part, weightUnit: entry.choice('unit') as WeightUnit, baseline, trials };
  },
  extras: balanceExtras,
};
