/** The page's side of making a recording. */
import type { ClassAnswer } from './class-answer.ts';
import type { ClassCase } from './class-case.ts';

export interface MadeRecording {
  readonly csv: string;
  readonly samples: number;
  readonly answer: ClassAnswer;
}

const startWorker = (): Worker => new Worker(new URL('./recording-worker.ts', import.meta.url), { type: 'module' });

/** Rejects where the worker dies or the signal gives up. */
export function makeRecording(one: ClassCase, signal: AbortSignal, start = startWorker): Promise<MadeRecording> {
  const worker = start();
  const made = new Promise<MadeRecording>((resolve, reject) => {
    worker.onmessage = (event: MessageEvent<MadeRecording>) => resolve(event.data);
    worker.onerror = (event) => reject(new Error(event.message));
    signal.addEventListener('abort', () => reject(new Error('given up')));
  });
  worker.postMessage(one);
  return made.finally(() => worker.terminate());
}
