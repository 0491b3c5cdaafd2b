/** Whether an outcome is something to put right. */
import { checkOf } from '../checks/all-checks.ts';
import type { CheckId } from '../weights.ts';
import type { CheckOutcome } from './check-outcome.ts';

/** Checks that tell where a fault is, or that a weight hides it, and not what is to be mended. */
const ONLY_LEAD_ON: ReadonlySet<CheckId> = new Set([
  'clamp-trial',
  'tap-test',
  'critical-speed',
  'cylinder-contribution',
]);

export const isToMend = ({ checkId, isFault, wrongness }: CheckOutcome): boolean => {
  const kind = checkOf(checkId)?.kind;
  return isFault && wrongness > 0.5 && !ONLY_LEAD_ON.has(checkId) && (kind === 'measurement' || kind === 'inspection');
};
