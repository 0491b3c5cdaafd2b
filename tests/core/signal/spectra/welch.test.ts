import { describe, expect, it } from 'vitest';
import { timeFrequency } from '../../../../src/core/signal/spectra/time-frequency.ts';
import { welchAmplitude, welchBoth } from '../../../../src/core/signal/spectra/welch.ts';
import { WINDOW_NAMES, type WindowName } from '../../../../src/core/signal/spectra/windows.ts';
import reference from '../../../reference/signal.json' with { type: 'json' };
import { normals, parkMiller, preparedOf, samples, tone, worstRelative } from '../made.ts';

const RATE = 200;
const COUNT = 3000;
/** The signal of tests/reference/make_signal.py, number for number. */
const prepared = (() => {
  const first = parkMiller(1, COUNT);
  const second = parkMiller(2, COUNT);
  return preparedOf(
    [
      samples(COUNT, RATE, (t, i) => 0.3 * Math.cos(2 * Math.PI * 14.4 * t + 0.7) + first[i]!),
      samples(COUNT, RATE, (t, i) => 0.2 * Math.sin(2 * Math.PI * 53.76 * t) + 0.5 * second[i]! + 0.1),
    ],
    RATE,
  );
})();

describe('averaged spectra against scipy.signal.welch (vectors of make_signal.py)', () => {
  it('starts from the same numbers', () => {
    expect(Array.from(parkMiller(1, 3))).toEqual(reference.noise);
  });

  it.each(
    reference.welch.map((c) => [`${c.window} ${c.segmentLength}, overlap ${c.overlap}, axis ${c.axis}`, c] as const),
  )('%s', (_, c) => {
    const options = {
      window: c.window as WindowName,
      segmentLength: c.segmentLength,
      overlap: c.overlap,
      axis: c.axis as number | 'all',
    };
    const density = welchBoth(prepared, options).density;
    const amplitude = welchAmplitude(prepared, options);
    expect(
      worstRelative(
        c.bins.map((k) => k * density.stepHz),
        c.frequencyHz,
      ),
    ).toBeLessThan(1e-12);
    expect(
      worstRelative(
        c.bins.map((k) => density.density[k]!),
        c.density,
      ),
    ).toBeLessThan(1e-9);
    expect(
      worstRelative(
        c.bins.map((k) => amplitude.amplitudeMps2[k]!),
        c.amplitude,
      ),
    ).toBeLessThan(1e-9);
    expect(density.density.length).toBe(c.bins.at(-1)! + 1);
  });

  it('the map agrees with scipy.signal.spectrogram, column times included', () => {
    const { map } = reference;
    const own = timeFrequency(prepared, { stepHz: map.stepHz });
    expect(own.stepHz).toBeCloseTo(map.stepHz, 12);
    expect(worstRelative(Array.from(own.timeS), map.timeS)).toBeLessThan(1e-12);
    map.columns.forEach((column, c) => {
      const row = map.bins.map((k) => own.amplitudeMps2[column * own.bins + k]!);
      // Kept in single precision. At 0 Hz and half the rate no tone is read off a map: those ends are not compared.
      expect(worstRelative(row.slice(1, -1), map.amplitude[c]!.slice(1, -1))).toBeLessThan(1e-6);
    });
  });
});

describe('scaling worked by hand', () => {
  const sine = preparedOf([samples(1000, 1000, (t) => Math.sin(2 * Math.PI * 50 * t))], 1000);

  it('a sine of 1 m/s² on a bin: amplitude 1, neighbours a half, density 1/3, mean square a half (Hann, 1 Hz bins)', () => {
    const options = { segmentLength: 1000, overlap: 0 };
    const { amplitudeMps2, enbwHz } = welchAmplitude(sine, options);
    expect(enbwHz).toBeCloseTo(1.5, 10);
    expect([49, 50, 51].map((k) => amplitudeMps2[k]!.toFixed(9))).toEqual([
      '0.500000000',
      '1.000000000',
      '0.500000000',
    ]);
    const { density } = welchBoth(sine, options).density;
    expect(density[50]).toBeCloseTo(1 / 3, 10);
    expect(density[49]! + density[50]! + density[51]!).toBeCloseTo(0.5, 10);
  });

  it.each(WINDOW_NAMES)('amplitude² / 2 = density · noise bandwidth, at every inner bin (%s)', (window) => {
    for (const segmentLength of [128, 129]) {
      const options = { window, segmentLength, overlap: 0.5 };
      const a = welchAmplitude(prepared, options);
      const d = welchBoth(prepared, options).density;
      for (let k = 1; k < 64; k += 1) {
        expect(a.amplitudeMps2[k]! ** 2 / 2 / (d.density[k]! * d.enbwHz)).toBeCloseTo(1, 10);
      }
    }
  });

  it('the density of a whole block under no window adds up to its mean square (Parseval), even and odd lengths', () => {
    for (const count of [512, 513]) {
      const x = parkMiller(31, count).map((v) => v + 0.2);
      const d = welchBoth(preparedOf([x], 100), { window: 'rectangular', segmentLength: count, overlap: 0 }).density;
      const sum = d.density.reduce((total, v) => total + v * d.stepHz, 0);
      expect(sum / (x.reduce((total, v) => total + v * v, 0) / count)).toBeCloseTo(1, 11);
    }
  });

  it('white noise of 0.1 m/s² at 1 kHz has a density of 2·σ²/fs = 2e-5 per Hz', () => {
    const normal = normals(5);
    const noise = preparedOf([samples(200_000, 1000, () => 0.1 * normal())], 1000);
    const { density } = welchBoth(noise, { segmentLength: 1024 }).density;
    const mean = density.slice(1, -1).reduce((sum, v) => sum + v, 0) / (density.length - 2);
    // Relative standard error 1/√(200000/2) = 0.3 %.
    expect(Math.abs(mean / 2e-5 - 1)).toBeLessThan(0.01);
  });

  it('axes together are the root-sum-square of the axes', () => {
    const [x, y, both] = [0, 1, 'all' as const].map((axis) => welchAmplitude(prepared, { segmentLength: 256, axis }));
    for (let k = 0; k < 129; k += 1) {
      expect(both!.amplitudeMps2[k]).toBeCloseTo(Math.hypot(x!.amplitudeMps2[k]!, y!.amplitudeMps2[k]!), 12);
    }
  });
});

describe('what is averaged', () => {
  it('segments never reach over a gap, and short pieces give none', () => {
    const a = parkMiller(41, 300);
    const b = parkMiller(42, 90);
    const c = parkMiller(43, 150);
    const piece = (axis: Float64Array, startS: number): { startS: number; axes: Float64Array[] } => ({
      startS,
      axes: [axis],
    });
    const whole = { samplingRateHz: 100, durationS: 5.4, pieces: [piece(a, 0), piece(b, 10), piece(c, 20)], up: null };
    const options = { window: 'hann', segmentLength: 100, overlap: 0 } as const;
    const own = welchBoth(whole, options).density;
    expect(own.averages).toBe(4);
    const one = welchBoth(preparedOf([a], 100), options).density;
    const three = welchBoth(preparedOf([c], 100), options).density;
    for (let k = 0; k <= 50; k += 1)
      expect(own.density[k]).toBeCloseTo((3 * one.density[k]! + three.density[k]!) / 4, 12);
  });

  it('a recording shorter than the segment asked for gets the longest power of two it holds', () => {
    const short = welchBoth(preparedOf([parkMiller(51, 300)], 100), { segmentLength: 4096 }).density;
    expect(short.segmentLength).toBe(256);
    expect(short.averages).toBe(1);
  });

  it('the map’s window is the power of two that gives the step asked for, halved until a piece holds it', () => {
    const axis = parkMiller(1, 700);
    // 0.5 Hz at 200 Hz asks for 512 samples (0.39 Hz); of 700 samples the columns are 128 apart.
    const map = timeFrequency(preparedOf([axis], 200));
    expect([map.stepHz, map.bins, map.timeS.length]).toEqual([200 / 512, 257, 2]);
    const short = timeFrequency(preparedOf([axis.subarray(0, 300)], 200));
    expect([short.stepHz, short.timeS.length, short.timeS[0]]).toEqual([200 / 256, 1, 128 / 200]);
    expect(timeFrequency(preparedOf([axis], 200), { stepHz: 0.3 }).stepHz).toBe(200 / 512);
    expect(timeFrequency(preparedOf([parkMiller(2, 40_000)], 1000), { stepHz: 0.25 }).bins).toBe(1024);
  });

  it('the map’s columns are no more than asked for and reach to the end', () => {
    const map = timeFrequency(preparedOf([parkMiller(3, 20_000)], 200), { mostColumns: 50 });
    // 19 489 places for 512 samples over 50 columns: 390 apart.
    expect(map.timeS.length).toBe(50);
    expect(map.timeS[1]! - map.timeS[0]!).toBeCloseTo(390 / 200, 12);
    expect(map.timeS[49]).toBeGreaterThan(96);
  });

  it('the map has no column over a gap and keeps to the columns and bins asked for', () => {
    const axis = samples(4000, 200, tone(1, 25));
    const whole = {
      ...preparedOf([axis], 200, 5),
      pieces: [
        { startS: 5, axes: [axis] },
        { startS: 100, axes: [axis] },
      ],
    };
    const map = timeFrequency(whole, { stepHz: 0.5, mostColumns: 40, mostBins: 100 });
    expect(map.timeS.length).toBeLessThanOrEqual(40);
    expect(map.bins).toBe(100);
    for (const t of map.timeS) expect((t > 5 && t < 25) || (t > 100 && t < 120)).toBe(true);
    expect(Math.max(...map.timeS)).toBeGreaterThan(110);
    const top = map.amplitudeMps2.slice(0, map.bins).indexOf(Math.max(...map.amplitudeMps2.slice(0, map.bins)));
    expect(top * map.stepHz).toBeCloseTo(25, 0);
  });
});
