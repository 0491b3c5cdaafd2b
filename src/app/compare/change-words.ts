/** One order's change in words. */
import { feltText, speedText, type UnitSystem } from '../../core/report/format.ts';
import { sizeText } from '../../core/diagnosis/compare/change-words.ts';
import type { ComparedLevel, ComparedPair, ComparedRun, OrderChange } from '../../core/diagnosis/compare/comparison.ts';
import { texts } from '../texts.ts';

const words = texts.compare;

/** Felt level, or what could hide where it was not seen. */
export const levelText = ({ feltLevel, seen }: ComparedLevel): string =>
  seen ? feltText(feltLevel) : words.atMost(feltText(feltLevel));

/** 'Cruise (62 mph) against Proof (61 mph)'. */
export function pairTitle({ before, after }: ComparedPair, units: UnitSystem): string {
  const nameOf = ({ name, speedMps }: ComparedRun): string =>
    speedMps === null ? name : `${name} (${speedText(speedMps, units)})`;
  return words.pair(nameOf(before), nameOf(after));
}

/** The levels can look changed by so much only because the runs are not alike: '1.3 times (2.0 dB)'. */
export const unlikeText = ({ unlikeSdDb }: ComparedPair): string =>
  words.unlike((10 ** (unlikeSdDb / 20)).toFixed(1), sizeText(unlikeSdDb));

/** Orders worth showing: seen in one of the runs, most felt first. */
export function shownChanges(orders: readonly OrderChange[]): OrderChange[] {
  const felt = ({ before, after }: OrderChange): number =>
    Math.max(before.seen ? before.feltLevel : 0, after.seen ? after.feltLevel : 0);
  return orders.filter(({ before, after }) => before.seen || after.seen).toSorted((a, b) => felt(b) - felt(a));
}
