import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { afterAll, describe, expect, it } from 'vitest';
import type { Problem } from '../../src/core/note.ts';
import type { Report } from '../../src/core/report/report.ts';
import { expectPlainWords, perrev } from './run-cli.ts';
import { VEHICLE_WORDS, shortCsv } from './short-recording.ts';

const folder = mkdtempSync(join(tmpdir(), 'perrev-batch-'));
afterAll(() => rmSync(folder, { recursive: true }));

const put = (name: string, content: string | Uint8Array): string => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

interface Line {
  readonly file: string;
  readonly ok: boolean;
  readonly report?: Report;
  readonly problem?: Problem;
}

const linesOf = (stdout: string): Line[] =>
  stdout
    .split('\n')
    .filter((text) => text !== '')
    .map((text) => JSON.parse(text) as Line);

/** As short as a recording may be: what is told here does not hang on how long it is. */
const SHORT_S = 5;
const long = put('long.csv', shortCsv(SHORT_S + 1));
const short = put('short.csv', shortCsv(SHORT_S));
const packed = put('packed.csv.gz', gzipSync(shortCsv(SHORT_S)));
const bad = put('bad.csv', 'Dear reader,\nno table here.\n');
const job = put(
  'one.job.json',
  JSON.stringify({
    schemaVersion: 1,
    vehicle: { layout: 'rear-drive', tire: { kind: 'size', size: '265/70R17' }, axleRatio: 3.73 },
    runs: [{ file: 'short.csv', speed: '62 mph' }],
  }),
);

const single = (args: readonly string[]): Report =>
  JSON.parse(perrev(['diagnose', ...args, '--json']).stdout) as Report;

describe('many files at once', { timeout: 120_000 }, () => {
  it('gives one line a file in the order they were named, and a bad one does not stop the rest', () => {
    const missing = join(folder, 'no-such.csv');
    const files = [long, bad, short, missing, packed, job];
    const outcome = perrev(['batch', ...files, ...VEHICLE_WORDS]);
    expect(outcome.status).toBe(1);
    expect(outcome.stderr).toBe('');
    const lines = linesOf(outcome.stdout);
    expect(lines.map(({ file }) => file)).toEqual(files);
    expect(lines.map(({ ok }) => ok)).toEqual([true, false, true, false, true, true]);
    expect(lines[1]!.problem).toMatchObject({ code: 'not-a-table', file: 'bad.csv', line: 2 });
    expect(lines[3]!.problem).toMatchObject({ code: 'file-not-readable', file: missing });
    expectPlainWords(outcome);
  });

  it('says of each file what diagnose says of it alone', () => {
    const outcome = perrev(['batch', short, long, ...VEHICLE_WORDS]);
    expect(outcome.status).toBe(0);
    const [first, second] = linesOf(outcome.stdout);
    expect(first!.report).toEqual(single([short, ...VEHICLE_WORDS]));
    expect(second!.report).toEqual(single([long, ...VEHICLE_WORDS]));
  });

  it('prints the same whether one thread works or three', () => {
    const files = [long, bad, short];
    const one = perrev(['batch', ...files, ...VEHICLE_WORDS, '--parallel', '1']);
    const three = perrev(['batch', ...files, ...VEHICLE_WORDS, '--parallel', '3']);
    expect(one.stdout).toBe(three.stdout);
    expect([one.status, three.status]).toEqual([1, 1]);
  });

  it('takes a run option once for each file', () => {
    const outcome = perrev(['batch', short, short, '--tire', '265/70R17', '--speed', '62mph', '--speed', '100km/h']);
    expect(outcome.status).toBe(0);
    const stated = linesOf(outcome.stdout).map(({ report }) => report!.runs[0]!.speed.statedMps);
    expect(stated[0]).toBeCloseTo(62 * 0.44704, 9);
    expect(stated[1]).toBeCloseTo(100 / 3.6, 9);
  });

  it('reads standard input among files', () => {
    const outcome = perrev(['batch', short, '-', short, ...VEHICLE_WORDS], gzipSync(shortCsv(SHORT_S)));
    expect(outcome.status).toBe(0);
    const lines = linesOf(outcome.stdout);
    expect(lines.map(({ file }) => file)).toEqual([short, '-', short]);
    expect(lines[1]!.report!.peaks.map((peak) => ({ ...peak, run: '' }))).toEqual(
      lines[0]!.report!.peaks.map((peak) => ({ ...peak, run: '' })),
    );
  });

  it.each([
    [['batch'], /name at least one recording or job file/],
    [['batch', 'a.csv', '--parallel', '0'], /--parallel "0" is not a whole number from 1 to 256/],
    [['batch', 'a.csv', '--speed', 'fast'], /--speed: "fast"/],
    [['batch', 'a.csv', 'b.csv', 'c.csv', '--gear', '1', '--gear', '2'], /--gear was given 2 times for 3 files/],
    [['batch', '-', '-'], /standard input \(-\) can be read once/],
  ])('%j is wrong usage, said before any file is opened', (args, sentence) => {
    const outcome = perrev(args);
    expect(outcome.status).toBe(2);
    expect(outcome.stderr).toMatch(sentence);
    expect(outcome.stdout).toBe('');
  });
});

describe('a compressed recording', { timeout: 120_000 }, () => {
  const LENGTH_S = 6;
  const plain = put('same.csv', shortCsv(LENGTH_S));
  const zipped = gzipSync(shortCsv(LENGTH_S));
  const ofPlain = single([plain, ...VEHICLE_WORDS]);
  const path = put('same.csv.gz', zipped);
  /** The report without the file's own name. */
  const unnamed = (report: Report): string =>
    JSON.stringify(report).replaceAll(/same\.csv(\.gz)?|standard input/g, '…');

  it('is diagnosed as the plain file is', () => {
    expect(unnamed(single([path, ...VEHICLE_WORDS]))).toBe(unnamed(ofPlain));
  });

  it('is read from standard input', () => {
    const outcome = perrev(['diagnose', '-', ...VEHICLE_WORDS, '--json'], zipped);
    const report = JSON.parse(outcome.stdout) as Report;
    expect(report.peaks.map(({ frequencyHz }) => frequencyHz)).toEqual(
      ofPlain.peaks.map(({ frequencyHz }) => frequencyHz),
    );
  });

  it('has the same spectrum, from file and from standard input', () => {
    const expected = perrev(['spectrum', plain]).stdout;
    expect(expected.split('\n').length).toBeGreaterThan(100);
    expect(perrev(['spectrum', path]).stdout).toBe(expected);
    expect(perrev(['spectrum', '-'], zipped).stdout).toBe(expected);
  });

  it('may be named in a job file', () => {
    const jobPath = put(
      'packed.job.json',
      JSON.stringify({ schemaVersion: 1, vehicle: { layout: 'rear-drive' }, runs: [{ file: 'same.csv.gz' }] }),
    );
    expect(perrev(['diagnose', jobPath, '--json']).status).toBe(0);
  });

  it('that breaks off is used as far as it goes, and says so', () => {
    const cut = put('cut.csv.gz', zipped.subarray(0, Math.floor(zipped.length * 0.7)));
    const report = single([cut, ...VEHICLE_WORDS]);
    expect(report.runs[0]!.notes.map(({ code }) => code)).toContain('gzip-cut-short');
    expect(report.runs[0]!.durationS).toBeLessThan(LENGTH_S);
  });

  it('of which nothing can be unpacked is refused in a sentence', () => {
    const broken = put('broken.csv.gz', Uint8Array.from([0x1f, 0x8b, 8, 0, 1, 2, 3]));
    const outcome = perrev(['diagnose', broken, ...VEHICLE_WORDS]);
    expect(outcome.status).toBe(1);
    expect(outcome.stderr).toContain(
      'broken.csv.gz is compressed and breaks off, and no recording could be unpacked from it.',
    );
    expectPlainWords(outcome);
  });
});
