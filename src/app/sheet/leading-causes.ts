/** How many causes stand open in the list. */
import type { CauseReport } from '../../core/report/report.ts';

/** A cause less likely than this is folded away, */
const LEAST = 0.045;
/** but a few are always shown, and never a whole page. */
const FEWEST = 3;
const MOST = 7;

/** @param causes Most likely first. */
export function leadingCauses(causes: readonly Pick<CauseReport, 'probability'>[]): number {
  const likely = causes.filter(({ probability }) => probability >= LEAST).length;
  const count = Math.min(MOST, Math.max(FEWEST, likely));
  // One cause alone is not worth a fold.
  return causes.length - count <= 1 ? causes.length : count;
}
