/** What the worker does with a request. Knows no worker: posts through the function it is given. */
import { analyse } from '../core/analyse.ts';
import type { Problem, Result } from '../core/note.ts';
import { failure, success } from '../core/note.ts';
import { readRecording } from '../core/reading/read-recording.ts';
import type { Recording } from '../core/reading/recording.ts';
import type { Progress } from '../core/report/analysis.ts';
import type { AnalyseRequest, FromWorker, ReadRequest, RecordingSource, ToWorker } from './protocol.ts';
import type { RecordingFacts } from './recording-facts.ts';
import { factsOf, factsOfProblem } from './recording-facts.ts';
import { sourceFileOf } from './source-file.ts';

export type Post = (message: FromWorker) => void;
type ReadProgress = (fraction: number, text: string) => void;

/** Reading's share of the whole work, for the progress bar; measured on the demo jobs. */
const READING_SHARE = 0.4;

/** Answers requests one after the other, and keeps the recordings it has read. */
export class RequestHandler {
  readonly #kept = new Map<string, Recording>();
  readonly #post: Post;

  constructor(post: Post) {
    this.#post = post;
  }

  /** Always ends in exactly one 'facts', 'analysis' or 'problem' message. */
  async handle(message: ToWorker): Promise<void> {
    try {
      this.#post(message.kind === 'read' ? await this.#facts(message) : await this.#analysis(message));
    } catch (error) {
      this.#post({ kind: 'problem', request: message.request, problem: problemOfBug(error) });
    }
  }

  async #facts({ request, sources }: ReadRequest): Promise<FromWorker> {
    const facts: RecordingFacts[] = [];
    for (const [index, source] of sources.entries()) {
      const result = await this.#read(source, (within, text) =>
        this.#progress(request, { step: 'reading', fraction: (index + within) / sources.length, text }),
      );
      facts.push(
        result.ok ? factsOf(source.key, result.value) : factsOfProblem(source.key, source.name, result.problem),
      );
    }
    return { kind: 'facts', request, facts };
  }

  async #analysis({ request, job, sources }: AnalyseRequest): Promise<FromWorker> {
    const unread = sources.some((source) => !this.#kept.has(source.key));
    const share = unread ? READING_SHARE : 0;
    const recordings: Recording[] = [];
    for (const [index, source] of sources.entries()) {
      const result = await this.#read(source, (within, text) =>
        this.#progress(request, { step: 'reading', fraction: (share * (index + within)) / sources.length, text }),
      );
      if (!result.ok) return { kind: 'problem', request, problem: result.problem };
      recordings.push(result.value);
    }
    const result = analyse(job, recordings, {
      onProgress: (progress: Progress) =>
        this.#progress(request, { ...progress, fraction: share + (1 - share) * progress.fraction }),
    });
    return result.ok
      ? { kind: 'analysis', request, analysis: result.value }
      : { kind: 'problem', request, problem: result.problem };
  }

  async #read(source: RecordingSource, onProgress: ReadProgress): Promise<Result<Recording>> {
    const known = this.#kept.get(source.key);
    if (known) return success(known);
    const options = source.samplingRateHz === undefined ? {} : { samplingRateHz: source.samplingRateHz };
    const result = await readRecording(sourceFileOf(source.name, source.blob), options, (fraction) =>
      onProgress(fraction, `reading ${source.name}`),
    );
    if (!result.ok) return failure({ file: source.name, ...result.problem });
    this.#kept.set(source.key, result.value);
    return result;
  }

  #progress(request: number, progress: Progress): void {
    this.#post({ kind: 'progress', request, progress });
  }
}

/** A bug must end in a message too, not in a bar that never moves. */
function problemOfBug(error: unknown): Problem {
  const what = error instanceof Error ? error.message : String(error);
  return {
    code: 'internal-error',
    message: `perrev made a mistake of its own while working on this job: ${what}.`,
    remedy: 'The job is kept. Please report the sentence above together with the recording, if you can share it.',
  };
}
