/** The causes that can have been put right before the proof: the likeliest of what was complained of, by name. */
import type { CauseReport, Report } from '../../core/report/report.ts';

/** More would be a list to search; those already named are always among them. */
const MOST = 8;

type Choice = Pick<CauseReport, 'id' | 'title'>;

/** In the order of their titles, so that naming one does not move the others. */
export function repairable({ findings, proof }: Report, repaired: readonly string[]): readonly Choice[] {
  const causes = findings.find(({ label }) => label === proof?.complaint)?.causes ?? [];
  return causes
    .filter(({ repair }) => repair !== '')
    .filter(({ id }, i) => i < MOST || repaired.includes(id))
    .sort((a, b) => a.title.localeCompare(b.title));
}
