/** Lists of numbers typed as one word: dial readings around the clock, rings at hand, places of holes. */
import type { QuantityKind } from '../../core/quantity-kinds.ts';
import { parseQuantity } from '../../core/quantity.ts';
import { valueOf } from '../arguments.ts';
import { UsageError } from '../io.ts';

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
 */
export const countedListOf = (
  option: string,
  text: string,
  kind: QuantityKind,
  unit: string | undefined,
): Counted[] => {
  // '0.10 mm' and '1.55 x2' are one word each.
  const glued = text.replaceAll('−', '-').replaceAll(/(\d)\s+(?=[^\d\s.,+-])/gu, '$1');
  const words = glued.split(/[\s/;]+/u).filter((word) => word !== '');
  const items = words.map((word) => {
    const [, number, before = '', count, after = ''] = ITEM.exec(word) ?? [];
    if (number === undefined) {
      throw new UsageError(`--${option} "${text}": "${word}" is not a number. Part numbers by blanks or slashes.`);
    }
    return { number, own: before || after, count };
  });
  if (items.length === 0) throw new UsageError(`--${option} holds no number.`);
  const common = items.findLast(({ own }) => own !== '')?.own ?? '';
  return items.map(({ number, own, count }) => ({
    value: valueOf(option, parseQuantity(`${number}${own || common}`, kind, unit)),
    ...(count === undefined ? {} : { count: Number(count) }),
  }));
};

/** The same without counts. */
export const listOf = (option: string, text: string, kind: QuantityKind, unit: string | undefined): number[] =>
  countedListOf(option, text, kind, unit).map(({ value, count }) => {
    if (count !== undefined) throw new UsageError(`--${option} "${text}": a count has no place here.`);
    return value;
  });
