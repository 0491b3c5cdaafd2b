import { readFileSync, readdirSync, statSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readJob } from '../../../src/core/job/job-file.ts';
import { DEMO_JOBS } from '../../recordings/demo-jobs.ts';
import { jobText, readmeText, recordingText } from '../../recordings/demo-files.ts';
import { must } from '../../support/must.ts';

const folder = new URL('../../../recordings/', import.meta.url);
const fileText = (name: string): string => readFileSync(new URL(name, folder), 'utf8');

describe('the demo recordings', () => {
  it.each(['joint-replaced', 'phone-100hz', 'coast-down'])('%s is made again byte for byte', (name) => {
    const job = DEMO_JOBS.find((j) => j.name === name)!;
    for (const run of job.runs) expect(recordingText(run) === fileText(run.file)).toBe(true);
  });

  it('have their job files and README as they are made', () => {
    for (const job of DEMO_JOBS) expect(fileText(`${job.name}.job.json`)).toBe(jobText(job));
    expect(fileText('README.md')).toBe(readmeText(DEMO_JOBS));
  });

  it('are read as jobs whose runs all have their file', () => {
    const files = readdirSync(folder);
    for (const demo of DEMO_JOBS) {
      const job = must(readJob(fileText(`${demo.name}.job.json`), demo.name));
      for (const run of job.runs) expect(files).toContain(run.file);
    }
  });

  it('leave nothing else lying about and stay below 4 MB', () => {
    const made = DEMO_JOBS.flatMap((j) => [`${j.name}.job.json`, ...j.runs.map((r) => r.file)]);
    expect(readdirSync(folder).sort()).toEqual([...made, 'README.md'].sort());
    const bytes = readdirSync(folder).reduce((sum, name) => sum + statSync(new URL(name, folder)).size, 0);
    expect(bytes).toBeLessThan(4 * 1024 * 1024);
  });
});
