/** Worker threads that share a list of files; lines come out in the list's order. A thread that dies is replaced. */
import { Worker, isMainThread, parentPort, workerData } from 'node:worker_threads';
import type { Io } from '../io.ts';
import type { BatchLine } from './batch-file.ts';
import { batchLine, faultLine, readBatchArguments } from './batch-file.ts';

/** Files begun ahead of the first unfinished one, for each thread; bounds the lines that wait for their turn. */
const AHEAD_PER_THREAD = 32;

export interface Pool {
  /** '-' among them is left to `ofInput`: standard input belongs to the main thread. */
  readonly files: readonly string[];
  /** The words of the command, which each thread reads for itself. */
  readonly args: readonly string[];
  readonly threads: number;
  readonly ofInput: (index: number) => Promise<BatchLine>;
  /** Called once for each file, in no order. */
  readonly onLine: (index: number, line: BatchLine) => void;
  /** Index of the first file whose line has not been printed. */
  readonly printed: () => number;
}

interface Answer {
  readonly index: number;
  readonly line: BatchLine;
}

/** The program starts itself again as a thread: it is one file. */
const program = new URL(import.meta.url);

/** Works through the files; resolves when every file has its line. */
export async function workThrough({ files, args, threads, ofInput, onLine, printed }: Pool): Promise<void> {
  const queue = [...files.keys()].filter((index) => files[index] !== '-');
  let next = 0;
  /** Threads that wait because too many lines wait for their turn. */
  let waiting: (() => void)[] = [];
  const take = async (): Promise<number | undefined> => {
    for (;;) {
      const index = queue[next];
      if (index === undefined) return undefined;
      if (index - printed() <= AHEAD_PER_THREAD * threads) {
        next += 1;
        return index;
      }
      await new Promise<void>((resolve) => waiting.push(resolve));
    }
  };
  const done = (index: number, line: BatchLine): void => {
    onLine(index, line);
    const woken = waiting;
    waiting = [];
    for (const wake of woken) wake();
  };
  const lane = async (): Promise<void> => {
    let thread: Thread | null = null;
    for (let index = await take(); index !== undefined; index = await take()) {
      thread ??= startThread(args);
      const answer = await thread.work(index);
      if (typeof answer === 'string') thread = null;
      done(index, typeof answer === 'string' ? faultLine(files[index] ?? '', answer) : answer);
    }
    await thread?.end();
  };
  const input = files.indexOf('-');
  const inputLane = async (): Promise<void> => done(input, await ofInput(input));
  await Promise.all([
    ...(input < 0 ? [] : [inputLane()]),
    ...Array.from({ length: Math.min(threads, queue.length) }, lane),
  ]);
}

interface Thread {
  /** The file's line, or why the thread died over it. */
  readonly work: (index: number) => Promise<BatchLine | string>;
  readonly end: () => Promise<unknown>;
}

function startThread(args: readonly string[]): Thread {
  const worker = new Worker(program, { workerData: { args } });
  let tell: (answer: BatchLine | string) => void = () => undefined;
  worker.on('message', ({ line }: Answer) => tell(line));
  worker.on('error', (error) => tell(error instanceof Error ? error.message : String(error)));
  worker.on('exit', (code) => tell(`the thread ended with status ${code}`));
  return {
    work: (index) =>
      new Promise((resolve) => {
        tell = resolve;
        worker.postMessage(index);
      }),
    end: () => worker.terminate(),
  };
}

export const isBatchThread = !isMainThread;

/** The thread's side: takes an index, answers with that file's line. */
export function serveBatch(io: Io): void {
  const given = readBatchArguments((workerData as { args: readonly string[] }).args);
  parentPort?.on('message', (index: number) => {
    void batchLine(given, index, io).then((line) => parentPort?.postMessage({ index, line } satisfies Answer));
  });
}
