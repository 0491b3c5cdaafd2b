/** What must have come out right for a test to go on. */
import type { Result } from '../../src/core/note.ts';

export const must = <T>(result: Result<T>): T => {
  if (!result.ok) throw new Error(result.problem.message);
  return result.value;
};
