/** What stands over the first check, for text, page and screen. */
import type { Report } from './report.ts';

/** Where the first check stands among what goes before it. */
export const checkHeading = ({ repairs, proof }: Pick<Report, 'repairs' | 'proof'>): string => {
  if (repairs?.length) return 'If it still shakes';
  return proof ? 'Then' : 'Do this next';
};
