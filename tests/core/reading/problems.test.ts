import { describe, expect, it } from 'vitest';
import type { Problem } from '../../../src/core/note.ts';
import { readingProblems } from '../../../src/core/reading/problems.ts';
import { bytesOf, PLAIN, problemOf, readText, sampleG, seconds, table } from './fixture.ts';

const HEADER = 'time (s),acc x (g),acc y (g),acc z (g)\n';
const rows = (cells: (i: number) => (string | number)[], count = 64): string => table(cells, ',', count);
const wide = (columns: number): string =>
  Array.from({ length: 64 }, (_, i) => `${i / 100}${',1'.repeat(columns - 1)}\n`).join('');

/** For every refusal a file that is refused so, its sentence and its remedy. */
const REFUSED: Record<keyof typeof readingProblems, { given: () => Promise<Problem>; says: string; remedy: string }> = {
  emptyFile: {
    given: () => problemOf('\n \n'),
    says: 'test.csv is empty.',
    remedy: 'Export the recording again as CSV text, one row per sample, and open that file.',
  },
  binaryFile: {
    given: () => problemOf(Uint8Array.from([65, 10, 1, 0, 200, 3, 7, 255, 9, 0])),
    says: 'test.csv, line 2: holds bytes that are not text.',
    remedy: 'Export the recording again as CSV text, one row per sample, and open that file.',
  },
  packedFile: {
    given: () => problemOf(Uint8Array.from([0x50, 0x4b, 3, 4, 20, 0, 6, 0])),
    says: 'test.csv is a zip archive or a spreadsheet, not CSV text.',
    remedy: 'Unpack it, or save the sheet as CSV, and open the CSV file (a .csv.gz is read as it is).',
  },
  damagedGzip: {
    given: () => problemOf(Uint8Array.from([0x1f, 0x8b, 8, 0, 0, 0])),
    says: 'test.csv is compressed and breaks off, and no recording could be unpacked from it.',
    remedy: 'Copy the file again, or unpack it first and open the CSV inside.',
  },
  sourceFailed: {
    given: async () => {
      async function* vanishing(): AsyncGenerator<Uint8Array> {
        yield bytesOf(PLAIN);
        throw new Error('the drive was pulled out');
      }
      const { readRecording } = await import('../../../src/core/reading/read-recording.ts');
      const read = await readRecording({ name: 'test.csv', bytes: vanishing() });
      return read.ok ? Promise.reject(new Error('read')) : read.problem;
    },
    says: 'test.csv could not be read to its end: the drive was pulled out.',
    remedy: 'Copy the file to this computer and try again.',
  },
  cancelled: {
    given: () => problemOf(PLAIN, { signal: AbortSignal.abort() }),
    says: 'Reading test.csv was stopped.',
    remedy: 'Open the file again to read it.',
  },
  notATable: {
    given: () => problemOf('Dear reader,\nplease find the data in the attachment.\n'),
    says: 'test.csv, line 2: no rows of numbers found; it reads "please find the data in the attachment.".',
    remedy: 'Export the recording again as CSV text, one row per sample, and open that file.',
  },
  headerOnly: {
    given: () => problemOf(HEADER),
    says: 'test.csv, line 1: a header ("time (s)", "acc x (g)", "acc y (g)", "acc z (g)") with no rows under it.',
    remedy: 'Record again, and make sure the recording is stopped before it is exported.',
  },
  metadataOnly: {
    given: () => problemOf('device name,bench box\nsensor rate,100\nrecording time,12:00:03\nversion,2\n'),
    says: 'test.csv, line 2: holds settings or remarks about a recording, not the recording.',
    remedy: 'Open the file of the same export that holds the acceleration, often named after the accelerometer.',
  },
  gyroscopeOnly: {
    given: () =>
      problemOf(
        `time (s),gyro x (rad/s),gyro y (rad/s),gyro z (rad/s)\n${rows((i) => [seconds(i), 0.1, 0.2, Math.sin(i)])}`,
      ),
    says: 'test.csv, line 1: holds turning rates ("time (s)", "gyro x (rad/s)", "gyro y (rad/s)", "gyro z (rad/s)") and no acceleration.',
    remedy: 'Open the accelerometer file of the same export, or record again with the accelerometer switched on.',
  },
  locationOnly: {
    given: () =>
      problemOf(`time (s),latitude,longitude,speed (m/s)\n${rows((i) => [i, 48.1 + i / 1e4, 11.5, 20 + (i % 3)])}`),
    says: 'test.csv, line 1: holds positions ("time (s)", "latitude", "longitude", "speed (m/s)") and no acceleration.',
    remedy: 'Open the accelerometer file of the same export, or record again with the accelerometer switched on.',
  },
  noAcceleration: {
    given: () => problemOf(`time (s),voltage,current\n${rows((i) => [seconds(i), 12, Math.sin(i)])}`),
    says: 'test.csv, line 1: none of the columns "time (s)", "voltage", "current" is acceleration.',
    remedy: 'Name the acceleration columns in the header, for instance "acc x (g)", "acc y (g)", "acc z (g)".',
  },
  accelerationUnclear: {
    given: () =>
      problemOf(
        rows((i) => [seconds(i), Math.sin(i), Math.sin(2 * i), Math.sin(3 * i), Math.sin(4 * i), Math.sin(5 * i)]),
      ),
    says: 'test.csv, line 1: 6 columns of numbers, and nothing tells which are acceleration.',
    remedy: 'Add a header line such as "time (s),acc x (g),acc y (g),acc z (g)" above the rows.',
  },
  commasUnclear: {
    given: () => problemOf(`acc x,acc y,acc z\n${rows((i) => sampleG(i).map((v) => v.toFixed(3).replace('.', ',')))}`),
    says: 'test.csv, line 2: 6 cells under 3 names; the comma seems to be both separator and decimal mark.',
    remedy: 'Export again with a semicolon or tab as the separator, or with a decimal point.',
  },
  lineTooLong: {
    given: () => problemOf('1,'.repeat(2_200_000)),
    says: 'test.csv, line 1: longer than 4 MB without a line end.',
    remedy: 'Export the recording again as CSV text, one row per sample, and open that file.',
  },
  tooManyColumns: {
    given: () => problemOf(wide(20_001)),
    says: 'test.csv, line 1: 20001 columns, more than the 20000 that are looked through.',
    remedy: 'Export one row per sample, with time and acceleration columns only.',
  },
  noUsableRows: {
    given: () =>
      problemOf(`time (s),acc x (g),remark\n0.00,,started\n0.01,,running\n0.02,0.1\n`.replace('0.02,0.1', '0.02,,x')),
    says: 'test.csv, from line 2: no row can be used: none has a readable acceleration.',
    remedy: 'Export the recording again as CSV text, one row per sample, and open that file.',
  },
  fewReadable: {
    given: () => problemOf('time,ax,ay,az\n0,1,foo\n;;;\nhello\n'),
    says: 'test.csv, from line 2: only 1 of the lines can be read as a row of numbers.',
    remedy: 'Export the recording again as CSV text, one row per sample, and open that file.',
  },
  tooFewRows: {
    given: () => problemOf(HEADER + rows((i) => [seconds(i), ...sampleG(i)], 9)),
    says: 'test.csv, from line 2: 9 usable rows, and at least 16 are needed.',
    remedy: 'Record for 20 seconds or longer at a steady speed.',
  },
  noSamplingRate: {
    given: () => problemOf(`acc x (g),acc y (g),acc z (g)\n${rows((i) => sampleG(i))}`),
    says: 'test.csv, line 2: no time column, and no sampling rate stated.',
    remedy: 'Add a time column, write the rate above the table ("sampling rate: 1000 Hz"), or give the rate by hand.',
  },
  timeStandsStill: {
    given: () => problemOf(HEADER + rows((i) => ['5', ...sampleG(i)])),
    says: 'test.csv, from line 2: the time column "time (s)" does not run, and no sampling rate is stated.',
    remedy: 'Add a time column, write the rate above the table ("sampling rate: 1000 Hz"), or give the rate by hand.',
  },
  timeUnitUnclear: {
    given: () => problemOf(`time,acc x (g),acc y (g),acc z (g)\n${rows((i) => [i * 100, ...sampleG(i)])}`),
    says: 'test.csv, from line 2: the time column "time" moves in steps of 100 and names no unit.',
    remedy: 'Write the unit into the header, for instance "time (ms)", or give the sampling rate by hand.',
  },
  rateTooLow: {
    given: () => problemOf(HEADER + rows((i) => [i / 10, ...sampleG(i)])),
    says: "test.csv, from line 2: 10 Hz, too slow: below 20 Hz not even a wheel's turning can be seen.",
    remedy: 'Record again at 200 Hz or faster; 100 Hz is the least that shows a driveshaft.',
  },
  rateNotUsable: {
    given: () => problemOf(PLAIN, { samplingRateHz: -5 }),
    says: 'test.csv: the sampling rate given by hand, -5 Hz, is not a usable rate.',
    remedy: 'Give the number of samples per second, such as 1000.',
  },
  unitUnclear: {
    given: () =>
      problemOf(`time (s),acc x,acc y,acc z\n${rows((i) => [seconds(i), 0.35, (0.01 * Math.sin(i)).toFixed(5), 0])}`),
    says: 'test.csv, from line 2: "acc x" names no unit, and its steady part of 0.35 is not gravity in any usual one.',
    remedy: 'Write the unit into the header, for instance "acc x (g)" or "acc x (m/s²)", or give the unit by hand.',
  },
  constantAcceleration: {
    given: () => problemOf(HEADER + rows((i) => [seconds(i), 0, 0, 1])),
    says: 'test.csv, from line 2: the acceleration has the same value in every row.',
    remedy: 'Check the sensor and its cable, and record again.',
  },
};

describe('every refusal', () => {
  for (const [name, { given, says, remedy }] of Object.entries(REFUSED))
    it(`${name} says what was found, where, and what to do`, async () => {
      const problem = await given();
      expect(problem.message).toBe(says);
      expect(problem.remedy).toBe(remedy);
      expect(problem.file).toBe('test.csv');
      expect(problem.code).toBe(name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`));
      const line = /line (\d+)/.exec(says);
      expect(problem.line).toBe(line ? Number(line[1]) : undefined);
    });

  it('is made in the catalogue and nowhere else', () => {
    expect(Object.keys(REFUSED).sort()).toEqual(Object.keys(readingProblems).sort());
  });

  it('stays short whatever the file holds', async () => {
    const names = Array.from({ length: 500 }, (_, i) => `${'voltage '.repeat(40)}${i}`).join(',');
    const read = await readText(`${names}\n${rows(() => Array(500).fill(1))}`);
    expect(!read.ok && read.problem.message.length).toBeLessThan(500);
  });
});
