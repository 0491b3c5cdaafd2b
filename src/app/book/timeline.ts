/** What happened to a job, from the complaint to the proof: told from how its document changed. */
import type { Job } from '../../core/job/job.ts';
import type { Report } from '../../core/report/report.ts';

export type JobEvent =
  | { readonly kind: 'begun'; readonly atMs: number }
  | { readonly kind: 'recorded'; readonly atMs: number; readonly file: string; readonly stage: 'complaint' | 'proof' }
  | { readonly kind: 'answered'; readonly atMs: number; readonly sentence: string }
  | { readonly kind: 'compared'; readonly atMs: number; readonly sentence: string }
  | { readonly kind: 'measured'; readonly atMs: number; readonly what: string }
  | { readonly kind: 'noted'; readonly atMs: number; readonly text: string };

/** Events that follow from the job having become what it is, one for each new run and measurement. */
export function eventsOfChange(before: Job, after: Job, atMs: number): JobEvent[] {
  const known = new Map(before.runs.map((run) => [run.file, run.stage ?? 'complaint']));
  const recorded = after.runs
    .filter((run) => known.get(run.file) !== (run.stage ?? 'complaint'))
    .map((run): JobEvent => ({ kind: 'recorded', atMs, file: run.file, stage: run.stage ?? 'complaint' }));
  const measured = after.measurements
    .filter((measurement) => !before.measurements.includes(measurement))
    .map((measurement): JobEvent => {
      const what = measurement.kind === 'observation' ? measurement.checkId : measurement.kind;
      return { kind: 'measured', atMs, what };
    });
  return [...recorded, ...measured];
}

/** The event of an answer or a comparison; null where it says the same as the last one of its kind. */
export function eventOfAnswer(
  events: readonly JobEvent[],
  { sentence }: Pick<Report, 'sentence'>,
  atMs: number,
  kind: 'answered' | 'compared' = 'answered',
): JobEvent | null {
  const said = events.flatMap((event) => (event.kind === kind ? [event.sentence] : []));
  return said.at(-1) === sentence ? null : { kind, atMs, sentence };
}

/** The later of two entries about the same run or measurement replaces the earlier, so that typing leaves no trail. */
export function addEvents(events: readonly JobEvent[], added: readonly JobEvent[]): JobEvent[] {
  const subject = (event: JobEvent): string | null =>
    event.kind === 'recorded' ? `r ${event.file}` : event.kind === 'measured' ? `m ${event.what}` : null;
  const replaced = new Set(added.map(subject).filter((name) => name !== null));
  return [...events.filter((event) => !replaced.has(subject(event) ?? '')), ...added].sort((a, b) => a.atMs - b.atMs);
}
