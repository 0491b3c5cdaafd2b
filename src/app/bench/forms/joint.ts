/** Forms about a joint: end play, retaining rings, radial play. */
import type { JointPlace, RingAxis } from '../../../core/driveline/measurement.ts';
import type { BareAxis } from '../../../core/driveline/rings/ring-selection.ts';
import { texts } from '../../texts.ts';
import { benchFacts as words } from '../../texts/bench-facts.ts';
import type { Entry, MeasureForm } from '../measure-form.ts';
import { allOf, given } from '../measure-form.ts';
import { massRow, speedRow } from './facts.ts';
import { jointChoice } from './joint-choice.ts';

const { fields, forms } = texts.bench;
const AXES = [1, 2] as const;

export const endPlayForm: MeasureForm = {
  id: 'end-play',
  title: forms.endPlay,
  procedure: 'end-play',
  choices: [jointChoice],
  rows: () => [
    {
      heading: '',
      fields: AXES.map((axis) => ({
        id: `axis${axis}`,
        label: fields.axis(axis),
        kind: 'length' as const,
        of: 'play' as const,
      })),
    },
  ],
  build: (entry) => {
    const [one, two] = allOf(entry, ['axis1', 'axis2']) ?? [];
    if (one === undefined || two === undefined) return null;
    return { kind: 'end-play', joint: entry.choice('joint') as JointPlace, axisPlayMm: [one, two] };
  },
  extras: (entry, around) => [speedRow(around), massRow(around, entry.choice('joint') as JointPlace, true)],
};

export const ringsForm: MeasureForm = {
  id: 'rings',
  title: forms.rings,
  procedure: 'rings',
  choices: [jointChoice],
  rows: () =>
    AXES.map((axis) => ({
      heading: fields.axis(axis),
      fields: [
        { id: `axis${axis}.span`, label: fields.grooveSpan, kind: 'length' as const, of: 'groove' as const },
        { id: `axis${axis}.cross`, label: fields.crossAndCups, kind: 'length' as const, of: 'cross' as const },
        { id: `axis${axis}.ring1`, label: fields.ring(1), kind: 'length' as const, of: 'ring' as const },
        { id: `axis${axis}.ring2`, label: fields.ring(2), kind: 'length' as const, of: 'ring' as const },
        {
          id: `axis${axis}.offset`,
          label: words.grooveOffset,
          kind: 'length' as const,
          of: 'groove-offset' as const,
          optional: true,
        },
      ],
    })),
  build: (entry) => {
    const axes = AXES.map((axis) => ringAxis(entry, axis)).filter((axis) => axis !== null);
    return axes.length === 0 ? null : { kind: 'rings', joint: entry.choice('joint') as JointPlace, axes };
  },
  extras: (entry, around) => [
    {
      heading: words.ringsAtHand,
      fields: [
        {
          id: 'stock',
          label: words.available,
          kind: 'lengths',
          of: 'ring',
          optional: true,
          hint: words.availableHint[around.units],
        },
      ],
    },
    speedRow(around),
    massRow(around, entry.choice('joint') as JointPlace, true),
  ],
};

/** What is known of an axis without its rings, for choosing them. */
export function bareAxis(entry: Entry, axis: number): BareAxis | null {
  const [grooveSpanMm, crossAndCupsMm] = allOf(entry, [`axis${axis}.span`, `axis${axis}.cross`]) ?? [];
  if (grooveSpanMm === undefined || crossAndCupsMm === undefined) return null;
  return { grooveSpanMm, crossAndCupsMm, ...given('grooveOffsetMm', entry.number(`axis${axis}.offset`)) };
}

/** One axis alone is worth having: the other is left out where a reading is missing. */
function ringAxis(entry: Entry, axis: number): RingAxis | null {
  const bare = bareAxis(entry, axis);
  const [ring1Mm, ring2Mm] = allOf(entry, [`axis${axis}.ring1`, `axis${axis}.ring2`]) ?? [];
  return bare === null || ring1Mm === undefined || ring2Mm === undefined ? null : { ...bare, ring1Mm, ring2Mm };
}

export const radialPlayForm: MeasureForm = {
  id: 'radial-play',
  title: forms.radialPlay,
  procedure: 'radial-play',
  choices: [
    {
      id: 'place',
      label: fields.place,
      options: [
        ['slip-yoke', fields.slipYoke],
        ['center-bearing', fields.centreBearing],
      ],
    },
  ],
  rows: () => [{ heading: '', fields: [{ id: 'play', label: fields.play, kind: 'length', of: 'play' }] }],
  build: (entry) => {
    const playMm = entry.number('play');
    if (playMm === undefined) return null;
    return { kind: 'radial-play', place: entry.choice('place') as 'slip-yoke' | 'center-bearing', playMm };
  },
};
