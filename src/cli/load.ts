/** Files → a job and its recordings. */
import { basename, dirname, isAbsolute, join } from 'node:path';
import type { Job } from '../core/job/job.ts';
import { readJob } from '../core/job/job-file.ts';
import type { Problem, Result } from '../core/note.ts';
import { failure, success } from '../core/note.ts';
import { givenOf, type Given } from '../core/reading/given.ts';
import { readRecording } from '../core/reading/read-recording.ts';
import type { Recording } from '../core/reading/recording.ts';
import type { Io } from './io.ts';

export const isJobFile = (path: string): boolean => path.endsWith('.json');

/** A recording named on the command line or in a job file. */
export async function loadRecording(io: Io, path: string, given: Given = {}): Promise<Result<Recording>> {
  const name = path === '-' ? 'standard input' : basename(path);
  try {
    const { chunks, sizeBytes } = await io.openFile(path);
    return await readRecording(
      { name, bytes: chunks, ...(sizeBytes === undefined ? {} : { sizeBytes }) },
      givenOf(given),
    );
  } catch (error) {
    return failure(fileProblem(path, error));
  }
}

/** A job file; the recordings' paths in it become relative to where we stand, absolute ones stay as they are. */
export async function loadJob(io: Io, path: string): Promise<Result<Job>> {
  let bytes: Uint8Array;
  try {
    bytes = await io.readFile(path);
  } catch (error) {
    return failure(fileProblem(path, error));
  }
  const job = readJob(new TextDecoder().decode(bytes), path === '-' ? 'standard input' : basename(path));
  if (!job.ok || path === '-') return job;
  const folder = dirname(path);
  const placed = (file: string): string => (isAbsolute(file) ? file : join(folder, file));
  return success({ ...job.value, runs: job.value.runs.map((run) => ({ ...run, file: placed(run.file) })) });
}

/** All recordings of a job, in the order of its runs; the first that cannot be read ends it. */
export async function loadRecordings(io: Io, job: Job): Promise<Result<Recording[]>> {
  const recordings: Recording[] = [];
  for (const run of job.runs) {
    const recording = await loadRecording(io, run.file, run);
    if (!recording.ok) return recording;
    recordings.push(recording.value);
  }
  return success(recordings);
}

function fileProblem(path: string, error: unknown): Problem {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  const found =
    code === 'ENOENT'
      ? 'there is no such file'
      : code === 'EISDIR'
        ? 'it is a folder'
        : code === 'EACCES'
          ? 'reading it is not permitted'
          : (error as Error).message;
  return {
    code: 'file-not-readable',
    file: path,
    message: `${path} could not be opened: ${found}.`,
    remedy: 'Check the name and the folder.',
  };
}

/** A problem as the command line prints it. Readers' sentences name the place themselves; others get it in front. */
export function problemText(problem: Problem): string {
  const named = problem.file === undefined || problem.message.includes(problem.file);
  const where = [
    problem.file ?? '',
    problem.line === undefined ? '' : `line ${problem.line}`,
    problem.column === undefined ? '' : `column ${problem.column}`,
    problem.key === undefined || problem.message.startsWith(`${problem.key}:`) ? '' : `key ${problem.key}`,
  ].filter((part) => part !== '');
  const place = named && problem.file !== undefined ? '' : where.join(', ');
  return `perrev: ${place === '' ? '' : `${place}: `}${problem.message}\n  ${problem.remedy}\n`;
}
