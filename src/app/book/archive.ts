/** A job with its recordings as one file, out and in. Inside are a job file, its history and the recordings as they were. */
import type { Problem, Result } from '../../core/note.ts';
import { success } from '../../core/note.ts';
import { writeJob } from '../../core/job/job-file.ts';
import type { Job } from '../../core/job/job.ts';
import { safeFileName } from '../files/download.ts';
import { packZip, unpackZip } from '../files/zip.ts';
import { ARCHIVE_ENDING } from '../state/files.ts';
import { HISTORY_NAME, readHistory, writeHistory } from './history-file.ts';
import type { JobEvent } from './timeline.ts';

export interface Archive {
  readonly name: string;
  readonly blob: Blob;
}

interface NamedBlob {
  readonly name: string;
  readonly blob: Blob;
}

export interface Unpacked {
  /** The job file and the recordings, as if they had been opened one by one. */
  readonly files: readonly File[];
  /** What happened to the job; empty in a file of before there was a history in it. */
  readonly events: readonly JobEvent[];
  /** Why the history was left out; null where it was not. */
  readonly remark: Problem | null;
}

export async function packJob(
  job: Job,
  recordings: readonly NamedBlob[],
  events: readonly JobEvent[],
): Promise<Archive> {
  const named = recordings.filter(({ name }) => job.runs.some((run) => run.file === name));
  const stem = safeFileName(job.title ?? job.vehicle.description ?? 'job');
  const files = [
    { name: `${stem}.job.json`, blob: new Blob([writeJob(job)]) },
    { name: HISTORY_NAME, blob: new Blob([writeHistory(events)]) },
    ...named,
  ];
  return { name: stem + ARCHIVE_ENDING, blob: await packZip(files) };
}

/** What an archive holds. Folders in it are ignored; a history that cannot be read keeps nothing else from opening. */
export async function unpackJob(blob: Blob): Promise<Result<Unpacked>> {
  const inside = await unpackZip(blob);
  if (!inside.ok) return inside;
  const all = inside.value.map((file) => new File([file.blob], file.name.split('/').at(-1) ?? file.name));
  const history = all.find(({ name }) => name === HISTORY_NAME);
  const read = history ? readHistory(await history.text()) : success([]);
  return success({
    files: all.filter(({ name }) => name !== HISTORY_NAME),
    events: read.ok ? read.value : [],
    remark: read.ok ? null : read.problem,
  });
}
