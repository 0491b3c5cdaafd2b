/** Evidence as the ranking takes it: signs seen, clues that could not be read, and outcomes of checks. */
import type { CaseContext, FindingBasis } from './case.ts';
import type { Sign } from './evidence-signs.ts';
import { orderClues } from './evidence-orders.ts';
import { conditionClues } from './evidence-conditions.ts';
import { vehicleClues } from './evidence-vehicle.ts';

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
  readonly missing: string;
  readonly asks: (basis: FindingBasis) => boolean;
  readonly read: (basis: FindingBasis, context: CaseContext) => SignSeen | 'neither' | null;
}

export interface SignEvidence {
  readonly seen: readonly SignSeen[];
  readonly unread: readonly Clue[];
}

export const CLUES: readonly Clue[] = [...orderClues, ...conditionClues, ...vehicleClues];

/** Puts every clue that concerns this finding to the case. */
export function readSigns(basis: FindingBasis, context: CaseContext): SignEvidence {
  const seen: SignSeen[] = [];
  const unread: Clue[] = [];
  for (const clue of CLUES.filter(({ asks }) => asks(basis))) {
    const answer = clue.read(basis, context);
    if (answer === null) unread.push(clue);
    else if (answer !== 'neither') seen.push(answer);
  }
  return { seen, unread };
}
