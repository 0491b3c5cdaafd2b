/** The list of the job book: what is shown of each job, searched and grouped. */
import type { Job } from '../../core/job/job.ts';
import { texts } from '../texts.ts';
import type { BookEntry } from './book.ts';
import { dateText } from './dates.ts';
import type { StoredJob } from './stored-job.ts';
import { documentOf } from './stored-job.ts';

export interface BookRow {
  readonly id: string;
  readonly title: string;
  /** A person gave it its title. */
  readonly isNamed: boolean;
  /** As typed by the technician; jobs of one vehicle share it. */
  readonly vehicle: string;
  readonly complaint: string;
  readonly answer: string | null;
  readonly recordings: number;
  readonly updatedMs: number;
  readonly stored: StoredJob;
}

/** Rows of the jobs that can be read and are not deleted, in the given order. */
export function rowsOf(entries: readonly BookEntry[]): BookRow[] {
  return entries.flatMap((entry) => {
    if (entry.kind !== 'job' || entry.job.deletedMs !== undefined) return [];
    const document = documentOf(entry.job);
    return document.ok ? [rowOf(entry.job, document.value.job)] : [];
  });
}

/** Entries that cannot be used: damaged records, newer ones, and records whose job cannot be read. */
export function unusableOf(entries: readonly BookEntry[]): Extract<BookEntry, { kind: 'unusable' }>[] {
  return entries.flatMap((entry) => {
    if (entry.kind === 'unusable') return [entry];
    const document = documentOf(entry.job);
    return document.ok
      ? []
      : [{ kind: 'unusable' as const, id: entry.job.id, problem: document.problem, raw: entry.job }];
  });
}

function rowOf(stored: StoredJob, job: Job): BookRow {
  return {
    id: stored.id,
    title: nameOf(job, stored.createdMs),
    isNamed: isNamed(job),
    vehicle: job.vehicle.description ?? '',
    complaint: job.complaint ?? '',
    answer: stored.answer?.sentence ?? null,
    recordings: job.runs.length,
    updatedMs: stored.updatedMs,
    stored,
  };
}

const isNamed = ({ title }: Job): boolean => (title?.trim() ?? '') !== '';

/** Its own name, else its vehicle or first recording and when it was begun: a book full of "New job" tells nothing. */
export function nameOf({ title, vehicle, runs }: Job, createdMs: number): string {
  const what = vehicle.description?.trim() || runs[0]?.file || texts.frame.untitledJob;
  return title?.trim() || texts.book.untitled(what, dateText(createdMs));
}

/** What a job is called, even where nobody named it. */
export function titleOf(stored: StoredJob): string {
  const document = documentOf(stored);
  return document.ok ? nameOf(document.value.job, stored.createdMs) : texts.frame.untitledJob;
}

/** What stands under the title: the vehicle where it is not the title already, and the complaint as it was said. */
export function subtitleOf({ title, isNamed, vehicle, complaint }: BookRow): string {
  const isSaid = !isNamed || vehicle.trim() === title;
  return [isSaid ? '' : vehicle, complaint && `“${complaint}”`].filter(Boolean).join(' · ');
}

/** Rows that hold every word of the search somewhere, in any case. */
export function searchRows(rows: readonly BookRow[], search: string, vehicle: string | null): BookRow[] {
  const words = search.toLowerCase().split(/\s+/u).filter(Boolean);
  return rows.filter((row) => {
    if (vehicle !== null && row.vehicle !== vehicle) return false;
    const text = [row.title, row.vehicle, row.complaint, row.answer ?? ''].join(' ').toLowerCase();
    return words.every((word) => text.includes(word));
  });
}

/** Names of the vehicles that have more than one job. */
export function vehiclesWithHistory(rows: readonly BookRow[]): string[] {
  const counts = new Map<string, number>();
  for (const { vehicle } of rows) if (vehicle !== '') counts.set(vehicle, (counts.get(vehicle) ?? 0) + 1);
  return [...counts].filter(([, count]) => count > 1).map(([vehicle]) => vehicle);
}
