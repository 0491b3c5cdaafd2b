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
import { without } from '../form/document.ts';
import type { Session } from '../state/session.svelte.ts';
import { sourceOf } from '../state/session.svelte.ts';
import type { StoredRecording } from '../state/files.ts';
import { mapOf } from '../state/maps.ts';
import { texts } from '../texts.ts';
import { stageOf } from './stage-of.ts';

/** A side of the comparison: a stage of the open job, or another job of the book by its id. */
export type Side = 'complaint' | 'proof' | `job:${string}`;

const DEFAULT_SIDES: { readonly before: Side; readonly after: Side } = { before: 'complaint', after: 'proof' };

const isOwn = (side: Side): boolean => side === 'complaint' || side === 'proof';

const isSame = (one: Question, other: Question): boolean => one.key === other.key && one.text === other.text;

/** What is asked: which sides of which job, as its vehicle and runs are now. */
interface Question {
  readonly key: object;
  readonly text: string;
}

export class Comparing {
  readonly #session: Session;
  readonly #book: Book;
  readonly #onResult: (comparison: Comparison) => void;
  #sides = $state.raw<{ key: object; before: Side; after: Side } | null>(null);
  progress = $state.raw<Progress | null>(null);
  isWorking = $state(false);
  /** When the work under way began, on the page's own clock, ms. */
  startedMs = $state(0);
  #answered = $state.raw<{ to: Question; answer: Result<Comparison> } | null>(null);
  /** What was asked last: what was cancelled is not begun again by itself. */
  #asked = $state.raw<Question | null>(null);
  #abort: AbortController | null = null;

  /** @param onResult told of each comparison the open job is a side of, while it is still the open one */
  constructor(session: Session, book: Book, onResult: (comparison: Comparison) => void = () => undefined) {
    this.#session = session;
    this.#book = book;
    this.#onResult = onResult;
  }

  // Another job begins with its own runs again.
  readonly #chosen = $derived.by(() => (this.#sides?.key === this.#session.key ? this.#sides : DEFAULT_SIDES));
  readonly before = $derived.by((): Side => this.#chosen.before);
  readonly after = $derived.by((): Side => this.#chosen.after);
  readonly #question = $derived.by((): Question => {
    const { key, job } = this.#session;
    // What the vehicle is called changes no level.
    const vehicle = without(job.vehicle, 'description');
    return { key, text: JSON.stringify([this.before, this.after, vehicle, job.runs]) };
  });
  /** The answer to what is asked now; an answer to anything else is let go. */
  readonly #answer = $derived.by(() =>
    this.#answered && isSame(this.#answered.to, this.#question) ? this.#answered.answer : null,
  );
  readonly result = $derived.by((): Comparison | null => (this.#answer?.ok ? this.#answer.value : null));
  readonly problem = $derived.by((): Problem | null =>
    this.#answer && !this.#answer.ok && this.#answer.problem.code !== CANCELLED ? this.#answer.problem : null,
  );
  /** The result where the open job is a side of it, so that it belongs on its paper and into its history. */
  readonly ofOpenJob = $derived.by((): Comparison | null =>
    isOwn(this.before) || isOwn(this.after) ? this.result : null,
  );
  /** Why the sides chosen cannot be compared, in a sentence; null where they can. */
  readonly refusal = $derived.by((): string | null => {
    const { before, after } = this;
    if (before === after) return texts.compare.sameSides;
    const lacksProof = stageOf(this.#session.job, 'proof').runs.length === 0;
    return lacksProof && (before === 'proof' || after === 'proof') ? texts.compare.noProof : null;
  });

  /** Takes another side; what was compared before belongs to it no more. */
  choose(which: 'before' | 'after', side: Side): void {
    this.cancel();
    const { before, after } = this;
    this.#sides = { key: this.#session.key, before, after, [which]: side };
  }

  /** Compares by itself where the job holds both stages and nobody has asked yet. Called from effects. */
  begin(): void {
    const isAsked = this.#asked !== null && isSame(this.#asked, this.#question);
    if (isAsked || this.isWorking || stageOf(this.#session.job, 'proof').runs.length === 0) return;
    if (this.#session.sources()) void this.run();
  }

  async run(): Promise<void> {
    if (this.refusal !== null) return;
    this.cancel();
    const abort = new AbortController();
    this.#abort = abort;
    const question = this.#question;
    this.#asked = question;
    this.isWorking = true;
    this.startedMs = performance.now();
    this.progress = null;
    const answer = await this.#compare(abort.signal);
    if (this.#abort !== abort) return;
    this.#abort = null;
    this.isWorking = false;
    this.progress = null;
    this.#answered = { to: question, answer };
    if (this.ofOpenJob) this.#onResult(this.ofOpenJob);
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
