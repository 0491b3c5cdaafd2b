import { describe, expect, it } from 'vitest';
import {
  effectiveAverages,
  lobeWidthBins,
  mainLobe,
  noiseBandwidthBins,
  overlapCorrelation,
  WINDOW_NAMES,
  windowSamples,
  type WindowName,
} from '../../../../src/core/signal/spectra/windows.ts';
import { mean } from '../../../../src/core/signal/numeric/statistics.ts';
import reference from '../../../reference/signal.json' with { type: 'json' };

/** Σw/N: what a steady tone on a bin is scaled by. */
const coherentGain = (name: WindowName): number => mean(windowSamples(name, 64));

/** Loss of a tone midway between two bins, dB (positive). */
const scallopLossDb = (name: WindowName): number => -20 * Math.log10(mainLobe(name, 0.5));

/** Computed from SciPy's windows (the flat-top from the coefficients by its cosine sum): tests/reference/make_signal.py. */
const figures = (name: WindowName): (typeof reference.windows)['hann'] => reference.windows[name];

describe.each(WINDOW_NAMES)('the %s window', (name) => {
  const known = figures(name);

  it('has the samples that SciPy gives', () => {
    const w = windowSamples(name, 16);
    [0, 1, 5, 8, 11].forEach((i, k) => expect(w[i]).toBeCloseTo(known.samples[k]!, 12));
  });

  it('has the gain, bandwidth, loss and width that follow from those', () => {
    expect(coherentGain(name)).toBeCloseTo(known.coherentGain, 10);
    expect(noiseBandwidthBins(name)).toBeCloseTo(known.noiseBandwidthBins, 9);
    expect(scallopLossDb(name)).toBeCloseTo(known.scallopLossDb, 5);
    expect(lobeWidthBins(name)).toBeCloseTo(known.halfPowerWidthBins, 3);
    expect(overlapCorrelation(name, 0.5)).toBeCloseTo(known.correlation50, 8);
    expect(overlapCorrelation(name, 0.75)).toBeCloseTo(known.correlation75, 8);
  });

  it('has the main lobe of its own transform, on bins and between', () => {
    [0.25, 0.75, 1, 1.5, 2.5, 3].forEach((d, k) => {
      expect(mainLobe(name, d)).toBeCloseTo(known.lobe[k]!, 6);
      expect(mainLobe(name, -d)).toBeCloseTo(known.lobe[k]!, 6);
    });
    expect(mainLobe(name, 0)).toBe(1);
  });

  it('has its highest side lobe where and as high as the transform shows', () => {
    const at = known.highestSideLobeBins;
    const db = (d: number): number => 20 * Math.log10(mainLobe(name, d));
    expect(Math.abs(db(at) - known.highestSideLobeDb)).toBeLessThan(0.02);
  });
});

describe('windows against printed figures', () => {
  // F. J. Harris, Proc. IEEE 66(1), 1978, Table I; the printed values are from memory. His Hamming is 25/46, ours 0.54.
  it.each([
    ['rectangular', 1, 1, 3.92, -13, 0.89, 0.5, 0.75],
    ['hann', 0.5, 1.5, 1.42, -32, 1.44, 1 / 6, 0.659],
    ['hamming', 0.54, 1.36, 1.78, -43, 1.3, 0.235, 0.707],
    ['blackman-harris', 0.36, 2, 0.83, -92, 1.9, 0.038, 0.46],
  ] as const)('%s as in Harris 1978', (name, gain, bandwidth, scallop, side, width, half, threeQuarters) => {
    expect(Math.abs(coherentGain(name) - gain)).toBeLessThan(0.005);
    expect(Math.abs(noiseBandwidthBins(name) - bandwidth)).toBeLessThan(0.006);
    expect(Math.abs(scallopLossDb(name) - scallop)).toBeLessThan(0.03);
    expect(Math.abs(figures(name).highestSideLobeDb - side)).toBeLessThan(0.6);
    expect(Math.abs(lobeWidthBins(name) - width)).toBeLessThan(0.006);
    expect(Math.abs(overlapCorrelation(name, 0.5) - half)).toBeLessThan(0.002);
    expect(Math.abs(overlapCorrelation(name, 0.75) - threeQuarters)).toBeLessThan(0.001);
  });

  // G. Heinzel, A. Rüdiger, R. Schilling 2002: the flat-top of ISO 18431-2 is flat within 0.01 dB, peak 4.639 (from memory).
  it('the flat-top reads a tone anywhere between two bins within 0.01 dB', () => {
    for (let d = 0; d <= 0.5; d += 0.01) expect(Math.abs(20 * Math.log10(mainLobe('flat-top', d)))).toBeLessThan(0.01);
    expect(windowSamples('flat-top', 4096)[2048]).toBeCloseTo(4.6392, 9);
    expect(noiseBandwidthBins('flat-top')).toBeCloseTo(3.77, 2);
  });

  it('hands out the same samples again, whatever lengths were asked for between', () => {
    const before = Array.from(windowSamples('hann', 100));
    for (let n = 2; n < 60; n += 1) windowSamples('hamming', n);
    expect(Array.from(windowSamples('hann', 100))).toEqual(before);
  });
});

describe('averages that overlapped segments are worth', () => {
  // Welch 1967 with Hann's ρ = 1/6 at half overlap: K/(1 + 2ρ²(K − 1)/K), worked by hand.
  it.each([
    [1, 1],
    [7, 6.681818],
    [15, 14.260563],
    [31, 29.418367],
  ])('%i half-overlapped Hann segments are worth %f', (count, worth) => {
    expect(effectiveAverages('hann', 0.5, count)).toBeCloseTo(worth, 5);
  });

  it('without overlap each segment counts', () => {
    for (const name of WINDOW_NAMES) expect(effectiveAverages(name, 0, 20)).toBe(20);
  });

  it('at three quarters overlap three neighbours count (sum worked out with SciPy’s correlations)', () => {
    const { correlation75: r1, correlation50: r2 } = reference.windows.hann;
    const r3 = overlapCorrelation('hann', 0.25);
    const k = 40;
    const sum = 1 + 2 * (r1 ** 2 * (1 - 1 / k) + r2 ** 2 * (1 - 2 / k) + r3 ** 2 * (1 - 3 / k));
    expect(effectiveAverages('hann', 0.75, k)).toBeCloseTo(k / sum, 6);
    expect(r3).toBeLessThan(r2);
  });
});
