/** One order's change in words, rounded in one place: for the sentence, the text, the screen and paper. */
import { timesText } from '../../words.ts';
import type { OrderChange } from './comparison.ts';

type Change = Pick<OrderChange, 'changeDb' | 'lowDb' | 'highDb'>;

/** '31 dB', '1.2 dB': digits as the interval of a comparison is worth them. */
export const sizeText = (db: number): string => `${Math.abs(db).toFixed(Math.abs(db) < 9.5 ? 1 : 0)} dB`;

/** '−31 dB', '+1.2 dB'; '0.0 dB' has no sign. */
export const decibelText = (db: number): string => {
  const size = sizeText(db);
  return size === '0.0 dB' ? size : `${db < 0 ? '−' : '+'}${size}`;
};

const ratioOf = (db: number): number => 10 ** (Math.abs(db) / 20);
/** A ratio nearer to one than this is told as no change. */
const SAME_RATIO = 1.05;

function weakerOrStronger(db: number): string {
  if (ratioOf(db) < SAME_RATIO) return 'the same';
  const times = timesText(ratioOf(db));
  if (db > 0) return `${times} as strong`;
  return times === 'twice' ? 'half as strong' : `${times} weaker`;
}

/** One end of an interval, and whether it is the upper one: it bounds a claim only on its own side of 'no change'. */
function boundText(db: number, isUpper: boolean): string {
  if (ratioOf(db) < SAME_RATIO) return isUpper ? 'no stronger' : 'no weaker';
  const times = timesText(ratioOf(db));
  // 'At least half as strong' would be a bound from the other side.
  const change = db > 0 ? `${times} as strong` : times === 'twice' ? 'twice as weak' : `${times} weaker`;
  return `at ${db < 0 === isUpper ? 'least' : 'most'} ${change}`;
}

/** '35 times weaker'; 'at least 12 times weaker' where the noise hides one side; empty where it hides both. */
export function timesChangeText({ changeDb, lowDb, highDb }: Change): string {
  if (lowDb !== null && highDb !== null) return weakerOrStronger(changeDb);
  if (highDb !== null) return boundText(highDb, true);
  return lowDb === null ? '' : boundText(lowDb, false);
}

/** '−32 dB to −29 dB'; '−24 dB or less' where the noise hides one end; empty where it hides both. */
export function intervalText({ lowDb, highDb }: Change): string {
  if (lowDb !== null && highDb !== null) return `${decibelText(lowDb)} to ${decibelText(highDb)}`;
  if (highDb !== null) return `${decibelText(highDb)} or less`;
  return lowDb === null ? '' : `${decibelText(lowDb)} or more`;
}
