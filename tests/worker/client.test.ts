import { describe, expect, it, vi } from 'vitest';
import type { FromWorker, ToWorker } from '../../src/worker/protocol.ts';
import type { WorkerLike } from '../../src/worker/client.ts';
import { CANCELLED, WorkerClient } from '../../src/worker/client.ts';
import { buffersOf } from '../../src/worker/transfer.ts';
import { makeAnalysis } from '../app/fixture.ts';
import { emptyJob } from '../../src/app/form/document.ts';

/** A worker that answers as told. */
class FakeWorker implements WorkerLike {
  onmessage: WorkerLike['onmessage'] = null;
  onerror: WorkerLike['onerror'] = null;
  onmessageerror: WorkerLike['onmessageerror'] = null;
  ended = false;
  readonly asked: ToWorker[] = [];

  postMessage(message: ToWorker): void {
    this.asked.push(message);
  }
  terminate(): void {
    this.ended = true;
  }
  say(message: FromWorker): void {
    this.onmessage?.call(this as never, { data: message } as MessageEvent);
  }
  die(message: string): void {
    this.onerror?.call(this as never, { message } as ErrorEvent);
  }
}

function makeClient(idleMs?: number): { client: WorkerClient; workers: FakeWorker[] } {
  const workers: FakeWorker[] = [];
  const client = new WorkerClient(() => {
    const worker = new FakeWorker();
    workers.push(worker);
    return worker;
  }, idleMs);
  return { client, workers };
}

describe('the worker client', () => {
  it('passes progress on and ends with the analysis', async () => {
    const { client, workers } = makeClient();
    const seen: number[] = [];
    const done = client.ask(
      { kind: 'analyse', of: { job: emptyJob(), sources: [] } },
      { onProgress: ({ fraction }) => seen.push(fraction) },
    );
    const [worker] = workers;
    worker!.say({ kind: 'progress', request: 1, progress: { step: 'spectra', fraction: 0.5, text: '' } });
    worker!.say({ kind: 'answer', request: 1, answer: makeAnalysis() });
    expect((await done).ok).toBe(true);
    expect(seen).toEqual([0.5]);
  });

  it('ends the worker on cancel, and starts another for the next request', async () => {
    const { client, workers } = makeClient();
    const abort = new AbortController();
    const done = client.ask({ kind: 'analyse', of: { job: emptyJob(), sources: [] } }, { signal: abort.signal });
    abort.abort();
    expect(await done).toMatchObject({ ok: false, problem: { code: CANCELLED } });
    expect(workers[0]!.ended).toBe(true);
    void client.ask({ kind: 'read', sources: [] });
    expect(workers).toHaveLength(2);
  });

  it('does not start at all when cancelled beforehand', async () => {
    const { client, workers } = makeClient();
    const result = await client.ask({ kind: 'read', sources: [] }, { signal: AbortSignal.abort() });
    expect(result.ok).toBe(false);
    expect(workers).toHaveLength(0);
  });

  it('turns the worker’s death into a problem for everything under way', async () => {
    const { client, workers } = makeClient();
    const both = [
      client.ask({ kind: 'read', sources: [] }),
      client.ask({ kind: 'analyse', of: { job: emptyJob(), sources: [] } }),
    ];
    workers[0]!.die('out of memory');
    for (const result of await Promise.all(both)) {
      expect(result).toMatchObject({ ok: false, problem: { code: 'worker-died' } });
      expect(!result.ok && result.problem.message).toContain('out of memory');
    }
  });

  it('lets an idle worker go', async () => {
    vi.useFakeTimers();
    const { client, workers } = makeClient(1000);
    const done = client.ask({ kind: 'read', sources: [] });
    workers[0]!.say({ kind: 'answer', request: 1, answer: [] });
    await done;
    vi.advanceTimersByTime(1001);
    expect(workers[0]!.ended).toBe(true);
    vi.useRealTimers();
  });

  it('ignores answers to requests it no longer waits for', () => {
    const { client, workers } = makeClient();
    void client.ask({ kind: 'read', sources: [] });
    expect(() => workers[0]!.say({ kind: 'answer', request: 99, answer: [] })).not.toThrow();
  });
});

describe('what is handed over', () => {
  it('is every buffer once', () => {
    const shared = new Float64Array(4);
    const other = new Float32Array(2);
    expect(buffersOf({ a: shared, b: [shared, { c: other }], d: 'x', e: null })).toEqual([shared.buffer, other.buffer]);
  });
});
