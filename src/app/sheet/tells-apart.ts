/** What a check tells apart, in the words of the report. */
import type { CheckReport, Report } from '../../core/report/report.ts';

/** Titles of the causes a check speaks to; order labels stand as they are. */
export function tellsApartText(check: CheckReport, report: Report): string {
  const titles = new Map(report.findings.flatMap((finding) => finding.causes.map((cause) => [cause.id, cause.title])));
  return check.tellsApart.map((id) => titles.get(id) ?? id).join('; ');
}
