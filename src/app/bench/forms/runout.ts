/** Forms about what runs out of true: runout by dial, shaft turned on its flange, wheel on the balancer. */
import type { RunoutPlace } from '../../../core/driveline/measurement.ts';
import { texts } from '../../texts.ts';
import { benchFacts as words } from '../../texts/bench-facts.ts';
import type { Entry, MeasureChoice, MeasureForm, MeasureRow, Surroundings } from '../measure-form.ts';
import { allOf, given } from '../measure-form.ts';
import { massRow, speedRow } from './facts.ts';

const { fields, forms, places } = texts.bench;

/** Places around the clock, evenly spread from the mark. */
function clockOf(entry: Entry): readonly { readonly id: string; readonly degrees: number }[] {
  const count = Number(entry.choice('stations'));
  return Array.from({ length: count }, (_, place) => {
    const degrees = (360 * place) / count;
    return { id: `at${degrees}`, degrees };
  });
}

/** The limits of a wheel differ by what it is made of; nothing else asks for that. */
const isWheel = (entry: Entry): boolean => entry.choice('place').startsWith('wheel');
const MATERIAL: MeasureChoice = {
  id: 'material',
  label: fields.material,
  options: [
    ['steel', fields.steel],
    ['alloy', fields.alloy],
  ],
};

export const runoutForm: MeasureForm = {
  id: 'runout',
  title: forms.runout,
  procedure: 'runout',
  choices: [
    { id: 'place', label: fields.place, options: Object.entries(places) },
    { id: 'stations', label: fields.stations, options: ['8', '4', '6', '12'].map((count) => [count, count] as const) },
  ],
  rows: (entry) => [
    {
      heading: '',
      fields: [{ id: 'tir', label: fields.tir, kind: 'length', of: 'runout' }],
      ...(isWheel(entry) && { choices: [MATERIAL] }),
    },
    {
      heading: fields.clockHeading,
      fields: clockOf(entry).map(({ id, degrees }) => ({
        id,
        label: fields.clock(degrees),
        kind: 'length' as const,
        of: 'dial' as const,
      })),
    },
  ],
  build: (entry) => {
    const readings = allOf(
      entry,
      clockOf(entry).map(({ id }) => id),
    );
    const tirMm = entry.number('tir');
    if (tirMm === undefined && readings === null) return null;
    const place = entry.choice('place') as RunoutPlace;
    const isAlloy = isWheel(entry) && entry.choice('material') === 'alloy';
    return {
      kind: 'runout',
      place,
      ...given('tirMm', tirMm),
      ...given('readingsMm', readings ?? undefined),
      ...(isAlloy && { wheelMaterial: 'alloy' as const }),
    };
  },
  extras: (entry, around) =>
    /^(tube|companion)/u.test(entry.choice('place'))
      ? [indexingRow(around), speedRow(around), massRow(around, flangeEndOf(entry))]
      : [],
};

export const flangeEndOf = (entry: Entry): 'front' | 'rear' =>
  entry.choice('flangeEnd') === 'front' ? 'front' : 'rear';

const indexingRow = ({ units }: Surroundings): MeasureRow => ({
  heading: words.indexing,
  fields: [
    { id: 'bolts', label: words.bolts, kind: 'count', optional: true },
    { id: 'turned', label: words.turned, kind: 'lengths', optional: true, hint: words.turnedHint[units] },
    { id: 'turnedBy', label: words.turnedBy, kind: 'count', optional: true },
  ],
  choices: [
    {
      id: 'flangeEnd',
      label: words.flangeEnd,
      options: [
        ['rear', fields.rear],
        ['front', fields.front],
      ],
    },
  ],
});

const STEPS = [0, 1, 2, 3] as const;

export const reindexForm: MeasureForm = {
  id: 'flange-reindex',
  title: forms.reindex,
  procedure: 'flange-reindex',
  choices: [],
  rows: () => [
    { heading: '', fields: [{ id: 'bolts', label: fields.bolts, kind: 'count' }] },
    {
      heading: fields.level,
      fields: STEPS.map((steps) => ({
        id: `level${steps}`,
        label: fields.turnedBy(steps),
        kind: 'acceleration' as const,
        optional: steps > 1,
      })),
    },
  ],
  build: (entry) => {
    const boltCount = entry.number('bolts');
    const levels = STEPS.flatMap((steps) => {
      const amplitudeMps2 = entry.number(`level${steps}`);
      return amplitudeMps2 === undefined ? [] : [{ steps, amplitudeMps2 }];
    });
    const isEnough = boltCount !== undefined && levels.length >= 2 && levels[0]?.steps === 0;
    return isEnough ? { kind: 'flange-reindex', boltCount, levels } : null;
  },
};

export const wheelForm: MeasureForm = {
  id: 'wheel-unbalance',
  title: forms.wheel,
  procedure: 'wheel-balance',
  choices: [],
  rows: () => [
    {
      heading: '',
      fields: [
        { id: 'inner', label: fields.inner, kind: 'grams' },
        { id: 'outer', label: fields.outer, kind: 'grams' },
        { id: 'radius', label: fields.radius, kind: 'length' },
      ],
    },
  ],
  build: (entry) => {
    const [innerG, outerG, radiusMm] = allOf(entry, ['inner', 'outer', 'radius']) ?? [];
    if (innerG === undefined || outerG === undefined || radiusMm === undefined) return null;
    return { kind: 'wheel-unbalance', innerG, outerG, radiusMm };
  },
};
