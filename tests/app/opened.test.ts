import { describe, expect, it } from 'vitest';
import { packJob } from '../../src/app/book/archive.ts';
import { emptyJob } from '../../src/app/form/document.ts';
import { problemWords } from '../../src/app/start/problem-words.ts';
import { readOpened } from '../../src/app/state/opened.ts';
import { writeJob } from '../../src/core/job/job-file.ts';
import type { Job } from '../../src/core/job/job.ts';

const jobOf = (title: string, ...files: string[]): Job => ({
  ...emptyJob(),
  title,
  runs: files.map((file) => ({ file })),
});
const jobFile = (job: Job): File => new File([writeJob(job)], `${job.title}.job.json`);
const csv = (name: string, text = name): File => new File([text], name);

async function open(...files: File[]) {
  const opened = await readOpened(files);
  return {
    ...opened,
    jobs: opened.jobs.map(({ document, recordings }) => [document.job.title, recordings.map(({ name }) => name)]),
    loose: opened.loose.map(({ name }) => name),
  };
}

describe('files opened together', () => {
  it('go to the job that names them, however many jobs there are', async () => {
    const [van, truck] = [jobOf('van', 'a.csv', 'b.csv'), jobOf('truck', 'c.csv')];
    const opened = await open(csv('c.csv'), jobFile(van), csv('b.csv'), jobFile(truck), csv('a.csv'));
    expect(opened).toEqual({
      jobs: [
        ['van', ['a.csv', 'b.csv']],
        ['truck', ['c.csv']],
      ],
      loose: [],
      refused: [],
      lacksJob: false,
    });
  });

  it('are given to no job that does not name them', async () => {
    const opened = await open(jobFile(jobOf('van', 'a.csv')), jobFile(jobOf('truck', 'b.csv')), csv('other.csv'));
    expect(opened.jobs).toEqual([
      ['van', []],
      ['truck', []],
    ]);
    expect(opened.loose).toEqual(['other.csv']);
  });

  it('are not taken for those of another archive where two have the same name', async () => {
    const pack = async (title: string): Promise<File> => {
      const { blob, name } = await packJob(
        jobOf(title, 'run.csv'),
        [{ name: 'run.csv', blob: csv('run.csv', title) }],
        [],
      );
      return new File([blob], name);
    };
    const { jobs } = await readOpened([await pack('van'), await pack('truck')]);
    expect(await Promise.all(jobs.map(({ recordings }) => recordings[0]!.blob.text()))).toEqual(['van', 'truck']);
  });

  it('tell of a job file that cannot be read, so that its recordings are not made a job without it', async () => {
    const damaged = new File(['{"vehicle": {"layout": "rear-drive", "axleRatio": "three"}}'], 'van.job.json');
    const opened = await open(damaged, csv('a.csv'));
    expect(opened).toMatchObject({ jobs: [], loose: ['a.csv'], lacksJob: true });
    expect(opened.refused.map(({ key }) => key)).toEqual(['vehicle.axleRatio']);
  });
});

describe('a problem on the screen', () => {
  it('names the field as the form does, and each place once', () => {
    const ofJob = {
      code: 'job-key',
      file: 'van.job.json',
      line: 12,
      column: 3,
      key: 'vehicle.axleRatio',
      message: 'vehicle.axleRatio: "three" is not a ratio.',
      remedy: 'Write it like 3.73.',
    };
    expect(problemWords(ofJob)).toEqual({
      message: 'Axle ratio: “three” is not a ratio.',
      where: 'van.job.json, line 12',
    });
    const ofRecording = { code: 'x', file: 'a.csv', line: 2, message: 'a.csv, line 2: no numbers.', remedy: '' };
    expect(problemWords(ofRecording)).toEqual({ message: 'a.csv, line 2: no numbers.', where: '' });
    const elsewhere = { ...ofJob, key: 'runs[0].colour', message: 'runs[0].colour: it is empty.' };
    expect(problemWords(elsewhere).message).toBe('runs[0].colour: it is empty.');
  });
});
