/** The demo files in recordings/ are what the described drives make, byte for byte, and nothing else lies there. */
import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { jobText, readmeText, recordingText } from './demo-files.ts';
import { DEMO_JOBS } from './demo-jobs.ts';

const folder = new URL('../../recordings/', import.meta.url);
const stored = (name: string): string => readFileSync(new URL(name, folder), 'utf8');
/** Compared without printing a megabyte where they differ. */
const expectSame = (name: string, made: string): void => {
  const text = stored(name);
  let at = 0;
  while (at < made.length && made[at] === text[at]) at++;
  expect({ name, length: text.length, sameUpTo: at }).toEqual({ name, length: made.length, sameUpTo: made.length });
};

describe('making the demo recordings again', () => {
  it.each(DEMO_JOBS.map((job) => [job.name, job] as const))('%s gives the same bytes', (_, job) => {
    expectSame(`${job.name}.job.json`, jobText(job));
    for (const run of job.runs) expectSame(run.file, recordingText(run));
  });

  it('leaves no file unaccounted for', () => {
    const made = DEMO_JOBS.flatMap((job) => [`${job.name}.job.json`, ...job.runs.map((run) => run.file)]);
    const present = readdirSync(folder).filter((name) => /\.(csv|json)$/.test(name));
    expect(present.sort()).toEqual(made.sort());
    expectSame('README.md', readmeText(DEMO_JOBS));
  });
});
