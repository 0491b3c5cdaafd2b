/** The sideways direction of a part: as an angle, or as the offsets of its two ends from a straight line. */
import { planOfOffsets } from '../../../core/driveline/angles/inclinometer.ts';
import { texts } from '../../texts.ts';
import type { Entry, MeasureChoice, MeasureField } from '../measure-form.ts';

const { fields } = texts.bench;

export const sidewaysChoice: MeasureChoice = {
  id: 'sideways',
  label: fields.sideways,
  options: [
    ['angle', fields.sidewaysAngle],
    ['offsets', fields.sidewaysOffsets],
  ],
};

export function sidewaysFields(id: string, entry: Entry): readonly MeasureField[] {
  if (entry.choice('sideways') !== 'offsets') {
    return [{ id: `${id}.plan`, label: fields.plan, kind: 'angle', optional: true }];
  }
  return [
    { id: `${id}.offsetFront`, label: fields.offsetFront, kind: 'length', optional: true, hint: fields.offsetHint },
    { id: `${id}.offsetRear`, label: fields.offsetRear, kind: 'length', optional: true },
    { id: `${id}.apart`, label: fields.offsetsApart, kind: 'length', optional: true },
  ];
}

/**
 * Plan angle of a part, degrees, positive where its rear end lies to the right; undefined where nothing was entered.
 * @returns null where offsets are incomplete or do not fit the length
 */
export function planOf(id: string, slopeDeg: number, entry: Entry): number | undefined | null {
  if (entry.choice('sideways') !== 'offsets') return entry.number(`${id}.plan`);
  const [front, rear, apart] = ['offsetFront', 'offsetRear', 'apart'].map((field) => entry.number(`${id}.${field}`));
  if (front === undefined && rear === undefined && apart === undefined) return undefined;
  if (front === undefined || rear === undefined || apart === undefined) return null;
  const plan = planOfOffsets(front, rear, apart, slopeDeg);
  return plan.ok ? plan.value : null;
}
