/** Recordings the worker has read, kept so that a second question about them need not read again. */
import type { RecordedJob } from '../core/job/recorded-job.ts';
import type { Result } from '../core/note.ts';
import { failure, success } from '../core/note.ts';
import { givenOf } from '../core/reading/given.ts';
import { readRecording } from '../core/reading/read-recording.ts';
import type { Recording } from '../core/reading/recording.ts';
import type { RecordingSource, SourcedJob } from './protocol.ts';
import { sourceFileOf } from './source-file.ts';

/** Called with the share read, 0..1, and what is being read. */
export type ReadProgress = (fraction: number, text: string) => void;

export class Shelf {
  readonly #kept = new Map<string, Recording>();

  has({ key }: RecordingSource): boolean {
    return this.#kept.has(key);
  }

  async read(source: RecordingSource, onProgress: ReadProgress): Promise<Result<Recording>> {
    const known = this.#kept.get(source.key);
    if (known) return success(known);
    const result = await readRecording(sourceFileOf(source.name, source.blob), givenOf(source), (fraction) =>
      onProgress(fraction, `reading ${source.name}`),
    );
    if (!result.ok) return failure({ file: source.name, ...result.problem });
    this.#kept.set(source.key, result.value);
    return result;
  }

  /** All recordings of a job, or the problem of the first that cannot be read. */
  async readJob({ job, sources }: SourcedJob, onProgress: ReadProgress): Promise<Result<RecordedJob>> {
    const recordings: Recording[] = [];
    for (const [index, source] of sources.entries()) {
      const result = await this.read(source, (within, text) => onProgress((index + within) / sources.length, text));
      if (!result.ok) return result;
      recordings.push(result.value);
    }
    return success({ job, recordings });
  }
}
