/** The comparison's answer in words. */
import { decibelText, intervalText, sizeText, timesChangeText } from './change-words.ts';
import type { Finding } from '../findings/finding.ts';
import type { ComparedLevel, ComparedPair, ComparisonVerdict, OrderChange } from './comparison.ts';
import { capitalized } from '../../words.ts';

export interface SentenceInput {
  readonly complaint: Finding | null;
  readonly change: OrderChange | null;
  readonly fresh: readonly Finding[];
  readonly pairs: readonly ComparedPair[];
}

export interface Answer {
  readonly verdict: ComparisonVerdict;
  readonly sentence: string;
  readonly why: string;
}

/** '35 times weaker (−31 dB, 95 % interval −32 dB to −29 dB)'. */
function changeText(change: OrderChange): string {
  const { changeDb, lowDb, highDb } = change;
  const times = timesChangeText(change);
  if (lowDb !== null && highDb !== null)
    return `${times} (${decibelText(changeDb)}, 95 % interval ${intervalText(change)})`;
  if (highDb !== null) return `${times} (${sizeText(highDb)}), for the noise hides it now`;
  if (lowDb !== null) return `${times} (${sizeText(lowDb)}), for the noise hid it before`;
  return 'hidden in the noise both times';
}

/** 'Felt level 3.5 before, under 0.1 now.' */
const feltChange = ({ before, after }: OrderChange): string =>
  `Felt level ${feltText(before)} before, ${feltText(after)} now`;

const feltText = ({ feltLevel, seen }: ComparedLevel): string => `${seen ? '' : 'under '}${feltLevel.toFixed(1)}`;

export function sentenceOf({ complaint, change, fresh, pairs }: SentenceInput): Answer {
  if (pairs.length === 0) {
    return {
      verdict: 'cannot-tell',
      sentence: 'The two cannot be compared: no run before and run after share a speed.',
      why: 'Record the same stretch of road at the speed of the complaint again, in the same gear and with the sensor in the same place.',
    };
  }
  const also =
    fresh.length > 0
      ? ` New since then: ${fresh.map(({ label, trueHz }) => `${label} at ${trueHz.toFixed(1)} Hz`).join(', ')}.`
      : '';
  if (!complaint) {
    return {
      verdict: fresh.length > 0 ? 'worse' : 'nothing-to-compare',
      sentence: `Nothing was felt before${fresh.length > 0 ? ', something is now.' : ', so there is nothing whose change could be told.'}${also}`,
      why: '',
    };
  }
  if (!change && complaint.order === null) {
    return {
      verdict: 'cannot-tell',
      sentence: `${capitalized(nameOf(complaint))} cannot be compared${complaint.part === 'fixed' ? '' : ': it is not known well enough where it would stand in the run after'}.${also}`,
      why: UNCOMPARED[complaint.part === 'fixed' ? 'fixed' : 'unknown'],
    };
  }
  if (!change) {
    return {
      verdict: 'cannot-tell',
      sentence: `${capitalized(complaint.label)} cannot be compared: no run after shows it at a shared speed, or its place is not known well enough.`,
      why: `Record a run like “${complaint.inference.run.name}” again.${also}`,
    };
  }
  const moved = fresh.length > 0 && (change.verdict === 'gone' || change.verdict === 'better');
  const verdict: ComparisonVerdict = moved
    ? 'moved'
    : change.verdict === 'appeared'
      ? 'worse'
      : change.verdict === 'not-seen'
        ? 'unchanged'
        : change.verdict;
  const unlike = pairs.some(({ differences }) => differences.length > 0) && verdict === 'unchanged';
  return {
    verdict,
    sentence: `${capitalized(nameOf(complaint))} is ${WORDS[verdict]}.${also}`,
    why:
      `${feltChange(change)}: ${changeText(change)}.` +
      (unlike ? ' The runs are not alike: a run like the first one would decide.' : ''),
  };
}

/** An order by its name, another tone with its frequency too. */
const nameOf = ({ label, order, trueHz }: Finding): string =>
  order === null ? `${label} at ${trueHz.toFixed(1)} Hz` : label;

/** What to do where the complaint is no order and was not compared. */
const UNCOMPARED = {
  fixed:
    'It is not sure that it keeps its frequency, or something that turns stands there in the run after. Record it a few mph faster or slower as well.',
  unknown:
    'Record the complaint run again at the same speed, in the same gear, and give tire size, axle ratio and the road speed of both runs, so that parts and orders can be named.',
} as const;

const WORDS: Readonly<Record<ComparisonVerdict, string>> = {
  gone: 'gone',
  better: 'better, but not gone',
  unchanged: 'unchanged',
  worse: 'worse',
  moved: 'weaker, but something else shakes now',
  'nothing-to-compare': 'not comparable',
  'cannot-tell': 'not comparable',
};
