/** The before-and-after screen's state: what is compared with what, the work under way, and the result. */
import type { Problem, Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import type { Comparison } from '../../core/diagnosis/compare/comparison.ts';
import type { Job } from '../../core/job/job.ts';
import type { Progress } from '../../core/report/analysis.ts';
import type { SourcedJob } from '../../worker/protocol.ts';
import { CANCELLED } from '../../worker/client.ts';
import type { Book } from '../book/book.ts';
import { documentOf } from '../book/stored-job.ts';
import type { Session } from '../state/session.svelte.ts';
import { sourceOf } from '../state/session.svelte.ts';
import type { StoredRecording } from '../state/files.ts';
import { mapOf } from '../state/maps.ts';
import { texts } from '../texts.ts';
import { stageOf } from './stage-of.ts';

/** A side of the comparison: a stage of the open job, or another job of the book by its id. */
export type Side = 'complaint' | 'proof' | `job:${string}`;

export class Comparing {
  readonly #session: Session;
  readonly #book: Book;
  before = $state<Side>('complaint');
  after = $state<Side>('proof');
  progress = $state.raw<Progress | null>(null);
  isWorking = $state(false);
  /** When the work under way began, on the page's own clock, ms. */
  startedMs = $state(0);
  result = $state.raw<Comparison | null>(null);
  problem = $state.raw<Problem | null>(null);
  #abort: AbortController | null = null;

  constructor(session: Session, book: Book) {
    this.#session = session;
    this.#book = book;
  }

  async run(): Promise<void> {
    this.cancel();
    const abort = new AbortController();
    this.#abort = abort;
    this.isWorking = true;
    this.startedMs = performance.now();
    this.progress = null;
    this.problem = null;
    const result = await this.#compare(abort.signal);
    if (this.#abort !== abort) return;
    this.#abort = null;
    this.isWorking = false;
    this.progress = null;
    this.result = result.ok ? result.value : null;
    this.problem = result.ok || result.problem.code === CANCELLED ? null : result.problem;
  }

  cancel(): void {
    this.#abort?.abort();
    this.#abort = null;
    this.isWorking = false;
  }

  async #compare(signal: AbortSignal): Promise<Result<Comparison>> {
    const before = await this.#side(this.before);
    if (!before.ok) return before;
    const after = await this.#side(this.after);
    if (!after.ok) return after;
    return this.#session.client.ask(
      { kind: 'compare', before: before.value, after: after.value },
      { signal, onProgress: (progress) => (this.progress = progress) },
    );
  }

  async #side(side: Side): Promise<Result<SourcedJob>> {
    if (side === 'complaint' || side === 'proof') {
      const { job, files } = this.#session;
      return sourced(stageOf(job, side), files);
    }
    const stored = await this.#book.load(side.slice('job:'.length));
    if (!stored.ok) return stored;
    const document = documentOf(stored.value);
    const bytes = await this.#book.recordings(Object.values(stored.value.recordings));
    if (!document.ok) return document;
    if (!bytes.ok) return bytes;
    return sourced(
      stageOf(document.value.job, 'complaint'),
      mapOf(bytes.value.map((file) => [file.name, file] as const)),
    );
  }
}

function sourced(job: Job, files: ReadonlyMap<string, StoredRecording>): Result<SourcedJob> {
  const sources = job.runs.map((run) => {
    const file = files.get(run.file);
    return file ? sourceOf(file, run) : null;
  });
  if (sources.every((source) => source !== null)) return success({ job, sources });
  return failure({
    code: 'recordings-not-here',
    message: texts.compare.recordingsMissing,
    remedy: texts.compare.recordingsMissingRemedy,
  });
}
