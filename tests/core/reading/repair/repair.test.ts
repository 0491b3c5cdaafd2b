import { describe, expect, it } from 'vitest';
import type { Recording } from '../../../../src/core/reading/recording.ts';
import { codesOf, expectShake, recordingOf, sampleG, seconds, table } from '../fixture.ts';

const HEADER = 'time (s),acc x (g),acc y (g),acc z (g)\n';
type Row = (i: number) => (string | number)[];
const plain: Row = (i) => [seconds(i), ...sampleG(i)];
/** The plain file with some rows changed or taken out. */
const file = (
  rows: number,
  change: (row: (string | number)[], i: number) => (string | number)[] | null = (row) => row,
): string =>
  HEADER +
  Array.from({ length: rows }, (_, i) => change(plain(i), i))
    .flatMap((row) => (row ? [`${row.join(',')}\n`] : []))
    .join('');
const noteOf = (recording: Recording, code: string): string =>
  recording.notes.find((note) => note.code === code)?.text ?? '';
const startsOf = (recording: Recording): number[] => recording.segments.map((s) => Number(s.startS.toFixed(6)));
const lengthsOf = (recording: Recording): number[] => recording.segments.map((s) => s.accelerationMps2[0]!.length);

describe('gaps and missing rows', () => {
  it('split the recording and are never bridged', async () => {
    const recording = await recordingOf(file(300, (row, i) => (i >= 100 && i < 150 ? null : row)));
    expect(startsOf(recording)).toEqual([0, 1.5]);
    expect(lengthsOf(recording)).toEqual([100, 150]);
    expect(recording.segments.every((segment) => segment.timeS === null)).toBe(true);
    expect(recording.durationS).toBeCloseTo(2.5, 9);
    expect(recording.samplingRateHz).toBe(100);
    expect(noteOf(recording, 'gaps')).toContain('1 gap');
    expect(recording.segments[1]!.accelerationMps2[0]![0]).toBeCloseTo(sampleG(150)[0] * 9.80665, 9);
  });

  it('of one to four rows leave the times around them as they are', async () => {
    const recording = await recordingOf(file(300, (row, i) => (i === 100 || (i > 200 && i < 204) ? null : row)));
    expect(recording.segments).toHaveLength(1);
    const { timeS } = recording.segments[0]!;
    expect(timeS![99]).toBeCloseTo(0.99, 9);
    expect(timeS![100]).toBeCloseTo(1.01, 9);
    expect(timeS!.at(-1)).toBeCloseTo(2.99, 9);
    expect(noteOf(recording, 'samples-missing')).toContain('4 single samples are missing in 2 places');
  });

  it('are found between whole-second stamps too', async () => {
    const text = HEADER + table((i) => [Math.floor((i < 500 ? i : i + 300) / 100), ...sampleG(i)], ',', 1000);
    const recording = await recordingOf(text);
    expect(lengthsOf(recording)).toEqual([500, 500]);
    expect(startsOf(recording)).toEqual([0, 8]);
  });

  it('do not make a track lose its place', async () => {
    const text = `time (s),acc x (g),acc y (g),acc z (g),speed (m/s)\n${table((i) => [seconds(i < 100 ? i : i + 50), ...sampleG(i), 20 + i / 100], ',', 300)}`;
    const { roadSpeedMps } = await recordingOf(text);
    expect(roadSpeedMps!.timeS[150]).toBeCloseTo(2, 9);
  });
});

describe('stamps', () => {
  it('that cannot be read are set between their neighbors', async () => {
    const recording = await recordingOf(
      file(300, (row, i) => (i === 50 ? ['??', ...row.slice(1)] : i === 80 ? ['1e', ...row.slice(1)] : row)),
    );
    expectShake(recording, 300);
    expect(noteOf(recording, 'stamps-unreadable')).toContain('2 time stamps');
  });

  it('that fall out of line, forward or backward or to 1e19, are set between their neighbors', async () => {
    for (const stray of ['99.5', '0.01', '10000000000000000000']) {
      const recording = await recordingOf(file(300, (row, i) => (i === 150 ? [stray, ...row.slice(1)] : row)));
      expectShake(recording, 300);
      expect(codesOf(recording)).toContain('stamps-out-of-line');
    }
  });

  it('that jump back and run on split the recording, and the time goes on', async () => {
    const recording = await recordingOf(file(300, (row, i) => (i >= 150 ? [seconds(i - 150), ...row.slice(1)] : row)));
    expect(lengthsOf(recording)).toEqual([150, 150]);
    expect(startsOf(recording)).toEqual([0, 1.5]);
    expect(codesOf(recording)).toContain('clock-set-back');
  });

  it('of a second recording appended with its header split there, and the header row is told', async () => {
    const recording = await recordingOf(file(200) + file(100));
    expect(lengthsOf(recording)).toEqual([200, 100]);
    expect(noteOf(recording, 'rows-of-text')).toContain('line 202');
  });

  it('that repeat with the whole row lose the repeated row', async () => {
    const doubled = file(300).replace(/^(1\.00,.*\n)/m, '$1$1');
    const recording = await recordingOf(doubled);
    expectShake(recording, 300);
    expect(noteOf(recording, 'rows-repeated')).toContain('1 row repeats');
  });

  it('that repeat with other values keep both rows', async () => {
    let time = 0;
    const text =
      HEADER +
      table((i) => [(i === 100 ? time : (time += 0.01 + 0.004 * Math.sin(i * i))).toFixed(4), ...sampleG(i)], ',', 300);
    const recording = await recordingOf(text);
    expect(lengthsOf(recording)).toEqual([300]);
    const { timeS } = recording.segments[0]!;
    for (let i = 1; i < 300; i++) expect(timeS![i]!).toBeGreaterThan(timeS![i - 1]!);
  });
});

describe('values', () => {
  it('that are infinite, no number or beyond any sensor are closed by a straight line', async () => {
    for (const bad of ['inf', 'NaN', '1e19', '-1.#INF', 'err', '']) {
      const recording = await recordingOf(file(300, (row, i) => (i === 150 ? [row[0]!, bad, row[2]!, row[3]!] : row)));
      expect(lengthsOf(recording)).toEqual([300]);
      const [x, y] = recording.segments[0]!.accelerationMps2;
      expect(x![150]).toBeCloseTo((9.80665 * (sampleG(149)[0] + sampleG(151)[0])) / 2, 9);
      expect(y![150]).toBeCloseTo(9.80665 * sampleG(150)[1], 9);
      expect(noteOf(recording, 'values-corrupt-closed')).toContain('row 151');
    }
  });

  it('that are corrupt for longer are left out, and the recording is split', async () => {
    const recording = await recordingOf(
      file(300, (row, i) => (i >= 100 && i < 110 ? [row[0]!, 'nan', 'nan', 'nan'] : row)),
    );
    expect(lengthsOf(recording)).toEqual([100, 190]);
    expect(startsOf(recording)).toEqual([0, 1.1]);
    expect(noteOf(recording, 'values-corrupt-left-out')).toContain('10 rows');
  });

  it('that stand still are left out, and the recording is split', async () => {
    const recording = await recordingOf(file(300, (row, i) => (i > 100 && i < 160 ? [row[0]!, ...sampleG(100)] : row)));
    expect(lengthsOf(recording)).toEqual([100, 140]);
    expect(noteOf(recording, 'values-stuck')).toContain('0.6 s');
  });

  it('that are each repeated four times come out at a quarter of the rate', async () => {
    const recording = await recordingOf(
      HEADER + table((i) => [(i / 400).toFixed(4), ...sampleG(Math.floor(i / 4))], ',', 1600),
    );
    expectShake(recording, 400);
    expect(noteOf(recording, 'values-held')).toContain('4 times');
  });

  it('that are each repeated with a stated rate lower that rate', async () => {
    const recording = await recordingOf(
      `rate: 400 Hz\nacc x (g),acc y (g),acc z (g)\n${table((i) => sampleG(Math.floor(i / 4)), ',', 1600)}`,
    );
    expectShake(recording, 400);
  });

  it('of a coarse sensor at rest are not taken for held or stuck', async () => {
    const recording = await recordingOf(
      HEADER + table((i) => [seconds(i), 0, 0, Math.sin(i * i * i) > 0.4 ? 1.01 : 1], ',', 300),
    );
    expect(lengthsOf(recording)).toEqual([300]);
    expect(recording.clippedShare).toBe(0);
  });

  it('at the end stop are kept and counted', async () => {
    const clip = (v: number): number => Math.min(2, Math.max(-2, v));
    const recording = await recordingOf(
      HEADER +
        table((i) => [seconds(i), clip(3 * Math.sin(i)).toFixed(4), (0.1 * Math.cos(3 * i)).toFixed(4), 1], ',', 400),
    );
    // |3 sin| > 2 for 1 - (2/π)·arcsin(2/3) of the time.
    expect(recording.clippedShare).toBeCloseTo(1 - (2 / Math.PI) * Math.asin(2 / 3), 1);
    expect(codesOf(recording)).toContain('values-clipped');
    expect(lengthsOf(recording)).toEqual([400]);
  });
});

describe('rows', () => {
  it('with too few or too many cells are left out and told with their line', async () => {
    const lines = file(300).split('\n');
    lines[51] = '0.50,0.1';
    lines[101] = '1.00,0.1,0.21.01,0.1,0.2,1';
    const recording = await recordingOf(lines.join('\n'));
    expect(noteOf(recording, 'rows-too-short')).toContain('line 52');
    expect(noteOf(recording, 'rows-too-long')).toContain('line 102');
    expect(recording.segments[0]!.timeS).toHaveLength(298);
  });

  it('behind a quote that is never closed are read as they stand, and the quote is told', async () => {
    const lines = file(300).split('\n');
    lines[51] = `"${lines[51]!}`;
    const recording = await recordingOf(lines.join('\n'));
    expect(lengthsOf(recording)).toEqual([300]);
    expect(noteOf(recording, 'quote-not-closed')).toContain('line 52');
  });
});
