/** The answer in a sentence, and why. */
import type { RunInference } from '../../diagnosis/matching/infer-run.ts';
import { capitalized, hzText, listText, timesText, uncapitalized } from '../../words.ts';
import { duringText, roadText, sureText } from '../order-words.ts';
import { feltText, percentText } from '../format.ts';
import type { Answer } from '../answer.ts';
import type { FindingReport } from '../report.ts';
import { jointsAnswer } from './road-joints-words.ts';
import { nothingFound, uneven } from './nothing-found.ts';

/** Together with those it shares its frequency with, the first finding must be at least this sure. */
const FOUND_FROM = 0.6;
/** A felt level this uncertain is not told with decimals. */
const JUST = 1.5;

const strengthText = ({ feltLevel: level, perceived, overRoad }: FindingReport): string => {
  if (perceived === 'buried' && overRoad !== null) return roadText(overRoad);
  if (perceived === 'heard') return 'strong enough to be heard, though the seat hardly feels it';
  return level < JUST ? 'just enough for a person to feel' : `${timesText(level)} what a person just feels`;
};

const foundSentence = (finding: FindingReport): string => {
  const names = [finding.label, ...finding.sharesFrequencyWith.filter((s) => s.probability > 0.1).map((s) => s.label)];
  const when = duringText(finding);
  const what = `${capitalized(listText(names, 'or'))} at ${hzText(finding.frequencyHz)}${when}, ${strengthText(finding)}.`;
  const rest = partsApart(finding) ? 'Tell the two apart first.' : causeText(finding.causes);
  return rest === null ? what : `${what} ${rest}`;
};

/** From this share of the first one's probability on, a second suspect keeps the sentence from naming a repair of the first. */
const AS_LIKELY = 0.5;
const partsApart = ({ probability, sharesFrequencyWith }: FindingReport): boolean =>
  sharesFrequencyWith.some((other) => other.probability >= AS_LIKELY * probability);

/** A cause is named as the likeliest from this probability on, and so far ahead of the next. Judgment. */
const LIKELY_FROM = 0.4;
const LEAD = 1.5;

/** What it most likely is; where that is open, it says so: a customer hears a diagnosis, and a shop sells the part. */
const causeText = ([first, second]: FindingReport['causes']): string | null => {
  if (!first) return null;
  const named = ({ title, probability }: FindingReport['causes'][number]): string =>
    `${uncapitalized(title)} (${percentText(probability)})`;
  const isClear = first.probability >= LIKELY_FROM && first.probability >= LEAD * (second?.probability ?? 0);
  if (!second || isClear) return `Most likely ${named(first)}.`;
  return `The cause is not settled yet; likeliest are ${named(first)} and ${named(second)}.`;
};

const sureness = ({ probability, sharesFrequencyWith }: FindingReport): number =>
  probability + sharesFrequencyWith.reduce((sum, share) => sum + share.probability, 0);

/** No more other findings than this are named beside the first. */
const MOST_OTHERS = 2;

/** Other parts that shake too: two faults are not rare, and the second one is left when the first is mended. */
const othersText = (first: FindingReport, findings: readonly FindingReport[]): string => {
  const others = findings
    .filter((one) => one !== first && one.part !== first.part && one.part !== 'unknown')
    .filter((one) => one.perceived !== 'buried' && sureness(one) >= FOUND_FROM)
    .slice(0, MOST_OTHERS)
    .map((one) => `${one.label} at ${hzText(one.frequencyHz)}${duringText(one)}`);
  if (others.length === 0) return '';
  return ` ${capitalized(listText(others))} ${others.length === 1 ? 'shakes' : 'shake'} as well.`;
};

const foundWhy = (finding: FindingReport, findings: readonly FindingReport[]): string => {
  const shares = finding.sharesFrequencyWith[0];
  const sure = sureText(finding);
  const apart = shares && shares.probability > 0.1 ? ` ${shares.separatedBy}` : '';
  // That a part turns at a fixed tone's rate is the first thing to know about it.
  const rivals = finding.part === 'fixed' ? finding.against.slice(0, 1) : [];
  return [...finding.for.slice(0, 2), ...rivals, sure].join(' ') + apart + othersText(finding, findings);
};

const noLines = (inferences: readonly RunInference[]): Answer | null => {
  if (inferences.some(({ run }) => run.expected !== null)) return null;
  const because = inferences[0]?.run.notes.find((note) => note.code === 'no-lines')?.text ?? '';
  return {
    verdict: 'cannot-tell',
    sentence: 'Cannot tell: without a speed there is nothing to compare the peaks with.',
    why: because,
  };
};

/** The line is there, and the road covers it: a sound vehicle on a rough road shows as much. */
const buriedAnswer = (finding: FindingReport): Answer => ({
  verdict: 'cannot-tell',
  sentence:
    `Cannot tell whether this is the complaint: ${finding.label} is there, at ` +
    `${hzText(finding.frequencyHz)}${duringText(finding)}, but ` +
    `${strengthText(finding)}.`,
  why:
    `On a smooth road its felt level of ${feltText(finding.feltLevel)} would be felt (1 is just felt); on this road a ` +
    'person hardly notices it, and sound vehicles show as much. Record at the same speed on a smoother road: the road’s ' +
    'shake goes, a fault stays.',
});

/** The answer where the first finding is sure enough. */
export const foundAnswer = (first: FindingReport, findings: readonly FindingReport[]): Answer =>
  first.perceived === 'buried'
    ? buriedAnswer(first)
    : { verdict: 'found', sentence: foundSentence(first), why: foundWhy(first, findings) };

export const answerOf = (inferences: readonly RunInference[], reports: readonly FindingReport[]): Answer => {
  const first = reports[0];
  if (!first) {
    return noLines(inferences) ?? jointsAnswer(inferences) ?? nothingFound(inferences);
  }
  if (first.part === 'unknown' || sureness(first) < FOUND_FROM) {
    const none = noLines(inferences);
    return {
      verdict: 'cannot-tell',
      sentence: `Cannot tell what shakes at ${hzText(first.frequencyHz)}${duringText(first)}, ${strengthText(first)}: ${
        none ? 'without a speed no part’s rate is known' : 'no listed part turns at that rate for certain'
      }.`,
      why:
        ((none ?? uneven(inferences))?.why ?? [...first.against, ...first.missing].slice(0, 2).join(' ')) +
        othersText(first, reports),
    };
  }
  return foundAnswer(first, reports);
};
