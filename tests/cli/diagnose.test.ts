import { readdirSync, readFileSync, rmSync, mkdtempSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { Report } from '../../src/core/report/report.ts';
import { expectPlainWords, perrev } from './run-cli.ts';

const jobs = readdirSync('recordings').filter((name) => name.endsWith('.job.json'));

const diagnose = (job: string): Report =>
  JSON.parse(perrev(['diagnose', `recordings/${job}`, '--json']).stdout) as Report;

describe('the demo jobs, end to end', () => {
  it('there are at least eight', () => {
    expect(jobs.length).toBeGreaterThanOrEqual(8);
  });

  it.each(jobs)('%s gives a report in words, with the answer first', (job) => {
    const outcome = perrev(['diagnose', `recordings/${job}`]);
    expect(outcome.status).toBe(0);
    expect(outcome.stderr).toBe('');
    expect(outcome.stdout).toContain('What was recorded');
    expect(outcome.stdout).toContain('Orders');
    expectPlainWords(outcome);
  });

  it.each(jobs)('%s gives the JSON of the contract', (job) => {
    const report = diagnose(job);
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
  });

  it('writes one self-contained page without script or address', () => {
    const folder = mkdtempSync(join(tmpdir(), 'perrev-page-'));
    const page = join(folder, 'sheet.html');
    const outcome = perrev(['diagnose', 'recordings/joint-replaced.job.json', '--page', page]);
    expect(outcome.status).toBe(0);
    const text = readFileSync(page, 'utf8');
    expect(text).toContain('<svg');
    expect(text).not.toMatch(/<script|https?:\/\/(?!www\.w3\.org)/);
    rmSync(folder, { recursive: true });
  });

  it('reads a recording from standard input', () => {
    const csv = readFileSync(join('recordings', firstCsv('joint-replaced.job.json')));
    const outcome = perrev(
      ['diagnose', '-', '--tire', '265/70R17', '--axle', '3.73', '--speed', '62mph', '--json'],
      csv,
    );
    expect(outcome.status).toBe(0);
    expect((JSON.parse(outcome.stdout) as Report).runs).toHaveLength(1);
  });
});

function firstCsv(job: string): string {
  const { runs } = JSON.parse(readFileSync(join('recordings', job), 'utf8')) as { runs: { file: string }[] };
  return runs[0]!.file;
}
