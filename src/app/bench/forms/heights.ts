/** Forms about what changes angles: half-angles of a double-Cardan joint, ride height. */
import type { JointPlace } from '../../../core/driveline/measurement.ts';
import { texts } from '../../texts.ts';
import type { MeasureForm } from '../measure-form.ts';
import { allOf } from '../measure-form.ts';
import { jointChoice } from './joint-choice.ts';

const { fields, forms } = texts.bench;

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
