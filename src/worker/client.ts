/** The page's side of the worker: one promise a request, progress, cancel by termination, and no silent death. */
import type { Problem, Result } from '../core/note.ts';
import { failure, success } from '../core/note.ts';
import type { Progress } from '../core/report/analysis.ts';
import type { AnswerOf, FromWorker, Task, TaskKind, ToWorker } from './protocol.ts';

/** The parts of Worker the client uses; a test passes a stand-in. */
export type WorkerLike = Pick<Worker, 'postMessage' | 'terminate' | 'onmessage' | 'onerror' | 'onmessageerror'>;

export interface RequestOptions {
  readonly onProgress?: (progress: Progress) => void;
  readonly signal?: AbortSignal;
}

interface Pending {
  readonly onProgress: ((progress: Progress) => void) | undefined;
  readonly settle: (result: Result<AnswerOf[TaskKind]>) => void;
}

/** An unused worker holds the recordings it has read; after this long they are let go. */
const IDLE_MS = 10 * 60_000;

export const CANCELLED = 'cancelled';

export class WorkerClient {
  readonly #makeWorker: () => WorkerLike;
  readonly #idleMs: number;
  readonly #pending = new Map<number, Pending>();
  #worker: WorkerLike | null = null;
  #idle: ReturnType<typeof setTimeout> | undefined;
  #lastRequest = 0;

  constructor(makeWorker: () => WorkerLike, idleMs = IDLE_MS) {
    this.#makeWorker = makeWorker;
    this.#idleMs = idleMs;
  }

  /** Has a task done. Ends in the answer or in a problem, never in silence. */
  ask<K extends TaskKind>(
    task: Extract<Task, { kind: K }>,
    options: RequestOptions = {},
  ): Promise<Result<AnswerOf[K]>> {
    const { onProgress, signal } = options;
    if (signal?.aborted) return Promise.resolve(failure(cancelled()));
    clearTimeout(this.#idle);
    const request = ++this.#lastRequest;
    return new Promise((resolve) => {
      // Work under way cannot be interrupted from outside, so that a cancel ends the worker itself.
      const abort = (): void => this.end();
      signal?.addEventListener('abort', abort, { once: true });
      this.#pending.set(request, {
        onProgress,
        settle: (result) => {
          signal?.removeEventListener('abort', abort);
          // The worker answers a task of one kind with the answer of that kind.
          resolve(result as Result<AnswerOf[K]>);
        },
      });
      (this.#worker ??= this.#start()).postMessage({ request, task } satisfies ToWorker);
    });
  }

  /** Ends the worker. Whatever is under way ends with the given problem, by default as cancelled. */
  end(problem: Problem = cancelled()): void {
    clearTimeout(this.#idle);
    this.#worker?.terminate();
    this.#worker = null;
    const pending = [...this.#pending.values()];
    this.#pending.clear();
    for (const { settle } of pending) settle(failure(problem));
  }

  #start(): WorkerLike {
    const worker = this.#makeWorker();
    worker.onmessage = (event: MessageEvent<FromWorker>) => this.#receive(event.data);
    worker.onerror = (event: ErrorEvent) => this.end(died(event.message));
    worker.onmessageerror = () => this.end(died('a message could not be read'));
    return worker;
  }

  #receive(message: FromWorker): void {
    const pending = this.#pending.get(message.request);
    if (!pending) return;
    if (message.kind === 'progress') {
      pending.onProgress?.(message.progress);
      return;
    }
    this.#pending.delete(message.request);
    pending.settle(message.kind === 'answer' ? success(message.answer) : failure(message.problem));
    if (this.#pending.size === 0) this.#idle = setTimeout(() => this.end(), this.#idleMs);
  }
}

function cancelled(): Problem {
  return { code: CANCELLED, message: 'The work was cancelled.', remedy: 'Start it again when you are ready.' };
}

function died(what: string | undefined): Problem {
  return {
    code: 'worker-died',
    message: `The background work stopped unexpectedly${what ? ` (${what})` : ''}.`,
    remedy: 'Try once more. If it happens again, use a shorter piece of the recording: memory may have run out.',
  };
}
