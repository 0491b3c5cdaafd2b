/** Lists of numbers typed as one text: dial readings around the clock, rings at hand, places of holes. */
import type { Result } from '../note.ts';
import { failure, success } from '../note.ts';
import type { QuantityKind } from './quantity-kinds.ts';
import { parseQuantity } from './quantity.ts';

export interface Counted {
  readonly value: number;
  /** How many there are, where told ('1.55x2'). */
  readonly count?: number;
}

/** Number, unit, ×count, unit: 1.55 · 1.55mm · 1.55x2 · 1.55mmx2 · 1.55x2mm. */
const ITEM = /^([+-]?[\d.,]+)([^\d.,x×]*)(?:[x×](\d+))?([^\d.,x×]*)$/u;

/**
 * '0/0.05/0.10 mm', '1.50x2/1.55 mm': numbers parted by blanks, slashes or semicolons (a comma is a decimal sign); a
 * unit at the end holds for all that have none.
 * @param unit of a list without any; undefined where one is required
 * @returns a problem that quotes the word which is no number
 */
export const parseCountedList = (
  text: string,
  kind: QuantityKind,
  unit: string | undefined,
): Result<readonly Counted[]> => {
  // '0.10 mm' and '1.55 x2' are one word each; a comma before a blank parts, as no decimal sign stands there.
  const glued = text
    .replaceAll('−', '-')
    .replaceAll(/,\s+/gu, ' ')
    .replaceAll(/(\d)\s+(?=[^\d\s.,+\-/;])/gu, '$1');
  const words = glued.split(/[\s/;]+/u).filter((word) => word !== '');
  const items: { number: string; own: string; count: string | undefined }[] = [];
  for (const word of words) {
    const [, number, before = '', count, after = ''] = ITEM.exec(word) ?? [];
    if (number === undefined) {
      const remedy = 'Part numbers by blanks or slashes.';
      return failure({ code: 'not-a-number', message: `"${word}" is not a number.`, remedy });
    }
    items.push({ number, own: before || after, count });
  }
  if (items.length === 0) {
    return failure({
      code: 'empty-list',
      message: 'There is no number in it.',
      remedy: `Write it like ${kind.example}.`,
    });
  }
  const common = items.findLast(({ own }) => own !== '')?.own ?? '';
  const values: Counted[] = [];
  for (const { number, own, count } of items) {
    const parsed = parseQuantity(`${number}${own || common}`, kind, unit);
    if (!parsed.ok) return parsed;
    values.push({ value: parsed.value, ...(count === undefined ? {} : { count: Number(count) }) });
  }
  return success(values);
};
