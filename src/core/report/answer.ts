import type { Verdict } from './report.ts';

/** The answer in a sentence, and why. */
export interface Answer {
  readonly verdict: Verdict;
  readonly sentence: string;
  readonly why: string;
}
