/** What a check tells apart, in the words of the report. */
import { uncapitalized } from '../words.ts';
import type { CheckReport, FindingReport } from './report.ts';

/** Titles of the causes a check speaks to; order labels stand as they are. */
export function tellsApartText({ tellsApart }: CheckReport, findings: readonly FindingReport[]): string {
  const titles = new Map(findings.flatMap(({ causes }) => causes.map(({ id, title }) => [id, title])));
  return tellsApart.map((id) => uncapitalized(titles.get(id) ?? id)).join('; ');
}
