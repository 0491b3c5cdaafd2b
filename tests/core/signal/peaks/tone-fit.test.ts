import { describe, expect, it } from 'vitest';
import { toBlocks } from '../../../../src/core/signal/prepare/blocks.ts';
import { lineProbabilityOf } from '../../../../src/core/signal/numeric/line-probability.ts';
import {
  bandHalfWidth,
  measureSteadyLine,
  measureWanderingLine,
} from '../../../../src/core/signal/peaks/measure-line.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { fitTone, greatest, subtractTone } from '../../../../src/core/signal/peaks/tone-fit.ts';
import { makeZoom } from '../../../../src/core/signal/peaks/zoom.ts';
import { seededRandom } from '../../../support/random.ts';
import { normals, preparedOf, samples, tone } from '../made.ts';

const RATE = 100;
const SECONDS = 30;
const N = RATE * SECONDS;

/**
 * Cramér–Rao bound of the frequency of one real tone, var f ≥ 12·fs²/((2π)²·η·N(N² − 1)), η = A²/2σ² (S. M. Kay,
 * Estimation Theory, 1993, ex. 3.14; form from memory, confirmed by simulation).
 */
const bound = (a: number, sigma: number, rate = RATE, n = N): number =>
  Math.sqrt((12 * rate ** 2) / ((2 * Math.PI) ** 2 * (a ** 2 / (2 * sigma ** 2)) * n * (n ** 2 - 1)));

const measured = (
  prepared: Prepared,
  hz: number,
  others: readonly number[] = [],
  axisWeights: readonly number[] = [1, 1, 1],
): ReturnType<typeof measureSteadyLine> => {
  const axes = prepared.pieces[0]!.axes.length;
  const weights = Float64Array.from({ length: axes * axes }, (_, q) => (q < axes ? axisWeights[q]! : 0));
  return measureSteadyLine(makeZoom(toBlocks(prepared, 49)), hz, others, weights);
};

describe('the bound itself', () => {
  it.each([
    [0.05, 0.05, 200, 4000, 6.164045e-4],
    [0.02, 0.1, 100, 2000, 4.358638e-3],
    [1, 0.1, 100, 64, 0.0152303],
  ])('A %f, σ %f, fs %i, N %i: %f Hz', (a, sigma, rate, n, known) => {
    expect(bound(a, sigma, rate, n) / known).toBeCloseTo(1, 5);
  });
});

describe('a steady line in white noise', () => {
  const statedOverBound: number[] = [];
  // Signal-to-noise per sample −14, 0 and +20 dB; 30 s at 100 Hz.
  it.each([
    [0.28, 150],
    [1.41, 150],
    [14.1, 100],
  ])('amplitude %f over σ 1: error within 1.1 of the Cramér–Rao bound, 2σ holds in 19 of 20', (a, trials) => {
    const random = seededRandom(Math.round(100 * a));
    let square = 0;
    let inside = 0;
    let amplitudeInside = 0;
    let stated = 0;
    for (let trial = 0; trial < trials; trial += 1) {
      const hz = 8 + 30 * random.uniform();
      const line = tone(a, hz, 2 * Math.PI * random.uniform());
      const prepared = preparedOf([samples(N, RATE, (t) => line(t) + random.normal())], RATE);
      const m = measured(prepared, hz + (random.uniform() - 0.5) / SECONDS);
      square += (m.frequencyHz - hz) ** 2;
      stated += m.frequencySdHz;
      if (Math.abs(m.frequencyHz - hz) < 2 * m.frequencySdHz) inside += 1;
      if (Math.abs(Math.sqrt(m.power[0]!) - a) < 2 * m.amplitudeSdMps2) amplitudeInside += 1;
    }
    // The root mean square of 150 errors scatters by 6 %: one standard error is added to what is asked.
    expect(Math.sqrt(square / trials) / bound(a, 1)).toBeLessThan(1.1 * (1 + 1 / Math.sqrt(2 * trials)));
    expect(stated / trials / bound(a, 1)).toBeGreaterThan(1);
    expect(stated / trials / bound(a, 1)).toBeLessThan(1.4);
    statedOverBound.push(stated / trials / bound(a, 1));
    // Binomial, 95 % of 100: fewer than 88 by chance 1 in 500.
    expect(inside / trials).toBeGreaterThan(0.88);
    expect(amplitudeInside / trials).toBeGreaterThan(0.88);
  });

  it('is said to be a twentieth less sure than the bound, by what eight parts disagree in by chance', () => {
    // χ² of 12 degrees over 12, less 1 and its standard deviation √(2/12): what is above, 0.046 on average, counts three
    // times in the variance: 1.053 as a mean of roots (SciPy, chi2(12)). 400 trials know it to 0.015.
    expect(statedOverBound.length).toBe(3);
    expect(Math.abs(statedOverBound.reduce((sum, v) => sum + v, 0) / 3 - 1.053)).toBeLessThan(0.035);
  });

  it('on three axes uses them all: precision by the sum of their powers, direction right', () => {
    const random = seededRandom(31);
    const amplitudes = [0.6, -0.3, 0.9];
    let square = 0;
    const trials = 60;
    for (let trial = 0; trial < trials; trial += 1) {
      const hz = 10 + 20 * random.uniform();
      const axes = amplitudes.map((a) => samples(N, RATE, (t) => tone(a, hz, 0.4)(t) + random.normal()));
      const m = measured(preparedOf(axes, RATE), hz);
      square += (m.frequencyHz - hz) ** 2;
      // The noise's standard deviation of an amplitude is √(2/N) = 0.026.
      amplitudes.forEach((a, i) => expect(Math.abs(Math.sqrt(m.power[i]!) - Math.abs(a))).toBeLessThan(0.12));
      // x and y shake against each other, y and z too, x and z together; none is out of phase.
      expect(Math.sign(m.power[3]!)).toBe(-1);
      expect(Math.sign(m.power[5]!)).toBe(1);
      expect(Math.abs(m.power[6]!)).toBeLessThan(0.15);
    }
    expect(Math.sqrt(square / trials) / bound(Math.hypot(...amplitudes), 1)).toBeLessThan(
      1.1 * (1 + 1 / Math.sqrt(2 * trials)),
    );
  });

  it('a loud hiss on one axis does not drown a quiet axis: weighed by the noise found beside the line', () => {
    const random = seededRandom(32);
    let square = 0;
    const trials = 40;
    for (let trial = 0; trial < trials; trial += 1) {
      const hz = 20 + random.uniform();
      const axes = [
        samples(N, RATE, (t) => tone(0.5, hz)(t) + random.normal()),
        samples(N, RATE, (t) => tone(0.5, hz)(t) + 20 * random.normal()),
      ];
      // What is given to begin with is off by a factor of 16.
      square += (measured(preparedOf(axes, RATE), hz, [], [1, 0.04]).frequencyHz - hz) ** 2;
    }
    expect(Math.sqrt(square / trials) / bound(0.5, 1)).toBeLessThan(1.1 * (1 + 1 / Math.sqrt(2 * trials)));
  });
});

describe('lines that are not alone, or not steady', () => {
  it('a line 0.1 Hz from a neighbour ten times as loud is read right when both are fitted', () => {
    const normal = normals(7);
    const both = samples(N, RATE, (t) => tone(0.2, 20)(t) + tone(2, 20.1, 1)(t) + 0.05 * normal());
    const m = measured(preparedOf([both], RATE), 20.003, [20.098]);
    expect(Math.abs(m.frequencyHz - 20)).toBeLessThan(3e-3);
    expect(Math.abs(Math.sqrt(m.power[0]!) - 0.2)).toBeLessThan(0.01);
  });

  it('a drifting line is not said to be as sure as a steady one', () => {
    const normal = normals(8);
    const noise = samples(N, RATE, () => 0.1 * normal());
    const sure = measured(preparedOf([noise.map((v, i) => v + tone(1, 20)(i / RATE))], RATE), 20);
    // 19.97 to 20.03 Hz over the 30 s: the mean is 20.
    const drift = (t: number): number => Math.cos(2 * Math.PI * (19.97 * t + (0.06 * t * t) / 60));
    const unsure = measured(preparedOf([noise.map((v, i) => v + drift(i / RATE))], RATE), 20);
    expect(unsure.frequencySdHz).toBeGreaterThan(5 * sure.frequencySdHz);
    expect(Math.abs(unsure.frequencyHz - 20)).toBeLessThan(2 * unsure.frequencySdHz);
  });

  it('a wandering line is read over short slices: mean frequency, spread and power', () => {
    const normal = normals(9);
    let phase = 0;
    const wandering = samples(6000, RATE, (t) => {
      phase += (2 * Math.PI * (25 + 0.4 * Math.sin((2 * Math.PI * t) / 60))) / RATE;
      return 0.8 * Math.cos(phase) + 0.1 * normal();
    });
    const zoom = makeZoom(toBlocks(preparedOf([wandering], RATE), 49));
    const m = measureWanderingLine(zoom, 25.05, 4, Float64Array.of((RATE / 4) * 100));
    expect(Math.abs(m.frequencyHz - 25)).toBeLessThan(0.03);
    // The wander is 0.4/√2 = 0.28 Hz root mean square.
    expect(m.frequencySdHz).toBeGreaterThan(0.28 / 2 / 1.3);
    expect(m.frequencySdHz).toBeLessThan(0.28);
    expect(Math.abs(Math.sqrt(m.power[0]!) - 0.8)).toBeLessThan(0.03);
  });

  it('noise alone on three axes has no power on average in a wandering line', () => {
    let sum = 0;
    for (let seed = 1; seed <= 10; seed += 1) {
      const normal = normals(40 + seed);
      const axes = Array.from({ length: 3 }, () => samples(6000, RATE, () => normal()));
      const zoom = makeZoom(toBlocks(preparedOf(axes, RATE), 49));
      const weights = Float64Array.from({ length: 9 }, (_, q) => (q < 3 ? RATE / 4 : 0));
      sum +=
        measureWanderingLine(zoom, 25, 5, weights)
          .power.slice(0, 3)
          .reduce((s, v) => s + v, 0) / 10;
    }
    // A slice of 5 s shows 3·4σ²/fs·1.5/5 = 0.036 of noise; 10 runs of some 12 independent slices know it to 0.003.
    expect(Math.abs(sum)).toBeLessThan(0.009);
  });
});

describe('the pieces of the fit', () => {
  it('takes a tone out of its band and puts it back', () => {
    const zoom = makeZoom(toBlocks(preparedOf([samples(N, RATE, tone(1, 20, 0.5))], RATE), 49));
    const band = zoom.band(0, 20, bandHalfWidth(zoom));
    const before = band.axes[0]!.re.slice();
    const fit = fitTone(band, 20.01, Float64Array.of(1), [], 1);
    expect(fit.frequencyHz).toBeCloseTo(20, 5);
    expect(band.axes[0]!.re.every((v, i) => Math.abs(v - before[i]!) < 1e-12)).toBe(true);
    subtractTone(band, fit);
    for (const v of band.axes[0]!.re) expect(Math.abs(v)).toBeLessThan(5e-3);
    subtractTone(band, fit, 1);
    expect(band.axes[0]!.re.every((v, i) => Math.abs(v - before[i]!) < 1e-12)).toBe(true);
  });

  it('finds the top of a curve', () => {
    expect(greatest((x) => -((x - 1.2345) ** 2), 1, 1, 0.1)).toBeCloseTo(1.2345, 6);
    expect(greatest((x) => Math.cos(x), 0.4, 1, 0.1)).toBeCloseTo(0, 6);
  });

  it('the band is 0.6 Hz to a side, or 44 bins of a short recording', () => {
    const zoomOf = (seconds: number): ReturnType<typeof makeZoom> =>
      makeZoom(toBlocks(preparedOf([new Float64Array(seconds * RATE)], RATE), 49));
    expect(bandHalfWidth(zoomOf(100))).toBe(0.6);
    expect(bandHalfWidth(zoomOf(20))).toBeCloseTo(2.2, 12);
  });
});

describe('from a p-value to a probability of a line', () => {
  // T. Sellke, M. J. Bayarri, J. O. Berger, The American Statistician 55(1), 2001: −e·p·ln p; their p 0.05, 0.01, 0.001
  // give 0.407, 0.125, 0.0188, hence at even odds 0.289, 0.111, 0.0184 for the hypothesis.
  it.each([
    [0.05, 0.289],
    [0.01, 0.111],
    [0.001, 0.0184],
  ])('p = %f leaves %f for the resonance', (p, left) => {
    expect(Math.abs(1 - lineProbabilityOf(Math.log(p)) - left)).toBeLessThan(0.0005);
  });

  it('says nothing either way from p = 1/e on, and never more than even', () => {
    for (const log of [-1, -0.5, 0, 3]) expect(lineProbabilityOf(log)).toBeCloseTo(0.5, 12);
    expect(lineProbabilityOf(-800)).toBe(1);
  });
});

describe('a line that drifts over a block', () => {
  it('owns up to it: its frequency is less sure than the bound of a steady one says', () => {
    const { normal } = seededRandom(8);
    // Half a natural bin of 1/30 Hz from end to end: a phase of π/8 off a steady line's in the middle.
    const driftHz = 1 / 60;
    const line = (drift: number): Prepared => {
      const axis = Float64Array.from({ length: N }, (_, i) => {
        const t = i / RATE;
        return Math.cos(2 * Math.PI * (25 * t + (drift * (t - SECONDS / 2) ** 2) / (2 * SECONDS))) + 0.05 * normal();
      });
      return { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes: [axis] }] };
    };
    const of = (prepared: Prepared): number => measured(prepared, 25, [], [1]).frequencySdHz;
    expect(of(line(0)) / bound(1, 0.05)).toBeLessThan(1.3);
    // Root mean square of an even drift is its span over √12; a mean over it is not known to a tenth of that.
    expect(of(line(driftHz))).toBeGreaterThan((0.1 * driftHz) / Math.sqrt(12));
  });
});
