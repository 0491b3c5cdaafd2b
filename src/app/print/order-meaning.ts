/** What an order is, for a reader who has not heard of orders: 'twice in each turn of the driveshaft'. */
import { countText, listText } from '../../core/words.ts';
import type { FindingReport } from '../../core/report/report.ts';
import { texts } from '../texts.ts';

const words = texts.print;

/** Origins less likely than this are not worth a customer's doubt, as in the answer. */
const NAMED_FROM = 0.1;

type Origin = Pick<FindingReport, 'part' | 'name' | 'label'> & { readonly order: number };

const partText = ({ part, name }: Origin): string => (name === undefined ? words.parts[part] : `the ${name}`);

/** 'once in each turn of the driveshaft', 'three times in two turns of the engine'. */
export function turnsText(origin: Origin): string {
  const { order } = origin;
  const isHalf = !Number.isInteger(order) && Number.isInteger(2 * order);
  const count = isHalf ? 2 * order : order;
  const often =
    count === 1 ? 'once' : count === 2 ? 'twice' : `${Number.isInteger(count) ? countText(count) : count} times`;
  return `${often} in ${isHalf ? 'two turns' : 'each turn'} of ${partText(origin)}`;
}

/** The finding's own origin, and those that share its frequency. */
function originsOf(finding: FindingReport, order: number): readonly (Origin & { readonly probability: number })[] {
  return [{ ...finding, order }, ...finding.sharesFrequencyWith.filter(({ probability }) => probability > NAMED_FROM)];
}

/** What the finding was, where it is gone; null for a tone of no part. */
export function pastMeaningOf(finding: FindingReport): string | null {
  const { order } = finding;
  if (order === null) return null;
  return words.came(listText(originsOf(finding, order).map(turnsText), 'or'));
}

/** What the finding is, and which part it may be instead. */
export function meaningOf(finding: FindingReport): string {
  const { order, part } = finding;
  if (order === null) return part === 'fixed' ? words.fixedMeans : words.unknownMeans;
  const origins = originsOf(finding, order);
  const turns = listText(origins.map(turnsText), 'or');
  if (origins.length === 1) return words.comes(turns);
  // Two orders of one part are one part to whoever pays for it.
  const byPart = new Map<string, number>();
  for (const origin of origins) byPart.set(partText(origin), (byPart.get(partText(origin)) ?? 0) + origin.probability);
  if (byPart.size === 1) return words.comes(turns);
  const chances = [...byPart].map(([part, probability]) => words.chance(part, Math.round(100 * probability)));
  return words.comesShared(turns, listText(chances));
}
