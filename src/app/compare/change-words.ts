/** One order's change in words. */
import { feltText, speedText, type UnitSystem } from '../../core/report/format.ts';
import type { ComparedLevel, ComparedPair, ComparedRun, OrderChange } from '../../core/diagnosis/compare/comparison.ts';
import { texts } from '../texts.ts';

const words = texts.compare;

const signed = (db: number): string => {
  const size = Math.abs(db).toFixed(1);
  return size === '0.0' ? size : `${db < 0 ? '−' : '+'}${size}`;
};

/** Felt level, or what could hide where it was not seen. */
export const levelText = ({ feltLevel, seen }: ComparedLevel): string =>
  seen ? feltText(feltLevel) : words.atMost(feltText(feltLevel));

export const changeDbText = ({ changeDb, before, after }: OrderChange): string =>
  before.seen || after.seen ? words.decibel(signed(changeDb)) : '';

/** 'Cruise (62 mph) against Proof (61 mph)'. */
export function pairTitle({ before, after }: ComparedPair, units: UnitSystem): string {
  const nameOf = ({ name, speedMps }: ComparedRun): string =>
    speedMps === null ? name : `${name} (${speedText(speedMps, units)})`;
  return words.pair(nameOf(before), nameOf(after));
}

/** '−16.2 and −12.0 dB'; an end the noise hides is open. */
export function intervalText({ lowDb, highDb }: OrderChange): string {
  if (lowDb === null && highDb === null) return '';
  const end = (db: number | null): string => (db === null ? words.open : signed(db));
  return words.interval(end(lowDb), end(highDb));
}

/** Orders worth showing: seen in one of the runs, most felt first. */
export function shownChanges(orders: readonly OrderChange[]): OrderChange[] {
  const felt = ({ before, after }: OrderChange): number =>
    Math.max(before.seen ? before.feltLevel : 0, after.seen ? after.feltLevel : 0);
  return orders.filter(({ before, after }) => before.seen || after.seen).toSorted((a, b) => felt(b) - felt(a));
}
