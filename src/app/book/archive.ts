/** A job with its recordings as one file, out and in. Inside are a job file and the recordings as they were. */
import type { Result } from '../../core/note.ts';
import { success } from '../../core/note.ts';
import { writeJob } from '../../core/job/job-file.ts';
import type { Job } from '../../core/job/job.ts';
import { safeFileName } from '../files/download.ts';
import { packZip, unpackZip } from '../files/zip.ts';
import { ARCHIVE_ENDING } from '../state/files.ts';

export interface Archive {
  readonly name: string;
  readonly blob: Blob;
}

interface NamedBlob {
  readonly name: string;
  readonly blob: Blob;
}

export async function packJob(job: Job, recordings: readonly NamedBlob[]): Promise<Archive> {
  const named = recordings.filter(({ name }) => job.runs.some((run) => run.file === name));
  const stem = safeFileName(job.title ?? job.vehicle.description ?? 'job');
  const files = [{ name: `${stem}.job.json`, blob: new Blob([writeJob(job)]) }, ...named];
  return { name: stem + ARCHIVE_ENDING, blob: await packZip(files) };
}

/** The files of an archive, as if they had been opened one by one. Folders in it are ignored. */
export async function unpackJob(blob: Blob): Promise<Result<readonly File[]>> {
  const files = await unpackZip(blob);
  if (!files.ok) return files;
  return success(files.value.map((file) => new File([file.blob], file.name.split('/').at(-1) ?? file.name)));
}
