/** Causes that were put right, and what the runs made after the repair say of them. */
import type { CaseContext, FindingBasis } from './case.ts';

/** Put right, and the shake stayed: it was another cause's, or the repair did not take. */
export const isRepairedInVain = (
  causeId: string,
  { label }: Pick<FindingBasis, 'label'>,
  { repaired = [], unmoved }: Pick<CaseContext, 'repaired' | 'unmoved'>,
): boolean => unmoved === label && repaired.includes(causeId);
