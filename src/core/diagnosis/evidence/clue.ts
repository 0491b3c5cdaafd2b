/** A question put to a case, and the sign that answers it. */
import type { CaseContext, FindingBasis } from './case.ts';
import type { Sign } from '../signs.ts';

/** A sign seen. Its likelihood ratio is raised to `strength`: 1 where clear, towards 0 where it can hardly be told. */
export interface SignSeen {
  readonly sign: Sign;
  /** What was seen, as the head of a sentence without full stop: 'driveshaft 2× stands beside it at 0.4 of its level'. */
  readonly text: string;
  readonly strength: number;
}

/** A question put to the case. Answers with a sign, with 'neither', or with null where the case does not say. */
export interface Clue {
  /** All signs it can answer with. */
  readonly signs: readonly Sign[];
  /** What is not known, as a sentence, where it answers null. */
  readonly missing: string | ((basis: FindingBasis) => string);
  readonly asks: (basis: FindingBasis, context: CaseContext) => boolean;
  readonly read: (basis: FindingBasis, context: CaseContext) => SignSeen | 'neither' | null;
}

export const missingText = ({ missing }: Clue, basis: FindingBasis): string =>
  typeof missing === 'string' ? missing : missing(basis);
