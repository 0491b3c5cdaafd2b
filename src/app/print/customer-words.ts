/** The answer as a customer reads it: how strong, of what, and whether it is gone. No decibels, no hertz. */
import { isChangeOf } from '../../core/diagnosis/compare/change-of-finding.ts';
import type { Comparison, ComparisonVerdict, OrderChange } from '../../core/diagnosis/compare/comparison.ts';
import { timesText } from '../../core/words.ts';
import { feltText } from '../../core/report/format.ts';
import type { FindingReport, Report } from '../../core/report/report.ts';
import { texts } from '../texts.ts';
import { meaningOf, pastMeaningOf } from './order-meaning.ts';

const words = texts.print;

/** A bar on the scale of what is felt. */
export interface FeltBar {
  readonly name: string;
  readonly felt: number;
  /** '3.5', 'under 0.1'. */
  readonly text: string;
}

export interface CustomerAnswer {
  readonly headline: string;
  /** Sentences under it. */
  readonly explained: readonly string[];
  readonly bars: readonly FeltBar[];
  /** Whether the repair is proved, so that nothing is left to do. */
  readonly isProved: boolean;
}

/** How often the shake outweighs what a person just feels is told from here on; below it is 'just enough'. */
const JUST = 1.5;

export function customerAnswer(report: Report, comparison: Comparison | null): CustomerAnswer {
  const first = report.findings[0] ?? null;
  const change = comparison && first ? complaintChange(comparison, first) : null;
  if (comparison && first && change) {
    const [before, after] = [barOf(words.before, change.before), barOf(words.after, change.after)];
    return {
      headline: `${provedSentence(comparison.verdict) ?? comparison.sentence} ${words.went(before.text, after.text)}`,
      explained: [pastMeaningOf(first)].filter((sentence) => sentence !== null),
      bars: [before, after],
      isProved: comparison.verdict === 'gone',
    };
  }
  const meaning = first && report.verdict === 'found' ? [meaningOf(first)] : [];
  return { ...unproved(report, first), explained: [...meaning, ...stillOpen(comparison, report)], isProved: false };
}

/** The order that was complained about, where it was felt most. */
function complaintChange({ pairs }: Comparison, finding: FindingReport): OrderChange | null {
  const isIts = isChangeOf(finding);
  const changes = pairs.flatMap(({ orders }) => orders.filter((order) => isIts(order) && order.before.seen));
  return changes.toSorted((a, b) => b.before.feltLevel - a.before.feltLevel)[0] ?? null;
}

const barOf = (name: string, { feltLevel, seen }: OrderChange['before']): FeltBar => ({
  name,
  felt: feltLevel,
  text: seen ? feltText(feltLevel) : words.under(feltText(feltLevel)),
});

const provedSentence = (verdict: ComparisonVerdict): string | undefined =>
  (words.proved as Partial<Record<ComparisonVerdict, string>>)[verdict];

function unproved(report: Report, first: FindingReport | null): Pick<CustomerAnswer, 'headline' | 'bars'> {
  if (report.verdict === 'nothing-felt') {
    const strongest = Math.max(0, ...report.orders.map((order) => seenFelt(order)));
    const bars = strongest > 0 ? [{ name: words.strongest, felt: strongest, text: feltText(strongest) }] : [];
    return { headline: words.nothingFelt, bars };
  }
  const bars = first ? [{ name: words.measuredShake, felt: first.feltLevel, text: feltText(first.feltLevel) }] : [];
  if (report.verdict === 'cannot-tell' || !first) return { headline: report.sentence, bars };
  if (first.perceived === 'heard') return { headline: words.heard, bars: [] };
  const strength = first.feltLevel < JUST ? words.justFelt : words.timesFelt(timesText(first.feltLevel));
  return { headline: words.shakes(strength), bars };
}

const seenFelt = ({ visibility, feltLevel }: Report['orders'][number]): number =>
  visibility === 'not-seen' ? 0 : (feltLevel ?? 0);

function stillOpen(comparison: Comparison | null, { verdict }: Report): string[] {
  if (comparison) return [comparison.sentence];
  return verdict === 'nothing-felt' ? [words.nothingFeltMeans] : [];
}
