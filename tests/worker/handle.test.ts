import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RequestHandler } from '../../src/worker/handle.ts';
import type { FromWorker, RecordingSource } from '../../src/worker/protocol.ts';
import { readJob } from '../../src/core/job/job-file.ts';

const folder = new URL('../../recordings/', import.meta.url);
const source = (name: string): RecordingSource => ({
  key: name,
  name,
  blob: new Blob([readFileSync(new URL(name, folder))]),
});

describe('the worker’s side', () => {
  it('says what is in a recording, or why not, one fact a file', async () => {
    const said: FromWorker[] = [];
    const broken: RecordingSource = { key: 'b', name: 'b.csv', blob: new Blob(['hello\n']) };
    await new RequestHandler((message) => said.push(message)).handle({
      kind: 'read',
      request: 7,
      sources: [source('joint-replaced-cruise.csv'), broken],
    });
    const last = said.at(-1);
    if (last?.kind !== 'facts') throw new Error('no facts');
    expect(last.request).toBe(7);
    expect(last.facts[0]).toMatchObject({ axes: 3, durationS: expect.closeTo(40, 0) });
    expect(last.facts[1]?.problem?.remedy).toBeTruthy();
  });

  it('analyses a demo job with progress that never runs back', async () => {
    const said: FromWorker[] = [];
    const job = readJob(readFileSync(new URL('joint-replaced.job.json', folder), 'utf8'), 'joint-replaced.job.json');
    if (!job.ok) throw new Error(job.problem.message);
    const sources = job.value.runs.map((run) => source(run.file));
    await new RequestHandler((message) => said.push(message)).handle({
      kind: 'analyse',
      request: 1,
      job: job.value,
      sources,
    });
    const fractions = said.flatMap((message) => (message.kind === 'progress' ? [message.progress.fraction] : []));
    expect(fractions.every((fraction, at) => fraction >= (fractions[at - 1] ?? 0))).toBe(true);
    expect(Math.max(...fractions)).toBeLessThanOrEqual(1);
    const last = said.at(-1);
    expect(last?.kind === 'analysis' && last.analysis.report.findings[0]?.label).toBe('driveshaft 1×');
  });

  it('ends in a problem, not in silence, when something throws', async () => {
    const said: FromWorker[] = [];
    const stream = (): never => {
      throw new Error('disk gone');
    };
    const blob = { stream, size: 1 } as unknown as Blob;
    await new RequestHandler((message) => said.push(message)).handle({
      kind: 'analyse',
      request: 3,
      job: { schemaVersion: 1, vehicle: { layout: 'rear-drive' }, work: [], runs: [{ file: 'a' }], measurements: [] },
      sources: [{ key: 'a', name: 'a', blob }],
    });
    const last = said.at(-1);
    expect(last).toMatchObject({ kind: 'problem', request: 3 });
  });
});
