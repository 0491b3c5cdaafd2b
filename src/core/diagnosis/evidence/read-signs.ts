/** Evidence as the ranking takes it: signs seen, clues that could not be read, and outcomes of checks. */
import type { CaseContext, FindingBasis } from './case.ts';
import type { Clue, SignSeen } from './clue.ts';
import { orderClues } from './orders.ts';
import { conditionClues } from './conditions.ts';
import { vehicleClues } from './vehicle.ts';

export interface SignEvidence {
  readonly seen: readonly SignSeen[];
  readonly unread: readonly Clue[];
}

export const CLUES: readonly Clue[] = [...orderClues, ...conditionClues, ...vehicleClues];

/** Puts every clue that concerns this finding to the case. */
export function readSigns(basis: FindingBasis, context: CaseContext): SignEvidence {
  const seen: SignSeen[] = [];
  const unread: Clue[] = [];
  for (const clue of CLUES.filter(({ asks }) => asks(basis, context))) {
    const answer = clue.read(basis, context);
    if (answer === null) unread.push(clue);
    else if (answer !== 'neither') seen.push(answer);
  }
  return { seen, unread };
}
