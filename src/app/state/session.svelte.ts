/** The open job: its document with undo, its recordings, the work under way, and the last answer. */
import type { Problem, Result } from '../../core/note.ts';
import type { Job } from '../../core/job/job.ts';
import { givenOf, type Given } from '../../core/reading/given.ts';
import type { Analysis, Progress } from '../../core/report/analysis.ts';
import type { Measurement } from '../../core/driveline/measurement.ts';
import type { RecordingFacts } from '../../worker/recording-facts.ts';
import type { RecordingSource } from '../../worker/protocol.ts';
import { CANCELLED, WorkerClient } from '../../worker/client.ts';
import type { JobEvent } from '../book/timeline.ts';
import type { FieldSpec, JobDocument } from '../form/document.ts';
import { emptyDocument, leaveField, removeRun, typeInto } from '../form/document.ts';
import { needsOf } from '../form/needs.ts';
import type { StoredRecording } from './files.ts';
import { change, redo, startHistory, undo } from './history.ts';
import { emptyMap, mapOf } from './maps.ts';
import { isSameDrive, needsReweighing } from './staleness.ts';
import type { OpenedJob } from './opened.ts';
import { settings } from './settings.svelte.ts';

export type Work =
  | { readonly kind: 'idle' }
  | { readonly kind: 'analysing'; readonly progress: Progress | null; readonly startedMs: number }
  | { readonly kind: 'failed'; readonly problem: Problem };

export type Stage = 'empty' | 'form' | 'working' | 'failed' | 'answer';

interface LoadOptions {
  readonly isDemo?: boolean;
  /** What had happened to the job before. */
  readonly events?: readonly JobEvent[];
  /** The document before its last changes, to go back to. */
  readonly before?: JobDocument;
}

const startWorker = (): Worker => new Worker(new URL('../../worker/worker.ts', import.meta.url), { type: 'module' });

export class Session {
  readonly client = new WorkerClient(startWorker);
  #history = $state.raw(startHistory<JobDocument>(emptyDocument()));
  /** Stands for the open job: another object for another job. */
  key = $state.raw<object>({});
  /** What had happened to the open job before it was opened from a file. */
  pastEvents: readonly JobEvent[] = [];
  /** Recordings at hand, by the file name in the job. Kept after a run is removed, so that undo finds them. */
  files = $state.raw<ReadonlyMap<string, StoredRecording>>(emptyMap());
  facts = $state.raw<ReadonlyMap<string, RecordingFacts>>(emptyMap());
  /** How far the reading of each recording is, 0..1, by file name. */
  reading = $state.raw<ReadonlyMap<string, number>>(emptyMap());
  work = $state.raw<Work>({ kind: 'idle' });
  analysis = $state.raw<Analysis | null>(null);
  /** The job the answer belongs to. */
  analysed = $state.raw<Job | null>(null);
  /** The form is shown although there is an answer. */
  editing = $state(false);
  /** Files that could not be opened at all. */
  refused = $state.raw<readonly Problem[]>([]);
  /** Recordings that belong to no job that could be opened: the reader says what becomes of them. */
  held = $state.raw<readonly File[]>([]);
  /** Jobs opened along with this one, on their way into the job book. */
  aside = $state.raw<readonly OpenedJob[]>([]);
  /** The document as a demo was opened with; null for a job of the reader's own. */
  #sample = $state.raw<JobDocument | null>(null);
  #abort: AbortController | null = null;

  readonly document = $derived(this.#history.present);
  readonly job = $derived(this.document.job);
  readonly canUndo = $derived(this.#history.past.length > 0);
  readonly canRedo = $derived(this.#history.future.length > 0);
  /** A demo in which nothing was changed yet, so that nothing of it need be kept. */
  readonly isUntouchedDemo = $derived(this.#sample !== null && this.document === this.#sample);
  readonly needs = $derived(needsOf(this.document, this.facts, settings.units));
  readonly stale = $derived(this.analysed !== null && !isSameDrive(this.analysed, this.job));
  readonly stage = $derived.by((): Stage => {
    if (this.work.kind === 'analysing') return 'working';
    if (this.work.kind === 'failed') return 'failed';
    if (this.analysis && !this.editing) return 'answer';
    return this.job.runs.length > 0 || this.canUndo ? 'form' : 'empty';
  });

  /** Replaces the open job by another. */
  load(
    document: JobDocument,
    recordings: readonly StoredRecording[],
    { isDemo = false, events = [], before }: LoadOptions = {},
  ): void {
    this.cancel();
    this.key = {};
    this.#sample = isDemo ? document : null;
    this.pastEvents = events;
    this.#history = before ? change(startHistory(before), document, 'before', 0) : startHistory(document);
    this.files = mapOf(recordings.map((recording) => [recording.name, recording]));
    this.facts = emptyMap();
    this.reading = emptyMap();
    this.analysis = null;
    this.analysed = null;
    this.editing = false;
    this.work = { kind: 'idle' };
    this.refused = [];
    this.held = [];
  }

  /** Takes over what another tab made of the same job; it can be undone like any change. */
  adopt(document: JobDocument, recordings: readonly StoredRecording[]): void {
    this.edit('other tab', () => document);
    this.files = mapOf([...this.files, ...recordings.map((recording) => [recording.name, recording] as const)]);
  }

  /** Makes a demo the reader's own job. */
  adoptDemo(): void {
    this.#sample = null;
  }

  edit(what: string, make: (document: JobDocument) => JobDocument): void {
    this.#history = change(this.#history, make(this.document), what, Date.now());
    void this.#follow();
  }

  /** Fills fields with what the job already holds, to be looked at: nothing to undo, and a demo stays untouched. */
  show(make: (document: JobDocument) => JobDocument): void {
    const isUntouched = this.isUntouchedDemo;
    const present = make(this.document);
    this.#history = { ...this.#history, present };
    if (isUntouched) this.#sample = present;
  }

  editJob(what: string, make: (job: Job) => Job): void {
    this.edit(what, (document) => ({ ...document, job: make(document.job) }));
  }

  type(field: FieldSpec, text: string): void {
    this.edit(field.id, (document) => typeInto(document, field, text, settings.units));
  }

  leave(field: FieldSpec): void {
    this.edit(field.id, (document) => leaveField(document, field, settings.units));
  }

  undo(): void {
    this.#history = undo(this.#history);
    void this.#follow();
  }

  redo(): void {
    this.#history = redo(this.#history);
    void this.#follow();
  }

  removeRun(index: number): void {
    this.edit(`remove ${index}`, (document) => removeRun(document, index));
  }

  measure(measurements: readonly Measurement[]): void {
    this.editJob('measurements', (job) => ({ ...job, measurements }));
  }

  /** Makes the answer. */
  async analyse(): Promise<void> {
    const sources = this.sources();
    if (sources === null) return;
    this.#abort?.abort();
    const abort = new AbortController();
    this.#abort = abort;
    const { job } = this;
    const startedMs = performance.now();
    this.work = { kind: 'analysing', progress: null, startedMs };
    const result = await this.client.ask(
      { kind: 'analyse', of: { job, sources } },
      {
        signal: abort.signal,
        onProgress: (progress) => (this.work = { kind: 'analysing', progress, startedMs }),
      },
    );
    if (this.#abort !== abort) return;
    this.#abort = null;
    this.#finish(job, result);
  }

  /** Keeps the answer in step with measurements, work done and limits, which need no new reading. Called after changes. */
  async #follow(): Promise<void> {
    const { job, analysis, analysed } = this;
    if (!analysis || !analysed || !needsReweighing(analysed, job)) return;
    const { report, bases } = analysis;
    const result = await this.client.ask({ kind: 'reweigh', report, bases, job });
    // Another change, or a new answer, came in between: that one has followed or will.
    if (!result.ok || this.job !== job || this.analysis !== analysis) return;
    this.analysis = { ...analysis, report: result.value };
    this.analysed = job;
  }

  /** Stops what is under way and goes back to where it was started. */
  cancel(): void {
    this.#abort?.abort();
    this.#abort = null;
    if (this.work.kind !== 'idle') this.work = { kind: 'idle' };
  }

  /** The recordings in run order, or null where one is not at hand. */
  sources(): readonly RecordingSource[] | null {
    const sources = this.job.runs.map((run): RecordingSource | null => {
      const file = this.files.get(run.file);
      return file ? sourceOf(file, run) : null;
    });
    return sources.every((source) => source !== null) ? sources : null;
  }

  #finish(job: Job, result: Result<Analysis>): void {
    if (!result.ok) {
      this.work = result.problem.code === CANCELLED ? { kind: 'idle' } : { kind: 'failed', problem: result.problem };
      return;
    }
    this.work = { kind: 'idle' };
    this.analysis = result.value;
    this.analysed = job;
    this.editing = false;
  }
}

/** The same bytes with the same given rate and unit have the same key, so that the worker need not read them twice. */
export function sourceOf(file: StoredRecording, said: Given = {}): RecordingSource {
  const { id, name, blob } = file;
  const given = givenOf(said);
  return { key: [id, given.samplingRateHz, given.accelerationUnit].join('@'), name, blob, ...given };
}
