/** The outcome entered last, seen and taken back where the next check already stands in its place. */
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { CheckReport, Report } from '../../core/report/report.ts';

export interface Entered {
  readonly check: CheckReport;
  /** What was found, in a word or two. */
  readonly outcome: string;
  readonly added: Measurement;
  /** The cause that stood first before. */
  readonly leadBefore: string | null;
}

class LastEntered {
  value = $state.raw<Entered | null>(null);
}

export const lastEntered = new LastEntered();

export const leadOf = (report: Report): string | null => report.findings[0]?.causes[0]?.title ?? null;
