/** How a measurement moves the causes of one finding. */
import type { Report } from '../../core/report/report.ts';

export interface Shift {
  readonly id: string;
  readonly title: string;
  readonly before: number;
  readonly after: number;
}

/** Causes shown; the rest move by little. */
const SHOWN = 5;
const WORTH_SHOWING = 0.01;

/** Causes of a finding without and with a measurement, the likeliest with it first. Empty where the finding is gone. */
export function shiftsOf(without: Report, with_: Report, label: string): Shift[] {
  const causesOf = (report: Report) => report.findings.find((finding) => finding.label === label)?.causes ?? [];
  const before = new Map(causesOf(without).map((cause) => [cause.id, cause.probability]));
  return causesOf(with_)
    .map(({ id, title, probability }) => ({ id, title, before: before.get(id) ?? 0, after: probability }))
    .filter((shift) => Math.max(shift.before, shift.after) >= WORTH_SHOWING)
    .toSorted((one, other) => other.after - one.after)
    .slice(0, SHOWN);
}
