/** The answer in a sentence, and why. */
import { limitAt } from '../../diagnosis/absence.ts';
import type { RunInference } from '../../diagnosis/infer-run.ts';
import { FELT_FROM } from '../../diagnosis/perceived.ts';
import { expectedPlace } from '../../diagnosis/place.ts';
import { capitalized, hzText, listText, timesText, uncapitalized } from '../../diagnosis/words.ts';
import { feltLevel } from '../../signal/felt.ts';
import { roadText, sureText } from '../order-words.ts';
import { feltText } from '../format.ts';
import type { FindingReport, Verdict } from '../report.ts';

export interface Answer {
  readonly verdict: Verdict;
  readonly sentence: string;
  readonly why: string;
}

/** Together with those it shares its frequency with, the first finding must be at least this sure. */
const FOUND_FROM = 0.5;
/** Lines whose fault prior is below this are not worth a 'cannot tell' of their own. */
const LIKELY_FAULT = 0.03;
/** A felt level this uncertain is not told with decimals. */
const JUST = 1.5;

const strengthText = ({ feltLevel: level, perceived, overRoad }: FindingReport): string => {
  if (perceived === 'buried' && overRoad !== null) return roadText(overRoad);
  if (perceived === 'heard') return 'strong enough to be heard, though the seat hardly feels it';
  return level < JUST ? 'just enough for a person to feel' : `${timesText(level)} what a person just feels`;
};

const foundSentence = (finding: FindingReport): string => {
  const names = [finding.label, ...finding.sharesFrequencyWith.filter((s) => s.probability > 0.1).map((s) => s.label)];
  const what = `${capitalized(listText(names, 'or'))} at ${hzText(finding.frequencyHz)}, ${strengthText(finding)}.`;
  const cause = finding.causes[0];
  return cause ? `${what} Most likely ${uncapitalized(cause.title)}.` : what;
};

const foundWhy = (finding: FindingReport): string => {
  const shares = finding.sharesFrequencyWith[0];
  const sure = sureText(finding);
  const apart = shares && shares.probability > 0.1 ? ` ${shares.separatedBy}` : '';
  return [...finding.for.slice(0, 2), sure].join(' ') + apart;
};

interface Hidden {
  readonly label: string;
  readonly felt: number;
  readonly run: RunInference;
}

/** Lines that could be felt and still hide in the noise of every run. */
const hiddenLines = (inferences: readonly RunInference[]): readonly Hidden[] => {
  const best = new Map<string, Hidden>();
  for (const run of inferences) {
    for (const origin of run.origins) {
      const { hz } = expectedPlace(run, origin);
      if (origin.levels.fault.presence < LIKELY_FAULT || hz >= run.run.prepared.samplingRateHz / 2) continue;
      const felt = feltLevel(hz, limitAt(run.run.limit, hz), null);
      const before = best.get(origin.line.label);
      if (!before || felt < before.felt) best.set(origin.line.label, { label: origin.line.label, felt, run });
    }
  }
  return [...best.values()].filter((line) => line.felt > FELT_FROM).sort((a, b) => b.felt - a.felt);
};

const nothingFelt = (inferences: readonly RunInference[]): Answer => {
  const seen = inferences
    .flatMap(({ matches }) =>
      matches.flatMap(({ lines, tone }) => (lines[0] && lines[0].probability > 0.5 ? [{ line: lines[0], tone }] : [])),
    )
    .sort((a, b) => b.tone.feltLevel - a.tone.feltLevel);
  const strongest = seen[0];
  if (!strongest) {
    return {
      verdict: 'nothing-felt',
      sentence: 'Nothing here that a person would feel: no line of any turning part rises out of the noise.',
      why: 'Every expected line that could be felt would have been seen, as long as it moves with the speed that was found.',
    };
  }
  const level = strongest.tone.feltLevel;
  return {
    verdict: 'nothing-felt',
    sentence:
      `Nothing here that a person would feel. The strongest is ${strongest.line.origin.line.label} at ` +
      `${hzText(strongest.tone.peak.frequencyHz)}, ${Math.max(1, Math.round(100 * level))} % of what is just felt.`,
    why:
      `${seen.length} small ${seen.length === 1 ? 'order was' : 'orders were'} measured, as every sound vehicle has; ` +
      'any line a person could feel that stays, or moves with the speed that was found, would have been seen.',
  };
};

const cannotTell = (hidden: readonly Hidden[]): Answer => {
  const worst = hidden[0];
  if (!worst) throw new Error('no hidden line');
  const { durationS } = worst.run.run.prepared;
  // The limit falls with the fourth root of time in averaged spectra.
  const longer = durationS * worst.felt ** 4;
  const remedy =
    longer < 600
      ? `About ${Math.ceil(longer / 10) * 10} s at the same steady speed, or a smoother road, would show it.`
      : 'A smoother road is needed to show it; a longer recording alone would not do.';
  return {
    verdict: 'cannot-tell',
    sentence:
      `Cannot tell: nothing stands out, but ${listText(hidden.slice(0, 3).map((line) => line.label))} could be felt and ` +
      'still hide in the noise of this road.',
    why: `At ${worst.label} the noise hides lines up to felt level ${worst.felt.toFixed(1)} (1 is just felt). ${remedy}`,
  };
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
    `Cannot tell whether this is the complaint: ${finding.label} is there, at ${hzText(finding.frequencyHz)}, but ` +
    `${strengthText(finding)}.`,
  why:
    `On a smooth road its felt level of ${feltText(finding.feltLevel)} would be felt (1 is just felt); on this road a ` +
    'person hardly notices it, and sound vehicles show as much. Record at the same speed on a smoother road: the road’s ' +
    'shake goes, a fault stays.',
});

/** The answer where the first finding is sure enough. */
export const foundAnswer = (finding: FindingReport): Answer =>
  finding.perceived === 'buried'
    ? buriedAnswer(finding)
    : { verdict: 'found', sentence: foundSentence(finding), why: foundWhy(finding) };

export const answerOf = (inferences: readonly RunInference[], reports: readonly FindingReport[]): Answer => {
  const first = reports[0];
  if (!first) {
    const hidden = hiddenLines(inferences);
    return noLines(inferences) ?? (hidden.length > 0 ? cannotTell(hidden) : nothingFelt(inferences));
  }
  const sure = first.probability + first.sharesFrequencyWith.reduce((sum, s) => sum + s.probability, 0);
  if (first.part === 'unknown' || sure < FOUND_FROM) {
    const none = noLines(inferences);
    return {
      verdict: 'cannot-tell',
      sentence: `Cannot tell what shakes at ${hzText(first.frequencyHz)}, ${strengthText(first)}: ${
        none ? 'without a speed no part’s rate is known' : 'no listed part turns at that rate for certain'
      }.`,
      why: none ? none.why : [...first.against, ...first.missing].slice(0, 2).join(' '),
    };
  }
  return foundAnswer(first);
};
