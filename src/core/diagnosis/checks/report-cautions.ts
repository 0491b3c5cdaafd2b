/** The cautions of a whole report. The sentences themselves are shared with the bench. */
import { CAUTIONS } from '../../cautions.ts';

const ALWAYS = [
  'The ranking says what is likely; it does not clear a vehicle as safe. Local codes, the maker’s procedure and licensed practice come first.',
];

/**
 * The cautions of a whole report: the standing one, what to do when something unsafe shows itself, and those of the
 * checks that are proposed first.
 *
 * @param checks proposed checks, best first; the cautions of the first three are repeated at the foot of the report
 */
export function cautionsFor(checks: readonly { readonly cautions: readonly string[] }[]): string[] {
  const first = checks.slice(0, 3).flatMap(({ cautions }) => cautions);
  return [...new Set([...ALWAYS, CAUTIONS['stop-at-once'], ...first])];
}
