/** Lists of numbers typed as one word: dial readings around the clock, rings at hand, places of holes. */
import type { QuantityKind } from '../../core/quantity/quantity-kinds.ts';
import type { Counted } from '../../core/quantity/quantity-list.ts';
import { parseCountedList } from '../../core/quantity/quantity-list.ts';
import { valueOf } from '../arguments.ts';
import { UsageError } from '../io.ts';

/** '0/0.05/0.10 mm', '1.50x2/1.55 mm'. */
export const countedListOf = (
  option: string,
  text: string,
  kind: QuantityKind,
  unit: string | undefined,
): readonly Counted[] => valueOf(option, parseCountedList(text, kind, unit));

/** The same without counts. */
export const listOf = (option: string, text: string, kind: QuantityKind, unit: string | undefined): number[] =>
  countedListOf(option, text, kind, unit).map(({ value, count }) => {
    if (count !== undefined) throw new UsageError(`--${option} "${text}": a count has no place here.`);
    return value;
  });
