import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import type { Book } from '../../src/app/book/book.ts';
import type { Comparing } from '../../src/app/compare/comparing.svelte.ts';
import { emptyJob } from '../../src/app/form/document.ts';
import type { Session } from '../../src/app/state/session.svelte.ts';
import type { Comparison } from '../../src/core/diagnosis/compare/comparison.ts';
import type { Job } from '../../src/core/job/job.ts';
import { success } from '../../src/core/note.ts';

const comparison: Comparison = {
  schemaVersion: 1,
  verdict: 'gone',
  sentence: 'Driveshaft 2× is gone.',
  why: 'Level −14 dB.',
  pairs: [],
  notes: [],
};
const both: Job = { ...emptyJob(), runs: [{ file: 'a.csv' }, { file: 'p.csv', stage: 'proof' }] };

/** A session as far as comparing looks at it; its worker answers at once. */
function makeSession(job: Job) {
  const ask = vi.fn(() => Promise.resolve(success(comparison)));
  const files = new Map(job.runs.map(({ file }) => [file, { id: file, name: file, blob: new Blob() }]));
  const session = { key: {}, job, files, client: { ask }, sources: () => [] };
  return { session, ask };
}

describe('what is compared', () => {
  let make: (session: object, told?: (comparison: Comparison) => void) => Comparing;
  beforeAll(async () => {
    // The reader's settings ask the browser as soon as they are loaded.
    vi.stubGlobal('matchMedia', () => ({ matches: false, addEventListener: () => undefined }));
    vi.stubGlobal('navigator', { language: 'en-US' });
    vi.stubGlobal('location', { hash: '' });
    vi.stubGlobal('addEventListener', () => undefined);
    const module = await import('../../src/app/compare/comparing.svelte.ts');
    make = (session, told) => new module.Comparing(session as Session, {} as Book, told);
  });
  afterAll(() => void vi.unstubAllGlobals());

  it('loses its verdict as soon as another side is chosen', async () => {
    const comparing = make(makeSession(both).session);
    await comparing.run();
    expect(comparing.result).toBe(comparison);
    comparing.choose('before', 'job:other');
    expect(comparing.before).toBe('job:other');
    expect(comparing.result).toBeNull();
  });

  it('is refused in a sentence where both sides are the same, and nothing is asked', async () => {
    const { session, ask } = makeSession(both);
    const comparing = make(session);
    comparing.choose('before', 'proof');
    expect(comparing.refusal).toMatch(/same runs/u);
    await comparing.run();
    expect(ask).not.toHaveBeenCalled();
    expect(comparing.result).toBeNull();
  });

  it('is refused where there is no proving run', () => {
    const comparing = make(makeSession({ ...both, runs: [{ file: 'a.csv' }] }).session);
    expect(comparing.refusal).toMatch(/no proving run/u);
    comparing.choose('after', 'job:other');
    expect(comparing.refusal).toBeNull();
  });

  it('is told of where the open job is a side of it, and only then', async () => {
    const told = vi.fn();
    const comparing = make(makeSession(both).session, told);
    await comparing.run();
    expect(told).toHaveBeenCalledExactlyOnceWith(comparison);
    expect(comparing.ofOpenJob).toBe(comparison);
    comparing.choose('before', 'job:one');
    comparing.choose('after', 'job:other');
    expect(comparing.ofOpenJob).toBeNull();
  });

  it('is begun by itself once for what is asked, not again after it was cancelled', async () => {
    const { session, ask } = makeSession(both);
    const comparing = make(session);
    comparing.begin();
    comparing.cancel();
    comparing.begin();
    await new Promise((resolve) => setTimeout(resolve));
    expect(ask).toHaveBeenCalledTimes(1);
    expect(comparing.isWorking).toBe(false);
  });
});
