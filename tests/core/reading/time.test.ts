import { describe, expect, it } from 'vitest';
import { normals } from '../signal/made.ts';
import { codesOf, expectShake, problemOf, recordingOf, sampleG, table } from './fixture.ts';

const HEADER = 'acc x (g),acc y (g),acc z (g)';
/** A file whose time cells are made by a function of the row. */
const timed = (name: string, stamp: (i: number) => string | number, rows = 64): string =>
  `${name},${HEADER}\n${table((i) => [stamp(i), ...sampleG(i)], ',', rows)}`;
/** Reproducible scatter, uniform in -0.5..0.5: a linear congruential generator (Knuth, MMIX constants cut to 32 bits). */
const scatter = (i: number): number => {
  let state = (i + 1) * 1664525 + 1013904223;
  for (let k = 0; k < 4; k++) state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
  return state / 2 ** 32 - 0.5;
};

describe('the time column', () => {
  it('is read in seconds, milliseconds, microseconds and nanoseconds as its name says', async () => {
    expectShake(await recordingOf(timed('time (s)', (i) => (i / 100).toFixed(2))));
    expectShake(await recordingOf(timed('time (ms)', (i) => i * 10)));
    expectShake(await recordingOf(timed('time_us', (i) => i * 10_000)));
    expectShake(await recordingOf(timed('time [ns]', (i) => i * 10_000_000)));
  });

  it('has its unit found from the only likely rate where its name is silent, and says so', async () => {
    for (const factor of [1, 1e3, 1e6, 1e9]) {
      const recording = await recordingOf(timed('time', (i) => Number(((i / 100) * factor).toPrecision(12))));
      expectShake(recording);
      expect(recording.timeBase.because).toContain('only likely rate');
    }
  });

  it('is refused where no unit gives a likely rate, or where steps of one may be a count', async () => {
    expect((await problemOf(timed('time', (i) => i * 100))).code).toBe('time-unit-unclear');
    expect((await problemOf(timed('time', (i) => i))).code).toBe('time-unit-unclear');
    expectShake(
      await recordingOf(
        timed('time', (i) => i),
        { samplingRateHz: 100 },
      ),
    );
  });

  it('is read as an epoch in any unit, by its size', async () => {
    for (const digits of [10, 13, 16, 19]) {
      const unit = 10n ** BigInt(digits - 10);
      const stamp = (i: number): string =>
        digits === 10
          ? `${1714564800 + Math.floor(i / 100)}.${String(i % 100).padStart(2, '0')}`
          : String(1714564800n * unit + (BigInt(i) * unit) / 100n);
      expectShake(await recordingOf(timed('timestamp', stamp)));
    }
  });

  it('keeps what a double would lose of an epoch in nanoseconds', async () => {
    const step = 400_013n;
    const recording = await recordingOf(
      timed('timestamp', (i) => String(1714564800000000000n + BigInt(i) * step), 400),
    );
    expect(recording.timeBase.jitterSdS).toBeLessThan(1e-12);
    expect(recording.samplingRateHz).toBeCloseTo(1e9 / 400_013, 6);
  });

  it('follows the size of an epoch where the name says another unit, with a warning', async () => {
    const recording = await recordingOf(timed('time (s)', (i) => 1714564800000 + i * 10));
    expectShake(recording);
    expect(codesOf(recording)).toContain('time-unit-overruled');
  });

  it('is read as date and time, and as time of day over midnight', async () => {
    const clock = (i: number, from: number): string => {
      const ms = (from + i * 10) % 86_400_000;
      return new Date(ms).toISOString().slice(11, 23);
    };
    expectShake(await recordingOf(timed('time', (i) => new Date(1714564800000 + i * 10).toISOString())));
    expectShake(await recordingOf(timed('time', (i) => `2024-05-01 ${clock(i, 0).replace('.', ':')}`)));
    const midnight = await recordingOf(timed('Uhrzeit', (i) => clock(i, 86_399_800)));
    expectShake(midnight);
    expect(codesOf(midnight)).toContain('clock-wrapped');
    expectShake(await recordingOf(timed('time', (i) => clock(i, 3_599_800).slice(3, 11))));
  });

  it('goes on where a counter of 16 or 32 bits starts again', async () => {
    for (const [bits, step] of [
      [16, 10],
      [32, 10_000],
    ] as const) {
      const stamp = (i: number): number => (2 ** bits - 20 * step + i * step) % 2 ** bits;
      const recording = await recordingOf(timed(bits === 16 ? 'time (ms)' : 'time (us)', stamp));
      expectShake(recording);
      expect(codesOf(recording)).toContain('clock-wrapped');
    }
  });

  it('is the one that runs, where there are several', async () => {
    const text = `date,time,start time (s),elapsed (ms),${HEADER}\n${table((i) => ['2024-05-01', `12:00:0${Math.floor(i / 100)}`, 17, i * 10, ...sampleG(i)])}`;
    const recording = await recordingOf(text);
    expectShake(recording);
    expect(recording.notes.find((note) => note.code === 'time-base')!.text).toContain('"elapsed (ms)"');
  });
});

describe('the sampling rate without a time column', () => {
  const rows = `${HEADER}\n${table((i) => sampleG(i))}`;

  it('is taken from a remark above the table', async () => {
    for (const remark of [
      'Sampling rate: 100 Hz',
      '# fs = 100',
      'Sample Rate (Hz);100',
      'Abtastrate: 0,1 kHz',
      "Fréquence d'échantillonnage : 100 Hz",
      'Frecuencia de muestreo: 100 Hz',
      'Sample interval: 10 ms',
      'Abtastintervall = 0,01 s',
      'dt: 10000 us',
      'Samples per second,100',
    ]) {
      const recording = await recordingOf(`${remark}\n${rows}`);
      expectShake(recording);
      expect(recording.timeBase.from, remark).toBe('stated-in-file');
      expect(recording.timeBase.because).toContain(remark.slice(0, 10));
    }
  });

  it('is taken from the user', async () => {
    const recording = await recordingOf(rows, { samplingRateHz: 100 });
    expectShake(recording);
    expect(recording.timeBase.from).toBe('given-by-user');
  });

  it('is never assumed', async () => {
    expect((await problemOf(rows)).code).toBe('no-sampling-rate');
    expect((await problemOf(`Firmware: 2.0, serial 100\n${rows}`)).code).toBe('no-sampling-rate');
  });

  it('loses to the stamps where they run otherwise, with a warning', async () => {
    const recording = await recordingOf(`rate: 200 Hz\n${timed('time (s)', (i) => (i / 100).toFixed(2))}`);
    expectShake(recording);
    expect(codesOf(recording)).toContain('rate-contradicts-stamps');
  });

  it('replaces stamps that stand still, with a warning', async () => {
    const recording = await recordingOf(`rate: 100 Hz\n${timed('time (s)', () => 5)}`);
    expectShake(recording);
    expect(codesOf(recording)).toContain('time-column-not-used');
    expect((await problemOf(timed('time (s)', () => 5))).code).toBe('time-stands-still');
  });
});

describe('a clock that is set after the first rows', () => {
  it.each([
    [
      'nanoseconds since 1970 after a nought',
      (i: number) => (i < 1 ? '0' : `17905860${String(i * 5).padStart(5, '0')}000000`),
      'time_ns',
      1,
    ],
    [
      'three such rows',
      (i: number) => (i < 3 ? String(i) : `17905860${String(i * 5).padStart(5, '0')}000000`),
      'time_ns',
      3,
    ],
    ['seconds after a number beyond reason', (i: number) => (i < 1 ? '1e15' : (i * 0.005).toFixed(4)), 'time (s)', 1],
  ])('leaves the steps their digits: %s', async (_, stamp, name, stray) => {
    const recording = await recordingOf(timed(name, stamp, 600));
    expect(recording.samplingRateHz).toBeCloseTo(200, 6);
    expect(recording.segments).toHaveLength(1);
    expect(recording.segments[0]!.accelerationMps2[0]).toHaveLength(600);
    // The first row whose stamp can be trusted is told with them: two are needed to see which is out of line.
    expect(recording.notes.find(({ code }) => code === 'stamps-out-of-line')!.text).toContain(
      `${stray + 1} time stamps`,
    );
  });
});

describe('uneven stamps', () => {
  const timesOf = (recording: Awaited<ReturnType<typeof recordingOf>>): number[] =>
    Array.from(recording.segments[0]!.timeS ?? []);

  it('are even sampling where they are rounded', async () => {
    // 104 Hz in whole milliseconds: steps of 9 and 10 ms.
    const recording = await recordingOf(timed('time (ms)', (i) => Math.round((i * 1000) / 104), 600));
    expect(recording.timeBase.evenSampling).toBe(true);
    expect(recording.segments[0]!.timeS).toBeNull();
    expect(recording.samplingRateHz).toBeCloseTo(104, 2);
    // Rounding to 1 ms has a standard deviation of 1/√12 ms.
    expect(recording.timeBase.jitterSdS).toBeCloseTo(1e-3 / Math.sqrt(12), 4);
  });

  it('are even sampling where they are coarse clock ticks of half a step', async () => {
    const recording = await recordingOf(timed('time (ms)', (i) => Math.floor((i * 1000) / 62.5 / 10) * 10, 600));
    expect(recording.timeBase.evenSampling).toBe(true);
    expect(recording.samplingRateHz).toBeCloseTo(62.5, 1);
  });

  it('tell a few lost rows from a sensor that is a little slower than the clock ticks', async () => {
    // 200 Hz in ticks of 5 ms, six of 120 rows lost anywhere: a step of 10 ms is a lost row.
    const lost = new Set([9, 31, 38, 77, 90, 101]);
    const kept = Array.from({ length: 120 }, (_, i) => i).filter((i) => !lost.has(i));
    const holey = await recordingOf(timed('time (ms)', (i) => kept[i]! * 5, kept.length));
    expect(holey.samplingRateHz).toBeCloseTo(200, 9);
    expect(holey.notes.find(({ code }) => code === 'samples-missing')!.text).toContain('6 single samples are missing');
    timesOf(holey).forEach((t, i) => expect(t).toBeCloseTo((kept[i]! - kept[0]!) / 200, 9));
    // Four lost 26 to 30 rows apart: alike, but a slower sensor would keep its distances to a row.
    const alike = new Set([21, 49, 75, 105]);
    const few = Array.from({ length: 120 }, (_, i) => i).filter((i) => !alike.has(i));
    const fourLost = await recordingOf(timed('time (ms)', (i) => few[i]! * 5, few.length));
    expect(fourLost.samplingRateHz).toBeCloseTo(200, 9);
    expect(codesOf(fourLost)).toContain('samples-missing');
    // Rows that stand in the file and cannot be used are known to be lost, as regular as they may be.
    const broken = timed('time (ms)', (i) => i * 5, 120).split('\n');
    for (const at of [20, 48, 76, 104]) broken[at] = broken[at]!.split(',')[0]!;
    expect((await recordingOf(broken.join('\n'))).samplingRateHz).toBeCloseTo(200, 9);
    // 960 Hz in whole milliseconds: a step of 2 ms in every 24 or 25 rows, and nothing is missing.
    const slow = await recordingOf(timed('time (ms)', (i) => Math.floor((i * 1000) / 960), 2000));
    expect(slow.samplingRateHz).toBeCloseTo(960, 0);
    expect(codesOf(slow)).not.toContain('samples-missing');
    expect(slow.segments[0]!.timeS).toBeNull();
    // The same with two rows lost: 960 Hz but for these two rows, which such ticks cannot show.
    const both = await recordingOf(
      timed('time (ms)', (i) => Math.floor(((i + (i > 700 ? 1 : 0) + (i > 1500 ? 1 : 0)) * 1000) / 960), 2000),
    );
    expect(Math.abs(both.samplingRateHz / 960 - 1)).toBeLessThan(2 / 1500);
  });

  it('are spread evenly where many rows share a whole second', async () => {
    const recording = await recordingOf(timed('time (s)', (i) => Math.floor((i + 37) / 100), 1000));
    expect(recording.samplingRateHz).toBeCloseTo(100, 6);
    expect(recording.segments).toHaveLength(1);
    expect(recording.segments[0]!.accelerationMps2[0]).toHaveLength(1000);
    expect(recording.timeBase.evenSampling).toBe(true);
    expect(recording.timeBase.because).toContain('share a time stamp');
  });

  it('are spread evenly where rows come in bunches of stamps', async () => {
    // 50 rows written at once, microseconds apart, every half second.
    const recording = await recordingOf(
      timed('time (s)', (i) => (Math.floor(i / 50) * 0.5 + (i % 50) * 2e-5).toFixed(6), 2000),
    );
    expect(recording.samplingRateHz).toBeCloseTo(100, 6);
    expect(recording.segments).toHaveLength(1);
    expect(recording.timeBase.evenSampling).toBe(true);
  });

  it('are sample times where the samples were taken then, though some follow close on the one before', async () => {
    // 1.2 ms of a step of 5 ms: one step in fifty is under 0.3 of its length.
    const normal = normals(31);
    const offs = Array.from({ length: 2000 }, () => 1.2 * normal());
    const off = (i: number): number => offs[i]!;
    const file = (taken: (i: number) => number): string =>
      `time (ms),${HEADER}\n${table((i) => [(5 * i + off(i)).toFixed(3), ...sampleG(taken(i))], ',', 2000)}`;
    const told = await recordingOf(file((i) => i + off(i) / 5));
    expect(told.timeBase.evenSampling).toBe(false);
    expect(told.timeBase.because).toContain('kept as sample times');
    // The same stamps over even samples were only written late.
    const late = await recordingOf(file((i) => i));
    expect(late.timeBase.evenSampling).toBe(true);
    expect(late.timeBase.because).toContain('written late');
  });

  it('are even sampling where single rows were written late', async () => {
    const late = (i: number): number => (i % 10 === 3 ? 9.5 : 0);
    const recording = await recordingOf(timed('time (ms)', (i) => i * 10 + late(i), 1000));
    expect(recording.timeBase.evenSampling).toBe(true);
    expect(recording.samplingRateHz).toBeCloseTo(100, 2);
    expect(recording.segments).toHaveLength(1);
  });

  it('rise by more than rounding where two are one', async () => {
    let time = 0;
    const stamps = Array.from({ length: 1000 }, (_, i) => (time += 10 + 6 * scatter(i)));
    // One differs from the stamp before it by a millionth of a nanosecond.
    const stamp = (i: number): string => (i === 37 ? `${stamps[36]!.toFixed(4)}00000001` : stamps[i]!.toFixed(4));
    const times = timesOf(await recordingOf(timed('time (ms)', stamp, 1000)));
    expect(times).toHaveLength(1000);
    for (let i = 1; i < times.length; i++) expect(times[i]! - times[i - 1]!).toBeGreaterThan(1e-12);
  });

  it('are uneven sampling where the clock itself wanders, and are kept', async () => {
    let time = 0;
    const stamps = Array.from({ length: 1000 }, (_, i) => (time += 10 + 6 * scatter(i)));
    const recording = await recordingOf(timed('time (ms)', (i) => stamps[i]!.toFixed(4), 1000));
    expect(recording.timeBase.evenSampling).toBe(false);
    expect(recording.segments).toHaveLength(1);
    timesOf(recording).forEach((t, i) => expect(t).toBeCloseTo((stamps[i]! - stamps[0]!) / 1000, 6));
    expect(recording.timeBase.jitterSdS).toBeGreaterThan(1e-3);
  });

  it('are counted by the step of the sensor where samples are lost as well: rows over time would be too slow', async () => {
    // 60 Hz, 0.08 of a step (sd) off the grid, one sample in 60 lost: images stand beside 60 Hz, not beside 59.
    const normal = normals(17);
    const kept = Array.from({ length: 2400 }, (_, i) => i).filter((i) => i % 60 !== 29);
    const taken = kept.map((i) => i + 0.08 * normal());
    const recording = await recordingOf(
      `time (s),${HEADER}\n${table((k) => [(taken[k]! / 60).toFixed(5), ...sampleG(taken[k]!)], ',', kept.length)}`,
    );
    expect(recording.timeBase.evenSampling).toBe(false);
    expect(recording.samplingRateHz).toBeCloseTo(60, 2);
    expect(codesOf(recording)).toContain('samples-missing');
    timesOf(recording).forEach((t, k) => expect(t).toBeCloseTo((taken[k]! - taken[0]!) / 60, 4));
  });

  it('follow a clock that drifts slowly', async () => {
    // 100 Hz that is 0.2 % slow at first and 0.2 % fast at the end.
    const exact = (i: number): number => i * 10 + 20 * Math.sin((Math.PI * i) / 4000);
    const recording = await recordingOf(timed('time (ms)', (i) => Math.round(exact(i)), 4000));
    expect(recording.timeBase.evenSampling).toBe(true);
    const times = timesOf(recording);
    expect(times).toHaveLength(4000);
    for (let i = 200; i < 3800; i += 100) expect(Math.abs(times[i]! * 1000 - exact(i))).toBeLessThan(1.5);
  });

  it('give 100 Hz, not 99.9997, where rounding can explain the difference', async () => {
    const recording = await recordingOf(
      timed('time (s)', (i) => (i * 0.01 + (i % 3 === 0 ? 1e-6 : 0)).toFixed(6), 400),
    );
    expect(recording.samplingRateHz).toBe(100);
    const other = await recordingOf(timed('time (s)', (i) => (i / 99.7).toFixed(6), 4000));
    expect(other.samplingRateHz).toBeCloseTo(99.7, 5);
  });
});
