/** Whether an order was seen, in words. */
import { accelerationText, frequencyText } from '../../core/report/format.ts';
import type { OrderReport } from '../../core/report/report.ts';
import { texts } from '../texts.ts';

const words = texts.sheet;

export function visibilityText({ visibility, aliasHz, amplitudeMps2 }: OrderReport): string {
  if (visibility === 'seen') return words.seen;
  if (visibility === 'above-nyquist') {
    return aliasHz === undefined ? words.aboveHalf : words.aboveHalfImage(frequencyText(aliasHz));
  }
  return amplitudeMps2 === null ? words.notSeen : words.notSeenAtMost(accelerationText(amplitudeMps2));
}
