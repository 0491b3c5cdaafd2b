import { describe, expect, it } from 'vitest';
import { toBlocks } from '../../../../src/core/signal/prepare/blocks.ts';
import { makeLevels, smoothCandidates, smoothLogTail } from '../../../../src/core/signal/peaks/candidates.ts';
import { findPeaks } from '../../../../src/core/signal/peaks/detect.ts';
import type { Peak } from '../../../../src/core/signal/peaks/peak.ts';
import { mode, noiseRecording, withTone, type NoiseColour } from '../../../support/noise.ts';
import { seededRandom } from '../../../support/random.ts';
import { normals, preparedOf, samples, tone } from '../made.ts';

const RATE = 100;
const whiteOf = (seed: number, seconds: number, axes: number, rate = RATE): Float64Array[] => {
  const normal = normals(seed);
  return Array.from({ length: axes }, () => samples(seconds * rate, rate, () => normal()));
};
const nearest = (peaks: readonly Peak[], hz: number): Peak | undefined =>
  [...peaks].sort((a, b) => Math.abs(a.frequencyHz - hz) - Math.abs(b.frequencyHz - hz))[0];

describe('noise alone', () => {
  // One recording in 100 at most: of 120, more than 5 would come by chance once in 800 (binomial).
  it('hardly ever gives a peak, whatever its colour', () => {
    const colours: NoiseColour[] = ['white', 'pink', 'red', 'hump', 'resonance', 'many resonances'];
    let alarms = 0;
    for (const colour of colours) {
      for (let seed = 1; seed <= 20; seed += 1) {
        if (findPeaks(noiseRecording(colour, 25, RATE, 3, seededRandom(7000 + seed))).length > 0) alarms += 1;
      }
    }
    expect(alarms).toBeLessThanOrEqual(5);
  });

  it('reaches a probability p at a share p of the bins, at every length (F with the averages’ degrees of freedom)', () => {
    const counts = new Map<number, { bins: number; one: number; tenth: number }>();
    for (let seed = 1; seed <= 12; seed += 1) {
      const views = makeLevels(toBlocks(preparedOf(whiteOf(seed, 48, 3), RATE), 49), 2, 49);
      views.forEach((view, v) => {
        const count = counts.get(v) ?? { bins: 0, one: 0, tenth: 0 };
        for (let k = Math.ceil(3 / view.level.stepHz); k * view.level.stepHz < 48; k += 1) {
          const p = Math.exp(smoothLogTail(3, view, k));
          count.bins += 1;
          if (p < 0.01) count.one += 1;
          if (p < 0.1) count.tenth += 1;
        }
        counts.set(v, count);
      });
    }
    expect(counts.size).toBe(4);
    for (const { bins, one, tenth } of counts.values()) {
      // Neighbouring bins repeat each other two to four times over: the least of them, 3600, are worth about 1000.
      expect(one / bins).toBeGreaterThan(0.003);
      expect(one / bins).toBeLessThan(0.02);
      expect(Math.abs(tenth / bins - 0.1)).toBeLessThan(0.035);
    }
  });
});

describe('a line in white noise', () => {
  it('is found, alone, with the frequency, amplitude and height it has; the uncertainties hold', () => {
    const trials = 40;
    let inside = 0;
    let amplitudeInside = 0;
    let others = 0;
    let finest = 0;
    let width = 0;
    let heightDb = 0;
    for (let trial = 1; trial <= trials; trial += 1) {
      const truth = 5 + 1.073 * trial;
      const hidden = preparedOf(whiteOf(100 + trial, 40, 2), RATE);
      const amplitude = [0.3, -0.4];
      const peaks = findPeaks(withTone(hidden, truth, amplitude, trial));
      const peak = nearest(peaks, truth)!;
      expect(Math.abs(peak.frequencyHz - truth)).toBeLessThan(0.01);
      others += peaks.length - 1;
      if (Math.abs(peak.frequencyHz - truth) < 2 * peak.frequencySdHz) inside += 1;
      if (Math.abs(peak.amplitudeMps2 - 0.5) < 2 * peak.amplitudeSdMps2) amplitudeInside += 1;
      expect(Math.abs(peak.axisAmplitudeMps2[0]! - 0.3)).toBeLessThan(0.1);
      expect(Math.abs(peak.axisAmplitudeMps2[1]! - 0.4)).toBeLessThan(0.1);
      if (Math.abs(peak.limitWidthHz - 1.4406 / 40) > 1e-5) continue;
      finest += 1;
      width += peak.widthHz / peak.limitWidthHz;
      heightDb += peak.overFloorDb;
      expect(peak.falseAlarmProbability).toBeLessThan(2e-3);
      expect(peak.lineProbability).toBeGreaterThan(0.95);
      expect(peak.verticalShare).toBeNull();
    }
    // |X|² = A²N/6 over both axes against σ² = 1 each: 1 + 0.25·4000/6/2 is 19.3 dB, 1.4 dB less midway between bins.
    // Straight lines between bins read a width of 1.33 bins on a bin and 2.04 midway, 1.44 being right.
    expect(finest).toBeGreaterThanOrEqual(36);
    expect(Math.abs(width / finest - 1)).toBeLessThan(0.15);
    expect(Math.abs(heightDb / finest - 18.4)).toBeLessThan(0.8);
    // 95 % of 40: fewer than 33 by chance once in 400.
    expect(inside).toBeGreaterThanOrEqual(33);
    expect(amplitudeInside).toBeGreaterThanOrEqual(33);
    expect(others).toBeLessThanOrEqual(2);
  });

  it('is found in 23 of 25 at 16 dB over the floor, hardly ever at 4 dB', () => {
    let strong = 0;
    let weak = 0;
    for (let trial = 1; trial <= 25; trial += 1) {
      const noise = preparedOf(whiteOf(300 + trial, 40, 1), RATE);
      const of = (db: number): Peak[] => findPeaks(withTone(noise, 17.3, [Math.sqrt((6 * 10 ** (db / 10)) / 4000)]));
      if (of(16).some((p) => Math.abs(p.frequencyHz - 17.3) < 0.03)) strong += 1;
      if (of(4).some((p) => Math.abs(p.frequencyHz - 17.3) < 0.03)) weak += 1;
    }
    expect(strong).toBeGreaterThanOrEqual(23);
    expect(weak).toBeLessThanOrEqual(1);
  });

  it('near another is told from it down to three bins', () => {
    const noise = preparedOf(whiteOf(9, 60, 1), RATE);
    const peaks = findPeaks(withTone(withTone(noise, 20, [0.6]), 20.06, [0.4], 1));
    expect(peaks.map((p) => Math.round(100 * p.frequencyHz))).toEqual([2000, 2006]);
    expect(Math.abs(peaks[0]!.amplitudeMps2 - 0.6)).toBeLessThan(0.06);
    expect(Math.abs(peaks[1]!.amplitudeMps2 - 0.4)).toBeLessThan(0.06);
  });

  it('a thousand times over the noise brings no side lobes with it', () => {
    const noise = preparedOf(whiteOf(10, 60, 2), RATE);
    expect(findPeaks(withTone(noise, 31.4159, [1000, 300])).length).toBe(1);
  });

  it('that wanders is one peak at its mean, less sure of its frequency', () => {
    let phase = 0;
    const noise = whiteOf(12, 60, 1)[0]!;
    const wandering = noise.map((v, i) => {
      phase += (2 * Math.PI * (24 + 0.25 * Math.sin((2 * Math.PI * i) / (30 * RATE)))) / RATE;
      return v + 1.5 * Math.cos(phase);
    });
    const peaks = findPeaks(preparedOf([wandering], RATE));
    expect(peaks.length).toBe(1);
    expect(Math.abs(peaks[0]!.frequencyHz - 24)).toBeLessThan(0.1);
    expect(peaks[0]!.frequencySdHz).toBeGreaterThan(0.03);
    expect(Math.abs(peaks[0]!.amplitudeMps2 - 1.5)).toBeLessThan(0.1);
    expect(peaks[0]!.limitWidthHz).toBeGreaterThan(0.1);
  });

  it('above 250 Hz is found too, from short segments, and one below keeps the long ones', () => {
    const noise = preparedOf(whiteOf(13, 30, 1, 1000), 1000);
    const peaks = findPeaks(withTone(withTone(noise, 412.3, [0.5]), 87.65, [0.3]));
    expect(peaks.map((p) => Math.round(10 * p.frequencyHz))).toEqual([877, 4123]);
    expect(peaks[0]!.limitWidthHz).toBeCloseTo(1.4406 / 30, 3);
    expect(peaks[1]!.limitWidthHz).toBeGreaterThan(1.44 / 8.1);
    expect(Math.abs(peaks[0]!.amplitudeMps2 - 0.3)).toBeLessThan(0.03);
    expect(Math.abs(peaks[1]!.amplitudeMps2 - 0.5)).toBeLessThan(0.05);
    expect(Math.abs(peaks[1]!.frequencyHz - 412.3)).toBeLessThan(0.02);
  });

  it('keeps to the range asked for, and too little of a recording has no peaks', () => {
    const two = withTone(withTone(preparedOf(whiteOf(14, 40, 1), RATE), 12, [1]), 30, [1]);
    expect(findPeaks(two, { lowestHz: 20 }).map((p) => Math.round(p.frequencyHz))).toEqual([30]);
    expect(findPeaks(two, { highestHz: 20 }).map((p) => Math.round(p.frequencyHz))).toEqual([12]);
    expect(findPeaks(preparedOf([samples(50, RATE, tone(1, 20))], RATE))).toEqual([]);
    expect(findPeaks(two, { lowestHz: 60 })).toEqual([]);
  });

  it.each([
    [400, 408],
    [250, 420],
    [240, 408],
    [495, 499],
  ])('is looked for in a range that lies high, %i to %i Hz, at 1 kHz', (lowestHz, highestHz) => {
    const noise = preparedOf(whiteOf(15, 30, 1, 1000), 1000);
    const peaks = findPeaks(withTone(noise, 404.2, [0.5]), { lowestHz, highestHz });
    expect(peaks.map((p) => Math.round(p.frequencyHz))).toEqual(lowestHz < 404 && highestHz > 404 ? [404] : []);
  });
});

describe('lines and resonances (damping 1 and 2 %)', () => {
  /** A resonance 25 dB over the floor, and a steady line beside its top or on it. */
  const shaken = (seed: number, damping: number, lineMps2: number, lineHz: number): ReturnType<typeof preparedOf> => {
    const random = seededRandom(seed);
    const white = (): Float64Array => Float64Array.from({ length: 42 * RATE }, random.normal);
    const gain = 10 ** (25 / 20) * 2 * Math.sin((2 * Math.PI * 22) / RATE);
    const hump = mode(white(), 22, damping, RATE);
    const floor = white();
    const line = tone(lineMps2, lineHz, seed);
    return preparedOf(
      [samples(40 * RATE, RATE, (t, i) => floor[i + 2 * RATE]! + gain * hump[i + 2 * RATE]! + line(t))],
      RATE,
    );
  };

  it.each([0.01, 0.02])('a resonance of damping %f alone is not a line in 19 of 20', (damping) => {
    let taken = 0;
    for (let seed = 1; seed <= 20; seed += 1) taken += findPeaks(shaken(500 + seed, damping, 0, 1)).length > 0 ? 1 : 0;
    expect(taken).toBeLessThanOrEqual(1);
  });

  it('a resonance is taken where none can be, and noise without one is not', () => {
    const options = { resonances: false };
    expect(findPeaks(shaken(501, 0.01, 0, 1), options).some((p) => Math.abs(p.frequencyHz - 22) < 1)).toBe(true);
    expect(findPeaks(preparedOf(whiteOf(16, 40, 3, RATE), RATE), options)).toEqual([]);
  });

  it.each([21.3, 22.05])('a line at %f Hz beside or on it is', (hz) => {
    let found = 0;
    for (let seed = 1; seed <= 12; seed += 1) {
      const peaks = findPeaks(shaken(600 + seed, 0.015, 5, hz));
      const own = peaks.find((p) => Math.abs(p.frequencyHz - hz) < 0.03);
      if (own && peaks.length === 1 && Math.abs(own.amplitudeMps2 / 5 - 1) < 0.35) found += 1;
    }
    expect(found).toBeGreaterThanOrEqual(10);
  });
});

describe('segment lengths', () => {
  it('are the longest where only so many are wanted, at two rates as at one', () => {
    const fast = toBlocks(preparedOf(whiteOf(3, 800, 1), 1000), 490);
    const all = makeLevels(fast, 2, 490).map(({ level }) => level.lengthS);
    expect(all.length).toBeGreaterThan(3);
    for (const most of [1, 2, 3])
      expect(makeLevels(fast, 2, 490, undefined, most).map(({ level }) => level.lengthS)).toEqual(all.slice(0, most));
  });
});

describe('candidates', () => {
  it('are the local maxima that pass, each with its frequency and a probability over all bins of all lengths', () => {
    const blocks = toBlocks(withTone(preparedOf(whiteOf(20, 40, 1), RATE), 25, [0.5]), 49);
    const views = makeLevels(blocks, 2, 49);
    const found = smoothCandidates(1, views, 2, 49, 0.005);
    const tests = views.reduce((sum, { level }) => {
      const from = Math.max(3, Math.ceil(2 / level.stepHz));
      return sum + Math.min(level.bins - 4, Math.floor(49 / level.stepHz)) - from + 1;
    }, 0);
    expect(found.length).toBeGreaterThan(2);
    for (const c of found) {
      const { t } = c.view.whitened;
      expect(t[c.bin]! > t[c.bin - 1]! && t[c.bin]! >= t[c.bin + 1]!).toBe(true);
      expect(c.frequencyHz).toBe(c.bin * c.view.level.stepHz);
      expect(c.logSmooth).toBeCloseTo(smoothLogTail(1, c.view, c.bin) + Math.log(tests), 9);
      expect(c.logSmooth).toBeLessThanOrEqual(Math.log(0.005));
    }
    // Every maximum that passes is among them.
    for (const view of views) {
      const { t } = view.whitened;
      for (let k = Math.ceil(2 / view.level.stepHz) + 1; k < view.level.bins - 5; k += 1) {
        if (!(t[k]! > t[k - 1]! && t[k]! >= t[k + 1]!)) continue;
        if (smoothLogTail(1, view, k) + Math.log(tests) > Math.log(0.005)) continue;
        expect(found.some((c) => c.view === view && c.bin === k)).toBe(true);
      }
    }
  });
});
