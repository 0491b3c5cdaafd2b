/** What a set of opened files holds: jobs, each with the recordings it names, and recordings no job names. */
import type { Job } from '../../core/job/job.ts';
import { readJob } from '../../core/job/job-file.ts';
import type { Problem } from '../../core/note.ts';
import { unpackJob } from '../book/archive.ts';
import type { JobEvent } from '../book/timeline.ts';
import type { JobDocument } from '../form/document.ts';
import type { StoredRecording } from './files.ts';
import { sortFiles } from './files.ts';

/** A job as it is put into the session or the job book. */
export interface OpenedJob {
  readonly document: JobDocument;
  readonly recordings: readonly StoredRecording[];
  /** What had happened to it before. */
  readonly events: readonly JobEvent[];
}

export interface Opened {
  readonly jobs: readonly OpenedJob[];
  /** Recordings that none of the jobs names. */
  readonly loose: readonly File[];
  readonly refused: readonly Problem[];
  /** A job file could not be read: the loose recordings may be its own. */
  readonly lacksJob: boolean;
}

/** Files that came together: those opened one by one, or those in one archive. */
interface Bundle {
  readonly files: readonly File[];
  readonly events: readonly JobEvent[];
}

export async function readOpened(files: readonly File[]): Promise<Opened> {
  const { jobs: jobFiles, archives, recordings } = sortFiles(files);
  const refused: Problem[] = [];
  const bundles: Bundle[] = [{ files: [...jobFiles, ...recordings], events: [] }];
  for (const archive of archives) {
    const inside = await unpackJob(archive);
    if (!inside.ok) refused.push({ file: archive.name, ...inside.problem });
    else {
      bundles.push(inside.value);
      if (inside.value.remark) refused.push({ file: archive.name, ...inside.value.remark });
    }
  }
  const jobs: OpenedJob[] = [];
  const loose: File[] = [];
  let lacksJob = false;
  for (const bundle of bundles) {
    const { jobs: its, recordings: beside } = sortFiles(bundle.files);
    const taken = new Set<File>();
    for (const file of its) {
      const job = readJob(await file.text(), file.name);
      if (!job.ok) {
        refused.push(job.problem);
        lacksJob = true;
        continue;
      }
      const own = namedBy(job.value, beside);
      own.forEach((recording) => taken.add(recording));
      jobs.push(openedJob(job.value, own, bundle.events));
    }
    loose.push(...beside.filter((recording) => !taken.has(recording)));
  }
  return { jobs, loose, refused, lacksJob };
}

/** The recordings a job names, one for each name. */
const namedBy = ({ runs }: Job, recordings: readonly File[]): File[] =>
  [...new Set(runs.map(({ file }) => file))].flatMap((name) => recordings.find((file) => file.name === name) ?? []);

function openedJob(job: Job, recordings: readonly File[], events: readonly JobEvent[]): OpenedJob {
  const stored = recordings.map((blob): StoredRecording => ({ id: crypto.randomUUID(), name: blob.name, blob }));
  const ids = Object.fromEntries(stored.map(({ name, id }) => [name, id]));
  return { document: { job, typed: {}, recordings: ids }, recordings: stored, events };
}
