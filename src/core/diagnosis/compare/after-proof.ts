/** What follows from a proof: close the job, go on to the next cause, look over the work, or record once more. */
import { cautionTexts, type CautionId } from '../../cautions.ts';
import { chanceText, listText, uncapitalized } from '../../words.ts';
import type { ComparisonVerdict } from './comparison.ts';
import { isOpen, type Proof } from './proof.ts';

export interface AfterProof {
  readonly title: string;
  readonly steps: readonly string[];
  readonly cautions: readonly string[];
}

/** What the case holds beside the proof. */
export interface AfterRepair {
  /** Causes that the job says were put right, by title. */
  readonly repaired: readonly string[];
  /** Readings outside their limits that the repair is taken to have put right, a sentence each. */
  readonly putRight: readonly string[];
  /** Causes that are likeliest now, first the likeliest, by title. */
  readonly likeliest: readonly string[];
  /** Labels of what is still to be found. */
  readonly left: readonly string[];
  /** Of a shake that several orders may be: how sure its first order is once it is gone, and was before, 0..1. */
  readonly sureOfPart: { readonly label: string; readonly before: number; readonly now: number } | null;
}

type Told = Exclude<ComparisonVerdict, 'cannot-tell' | 'nothing-to-compare'>;

const TITLES: Readonly<Record<Told, string>> = {
  gone: 'Close the job',
  better: 'Better, not gone: find what is left',
  unchanged: 'That was not it: go on to the next cause',
  worse: 'Stronger than before: look over the work first',
  moved: 'Look at what shakes now',
};

const CAUTIONS_OF: Readonly<Record<Told, readonly CautionId[]>> = {
  gone: ['hoist', 'turning-parts', 'level-down'],
  better: ['hoist', 'turning-parts'],
  unchanged: ['hoist', 'turning-parts'],
  worse: ['stop-at-once', 'hoist', 'turning-parts', 'reassembly'],
  moved: ['stop-at-once', 'hoist', 'turning-parts', 'reassembly'],
};

/** Closing a job and looking over work: common practice, no source. */
export function afterProof(proof: Proof, known: AfterRepair): AfterProof {
  if (isOpen(proof)) return recordAgain(proof);
  const verdict = proof.verdict as Told;
  const steps = STEPS[verdict](proof, known).filter((step) => step !== '');
  return { title: TITLES[verdict], steps, cautions: cautionTexts(CAUTIONS_OF[verdict]) };
}

const MEASURE_AGAIN =
  'Measure again what was put right. What is still outside its limit is corrected first, and recorded again.';

const stillLeft = ({ left }: AfterRepair): string =>
  left.length === 0
    ? ''
    : `Not proved gone, and another fault: ${listText(left)}. Go on with it below, or tell the customer of it.`;

/** What was put right: as the job says, and what was measured outside its limit; null where nothing tells. */
const mended = ({ repaired, putRight }: AfterRepair): string | null => {
  const told = [...repaired, ...putRight];
  return told.length === 0 ? null : told.map((text) => uncapitalized(text).replace(/\.$/, '')).join('; ');
};

const NOT_SAID =
  'Which cause was put right is not known here: no reading is outside its limit. Name it with the job (put right before the proof)';

const setDown = (known: AfterRepair): string => {
  const what = mended(known);
  return what === null
    ? `${NOT_SAID}, and it is weighed down; until then leave it out.`
    : `Taken as put right, and set down for it: ${what}.`;
};

/** What is written down of a repair that helped. */
const helped = (known: AfterRepair, verdict: 'gone' | 'better'): string => {
  const what = mended(known);
  if (what === null) return `${NOT_SAID}, so that a comeback finds what helped.`;
  return verdict === 'gone'
    ? `Put right: ${what}. That was it.${partSentence(known)}`
    : `Put right: ${what}. It had a part in it.`;
};

/** A change of so little in a probability is not worth a sentence. */
const LEAST_CHANGE = 0.05;

const partSentence = ({ sureOfPart }: AfterRepair): string => {
  if (!sureOfPart || Math.abs(sureOfPart.now - sureOfPart.before) < LEAST_CHANGE) return '';
  const { label, before, now } = sureOfPart;
  const speaks = now > before ? 'for' : 'against';
  return ` This speaks ${speaks} ${label}: ${chanceText(now)} now, ${chanceText(before)} before.`;
};

const next = ({ likeliest }: AfterRepair): string =>
  likeliest.length === 0
    ? ''
    : `Likeliest now: ${listText(likeliest.map(uncapitalized), 'or')}. Check before parts are bought.`;

const recordAgain = ({ why }: Proof): AfterProof => ({
  title: 'The proof is open: record once more',
  steps: [
    why,
    'Record again at the speed, gear and load of the complaint, on the same road, with the sensor in the same place.',
  ].filter((step) => step !== ''),
  cautions: cautionTexts(['road-test']),
});

const STEPS: Readonly<Record<Told, (proof: Proof, known: AfterRepair) => string[]>> = {
  gone: (_, known) => [
    'Torque once more, to the maker’s figures, what the repair loosened: joint straps or U-bolts, flange, center bearing, spring U-bolts, wheel nuts.',
    'Look for play, leaks, and lines or hoses that touch; turn the shaft once by hand.',
    'Hand the vehicle back with the sheet of before and after. Keep both recordings with the job: a comeback is held against them.',
    helped(known, 'gone'),
    stillLeft(known),
  ],
  better: (_, known) => [
    helped(known, 'better'),
    MEASURE_AGAIN,
    `If all is inside its limit, what is left has another cause. ${next(known)}`.trim(),
  ],
  unchanged: (_, known) => [MEASURE_AGAIN, setDown(known), next(known)],
  worse: () => [
    'Look for what the work may have changed: alignment marks apart, a ring not seated, a weight lost, a wedge the wrong way round, a loose fastener.',
    MEASURE_AGAIN,
    'Then record again at the same speed, gear and load, and compare.',
  ],
  moved: ({ sentence }) => [
    `${sentence} What is new came with the work until shown otherwise: alignment marks, ring seats, weights, fasteners, wheels put back elsewhere.`,
    'If the work is right, diagnose the run made after the repair as a complaint of its own.',
  ],
};
