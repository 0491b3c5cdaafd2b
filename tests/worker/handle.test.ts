import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { RequestHandler } from '../../src/worker/handle.ts';
import type { AnswerOf, FromWorker, RecordingSource, SourcedJob, TaskKind } from '../../src/worker/protocol.ts';
import { readJob } from '../../src/core/job/job-file.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';
import { buffersOf } from '../../src/worker/transfer.ts';
import { madeJob } from '../support/made-job.ts';
import { must } from '../support/must.ts';

const folder = new URL('../../recordings/', import.meta.url);
const source = (name: string): RecordingSource => ({
  key: name,
  name,
  blob: new Blob([readFileSync(new URL(name, folder))]),
});

/** The answer that came last. */
function answerOf<K extends TaskKind>(said: readonly FromWorker[]): AnswerOf[K] {
  const last = said.at(-1);
  if (last?.kind !== 'answer') throw new Error(JSON.stringify(last));
  return last.answer as AnswerOf[K];
}

function demoJob(name: string): SourcedJob {
  const job = must(readJob(readFileSync(new URL(name, folder), 'utf8'), name));
  return { job: job, sources: job.runs.map((run) => source(run.file)) };
}

describe('the worker’s side', () => {
  it('says what is in a recording, or why not, one fact a file', async () => {
    const said: FromWorker[] = [];
    const broken: RecordingSource = { key: 'b', name: 'b.csv', blob: new Blob(['hello\n']) };
    await new RequestHandler((message) => said.push(message)).handle({
      request: 7,
      task: { kind: 'read', sources: [source('joint-replaced-cruise.csv'), broken] },
    });
    const facts = answerOf<'read'>(said);
    expect(said.at(-1)?.request).toBe(7);
    expect(facts[0]).toMatchObject({ axes: 3, durationS: expect.closeTo(40, 0) });
    expect(facts[1]?.problem?.remedy).toBeTruthy();
  });

  it('analyses a demo job with progress that never runs back, then weighs causes anew within a few milliseconds', async () => {
    const said: FromWorker[] = [];
    const handler = new RequestHandler((message) => said.push(message));
    const of = demoJob('joint-replaced.job.json');
    await handler.handle({ request: 1, task: { kind: 'analyse', of } });
    const fractions = said.flatMap((message) => (message.kind === 'progress' ? [message.progress.fraction] : []));
    expect(fractions.every((fraction, at) => fraction >= (fractions[at - 1] ?? 0))).toBe(true);
    expect(Math.max(...fractions)).toBeLessThanOrEqual(1);
    const { report, bases } = answerOf<'analyse'>(said);
    const [finding] = report.findings;
    expect(finding?.label).toBe('driveshaft 1×');
    const [check] = report.checks;
    const measurements = [{ kind: 'observation', checkId: check!.id, outcome: 'wrong' }] as const;
    const start = performance.now();
    await handler.handle({ request: 2, task: { kind: 'reweigh', report, bases, job: { ...of.job, measurements } } });
    expect(performance.now() - start).toBeLessThan(500);
    const after = answerOf<'reweigh'>(said).findings[0]!;
    expect(after.causes.map(({ probability }) => probability)).not.toEqual(
      finding!.causes.map((cause) => cause.probability),
    );
    expect(after.causes[0]?.probabilityBefore).toBeDefined();
  });

  it('gives the same answer when asked again, though the arrays of the first were given away', async () => {
    // A tone of 20 Hz at a speed that holds perfectly still.
    const rows = Array.from({ length: 1500 }, (_, i) => {
      const shake = 0.3 * Math.sin((2 * Math.PI * 20 * i) / 200) + 0.01 * Math.sin(i * i);
      return `${(i / 200).toFixed(3)},${(9.81 + shake).toFixed(5)}\n`;
    });
    const vehicle: Vehicle = { layout: 'rear-drive', tire: { kind: 'size', size: 'P235/75R15' }, axleRatio: 3.55 };
    const of: SourcedJob = {
      job: madeJob(vehicle, { file: 'still.csv', speedMps: 20 }),
      sources: [{ key: 'still', name: 'still.csv', blob: new Blob(['time (s),az (m/s²)\n', ...rows]) }],
    };
    const said: FromWorker[] = [];
    // As worker.ts posts.
    const handler = new RequestHandler((message) =>
      said.push(structuredClone(message, { transfer: message.kind === 'answer' ? buffersOf(message.answer) : [] })),
    );
    await handler.handle({ request: 1, task: { kind: 'analyse', of } });
    const first = answerOf<'analyse'>(said);
    await handler.handle({ request: 2, task: { kind: 'analyse', of } });
    expect(answerOf<'analyse'>(said)).toEqual(first);
  });

  it('reads two jobs to be compared with progress that never runs back', async () => {
    const rows = Array.from({ length: 200 }, (_, i) => `${(i / 100).toFixed(2)},${Math.sin(i).toFixed(4)}`);
    const blob = new Blob([`time (s),az (m/s²)\n${rows.join('\n')}\n`]);
    const sideOf = (key: string): SourcedJob => ({
      job: madeJob({ layout: 'rear-drive' }, { file: key }),
      sources: [{ key, name: `${key}.csv`, blob }],
    });
    const said: FromWorker[] = [];
    await new RequestHandler((message) => said.push(message)).handle({
      request: 1,
      task: { kind: 'compare', before: sideOf('before'), after: sideOf('after') },
    });
    const fractions = said.flatMap((message) => (message.kind === 'progress' ? [message.progress.fraction] : []));
    expect(fractions.length).toBeGreaterThan(2);
    expect(fractions).toEqual(fractions.toSorted((a, b) => a - b));
  });

  it('compares the complaint and the proof of one job', async () => {
    const said: FromWorker[] = [];
    const { job, sources } = demoJob('launch.job.json');
    const [asFound] = job.runs;
    const runs = [asFound!, { ...asFound!, name: 'Again', stage: 'proof' as const }];
    const before = { job: { ...job, runs }, sources: [sources[0]!, sources[0]!] };
    await new RequestHandler((message) => said.push(message)).handle({ request: 1, task: { kind: 'compare', before } });
    expect(answerOf<'compare'>(said).pairs.length).toBeGreaterThan(0);
  });

  it('ends in a problem, not in silence, when something throws', async () => {
    const said: FromWorker[] = [];
    const stream = (): never => {
      throw new Error('disk gone');
    };
    const blob = { stream, size: 1 } as unknown as Blob;
    await new RequestHandler((message) => said.push(message)).handle({
      request: 3,
      task: {
        kind: 'analyse',
        of: {
          job: madeJob({ layout: 'rear-drive' }, { file: 'a' }),
          sources: [{ key: 'a', name: 'a', blob }],
        },
      },
    });
    const last = said.at(-1);
    expect(last).toMatchObject({ kind: 'problem', request: 3 });
  });
});
