/** Which joint: asked by several forms. */
import { texts } from '../../texts.ts';
import type { MeasureChoice } from '../measure-form.ts';

const { fields } = texts.bench;

export const jointChoice: MeasureChoice = {
  id: 'joint',
  label: fields.joint,
  options: [
    ['front', fields.front],
    ['rear', fields.rear],
    ['center', fields.center],
  ],
};
