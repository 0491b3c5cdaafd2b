import { readdirSync, readFileSync } from 'node:fs';
import { basename, join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { readJob } from '../../src/core/job/job-file.ts';
import type { Analysis } from '../../src/core/report/analysis.ts';
import type { Report } from '../../src/core/report/report.ts';
import { reportText } from '../../src/core/report/text.ts';
import { RequestHandler } from '../../src/worker/handle.ts';
import type { FromWorker } from '../../src/worker/protocol.ts';
import { differences, golden } from '../golden/differences.ts';
import { figuresOf, PINNED } from '../golden/report-figures.ts';
import { expectPlainWords, perrev } from './run-cli.ts';
import { must } from '../support/must.ts';

const jobs = readdirSync('recordings').filter((name) => name.endsWith('.job.json'));

const told = new Map<string, Report>();
/** The JSON report of every demo, from one run of the program. */
beforeAll(() => {
  const { stdout } = perrev(['batch', ...jobs.map((job) => `recordings/${job}`), '--parallel', '1']);
  for (const [i, line] of stdout.trim().split('\n').entries())
    told.set(jobs[i]!, (JSON.parse(line) as { report: Report }).report);
});
const reportOf = (job: string): Report => told.get(job)!;

/**
 * What was put into each demo recording (tests/recordings/demo-jobs.ts, from which it is simulated): the part and order
 * that shake, and at the complaint's speed where on the frequency axis, from speed, rolling circumference and ratio by
 * hand: f = v / U · ratio · order.
 */
const TRUTH: Readonly<Record<string, { readonly label: string | null; readonly hz?: number }>> = {
  'joint-replaced': { label: 'driveshaft 1×', hz: ((62.2 * 0.44704) / (2.4485 * 0.994)) * 3.73 },
  'dropped-mount': { label: 'driveshaft 2×' },
  'tire-shake': { label: 'tire 1×' },
  misfire: { label: 'engine ½×' },
  'direct-gear': { label: 'driveshaft 1×' },
  sound: { label: null },
  'coast-down': { label: 'driveshaft 1×' },
  'phone-100hz': { label: 'driveshaft 2×' },
  'half-shaft': { label: 'half-shaft 3×' },
  launch: { label: 'driveshaft 2×' },
  'fixed-hum': { label: 'fixed tone', hz: 31.4 },
  comeback: { label: 'driveshaft 2×' },
};

describe('the demo jobs, end to end', () => {
  it('there are at least eight', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(8);
  });

  it.each(jobs)('%s gives the JSON of the contract', (job) => {
    const report = reportOf(job);
    expect(report.schemaVersion).toBe(1);
    expect(['found', 'nothing-felt', 'cannot-tell']).toContain(report.verdict);
    expect(report.runs.length).toBeGreaterThan(0);
    for (const peak of report.peaks) {
      const total = peak.matches.reduce((sum, { probability }) => sum + probability, 0);
      expect(total).toBeCloseTo(1, 6);
    }
    for (const finding of report.findings) {
      expect(finding.probability).toBeGreaterThan(0);
      expect(finding.probability).toBeLessThanOrEqual(1);
    }

    const truth = TRUTH[job.replace('.job.json', '')]!;
    expect(report.findings[0]?.label ?? null).toBe(truth.label);
    expect(report.verdict).toBe(truth.label === null ? 'nothing-felt' : 'found');
    if (truth.hz !== undefined) expect(report.findings[0]!.frequencyHz / truth.hz).toBeCloseTo(1, 2);
  });

  it.each(jobs)('%s is told in words, with the answer first', (job) => {
    const stdout = reportText(reportOf(job), { units: 'us', width: 96, emphasis: false });
    expect(stdout.startsWith(reportOf(job).sentence.slice(0, 20))).toBe(true);
    expect(stdout).toContain('What was recorded');
    expect(stdout).toContain('Orders');
    expectPlainWords({ status: 0, stdout, stderr: '' });
  });

  it.each(jobs)('%s is told by the worker as by the command line', async (job) => {
    const text = readFileSync(join('recordings', job), 'utf8');
    const read = must(readJob(text, job));
    const sources = read.runs.map(({ file }) => ({
      key: file,
      name: file,
      blob: new Blob([readFileSync(join('recordings', file))]),
    }));
    const said: FromWorker[] = [];
    await new RequestHandler((message) => said.push(message)).handle({
      request: 1,
      task: { kind: 'analyse', of: { job: read, sources } },
    });
    const last = said.at(-1);
    if (last?.kind !== 'answer') throw new Error(JSON.stringify(last));
    // The command line adds its own version and the path the file was opened by.
    const { program, ...answer } = JSON.parse(JSON.stringify((last.answer as Analysis).report)) as Report;
    const { program: other, runs, ...rest } = reportOf(job);
    expect(program.name).toBe(other.name);
    expect(answer).toEqual({ ...rest, runs: runs.map((run) => ({ ...run, file: basename(run.file) })) });
  });

  // What they were when last looked at (`npm run golden` writes them anew): they show that something has changed, not
  // that it is right. Sines and exponentials may differ in their last digits from one machine to another; iterations
  // carry that on.
  it.each(PINNED)('%s gives its golden figures', (name) => {
    const figures: unknown = JSON.parse(JSON.stringify(figuresOf(reportOf(`${name}.job.json`))));
    expect(differences(figures, golden(name), 1e-5)).toEqual([]);
  });

  it('one of them is told by itself as among others', () => {
    const alone = JSON.parse(perrev(['diagnose', 'recordings/launch.job.json', '--json']).stdout) as Report;
    expect(alone).toEqual(reportOf('launch.job.json'));
  });

  it('says that driveshaft and engine share a frequency in a direct gear, and is sure of neither', () => {
    const [finding] = reportOf('direct-gear.job.json').findings;
    const [other] = finding!.sharesFrequencyWith;
    expect(other?.label).toBe('engine 1×');
    expect(finding!.probability).toBeLessThanOrEqual(0.8);
    expect(other!.separatedBy).not.toBe('');
  });
});
