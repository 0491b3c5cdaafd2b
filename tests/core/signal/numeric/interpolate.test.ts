import { describe, expect, it } from 'vitest';
import { interpolateAxes, type FlatTo } from '../../../../src/core/signal/numeric/band-limited.ts';
import { interpolateLinear, interpolateSpline } from '../../../../src/core/signal/numeric/interpolate.ts';
import { resampleEvenly } from '../../../../src/core/signal/prepare/resample.ts';
import { spline } from '../../../reference/signal.json' with { type: 'json' };
import { normals, parkMiller, samples } from '../made.ts';

const interpolateEven = (samples: Float64Array, positions: Float64Array, flatTo: FlatTo = 0.99): Float64Array =>
  interpolateAxes([samples], positions, flatTo)[0]!;

/** Root mean square of the error over that of a tone of amplitude 1, away from the ends, dB. */
function errorDb(own: Float64Array, truth: (i: number) => number, margin: number): number {
  let sum = 0;
  for (let i = margin; i < own.length - margin; i += 1) sum += (own[i]! - truth(i)) ** 2;
  return 10 * Math.log10(sum / (own.length - 2 * margin) / 0.5);
}

describe('values between even samples', () => {
  it.each([0.05, 0.3, 0.6, 0.8])('a tone at %f of half the rate: error under −60 dB (0.1 %)', (share) => {
    const at = (p: number): number => Math.cos(Math.PI * share * p + 0.4);
    const even = samples(400, 1, at);
    const positions = Float64Array.from({ length: 1500 }, (_, i) => 20 + i * 0.2347);
    expect(errorDb(interpolateEven(even, positions), (i) => at(positions[i]!), 0)).toBeLessThan(-60);
  });

  it.each([0.85, 0.9, 0.93, 0.95, 0.97, 0.99])(
    'near half the rate (%f) too, from 192 samples off the ends',
    (share) => {
      const at = (p: number): number => Math.cos(Math.PI * share * p + 0.4);
      const positions = Float64Array.from({ length: 1500 }, (_, i) => 194 + i * 0.2347);
      expect(errorDb(interpolateEven(samples(800, 1, at), positions), (i) => at(positions[i]!), 0)).toBeLessThan(-60);
    },
  );

  it('the quick one at 0.92 of half the rate: error under −60 dB', () => {
    const at = (p: number): number => Math.cos(Math.PI * 0.92 * p + 0.4);
    const positions = Float64Array.from({ length: 1400 }, (_, i) => 30 + i * 0.2347);
    expect(errorDb(interpolateEven(samples(400, 1, at), positions, 0.92), (i) => at(positions[i]!), 0)).toBeLessThan(
      -60,
    );
  });

  it('gives the samples themselves at whole places, a constant everywhere, and the end values beyond', () => {
    const x = parkMiller(3, 60);
    const own = interpolateEven(x, Float64Array.of(0, 5, 30, 59));
    [0, 5, 30, 59].forEach((i, k) => expect(own[k]).toBeCloseTo(x[i]!, 10));
    const flat = interpolateEven(new Float64Array(40).fill(2.5), Float64Array.of(-3, 0.2, 7.77, 39, 50));
    for (const v of flat) expect(v).toBeCloseTo(2.5, 12);
    const [before, after] = interpolateEven(x, Float64Array.of(-4, 90));
    expect(before).toBeCloseTo(x[0]!, 12);
    expect(after).toBeCloseTo(x[59]!, 12);
  });

  it('is no more than the convolution with its own kernel: mirrored input gives mirrored output', () => {
    const x = parkMiller(4, 80);
    const mirrored = x.slice().reverse();
    const places = Float64Array.of(13.2, 30.9, 41.4, 64.75);
    const own = interpolateEven(x, places);
    const other = interpolateEven(
      mirrored,
      places.map((p) => 79 - p),
    );
    own.forEach((v, i) => expect(other[i]).toBeCloseTo(v, 9));
  });
});

describe('values between uneven samples', () => {
  it('the natural cubic spline of scipy.interpolate.CubicSpline (make_signal.py)', () => {
    const own = interpolateSpline(
      Float64Array.from(spline.x),
      Float64Array.from(spline.y),
      Float64Array.from(spline.at),
    );
    spline.value.forEach((v, i) => expect(own[i]).toBeCloseTo(v, 12));
  });

  it('a spline holds its ends, and through two points it is a straight line', () => {
    const own = interpolateSpline(Float64Array.of(0, 1, 3), Float64Array.of(1, 2, 6), Float64Array.of(-1, 4));
    expect(Array.from(own)).toEqual([1, 6]);
    expect(
      Array.from(interpolateSpline(Float64Array.of(0, 2), Float64Array.of(1, 5), Float64Array.of(0.5, 1.5))),
    ).toEqual([2, 4]);
  });

  it('straight lines: by hand', () => {
    const at = (x: number): number => interpolateLinear(Float64Array.of(0, 1, 3, 4), Float64Array.of(1, 3, 7, 0), x);
    expect([-1, 0, 0.5, 1, 2, 3.5, 4, 9].map(at)).toEqual([1, 1, 2, 3, 5, 3.5, 0, 0]);
    expect(interpolateLinear(new Float64Array(0), new Float64Array(0), 1)).toBeNaN();
  });
});

describe('even samples from uneven ones', () => {
  /** Stamps that stray by up to ±30 % of a step, in order. */
  const stamps = (n: number, rate: number, seed: number): Float64Array => {
    const off = parkMiller(seed, n);
    return Float64Array.from({ length: n }, (_, i) => 3 + (i + 0.6 * off[i]!) / rate);
  };

  // Taken as even, stamps that stray by σ = 1.7 ms leave 20·log₁₀(2πfσ): −25, −13 and −8 dB.
  it.each([
    [5, -60],
    [20, -45],
    [35, -25],
  ])('a tone of %f Hz at 100 samples a second: error under %f dB', (hz, bound) => {
    const timeS = stamps(2000, 100, 9);
    const truth = (t: number): number => Math.cos(2 * Math.PI * hz * t + 1);
    const even = resampleEvenly(timeS, [timeS.map(truth)], 100)[0]!;
    expect(errorDb(even, (i) => truth(timeS[0]! + i / 100), 100)).toBeLessThan(bound);
  });

  it('of stamps that all but meet: a tone at 0.95 of half the rate keeps its level, and noise does not burst', () => {
    const normal = normals(12);
    const timeS = Float64Array.from({ length: 2000 }, (_, i) => (i + 0.24 * normal()) / 200).sort();
    const noise = timeS.map(() => 0.1 * normal());
    const [tone, even] = resampleEvenly(timeS, [timeS.map((t) => Math.cos(2 * Math.PI * 95 * t)), noise], 200);
    const sum = (of: (t: number) => number): number =>
      tone!.reduce((all, v, i) => all + v * of(timeS[0]! + i / 200), 0);
    const level = Math.hypot(
      sum((t) => Math.cos(2 * Math.PI * 95 * t)),
      sum((t) => Math.sin(2 * Math.PI * 95 * t)),
    );
    expect(Math.abs((2 * level) / tone!.length - 1)).toBeLessThan(0.05);
    expect(Math.hypot(...even!) / Math.sqrt(even!.length)).toBeLessThan(0.2);
  });

  it('changes nothing where the stamps are even, and counts whole steps', () => {
    const timeS = Float64Array.from({ length: 501 }, (_, i) => 10 + i / 50);
    const x = parkMiller(6, 501);
    const even = resampleEvenly(timeS, [x], 50)[0]!;
    expect(even.length).toBe(501);
    even.forEach((v, i) => expect(v).toBeCloseTo(x[i]!, 9));
    expect(resampleEvenly(Float64Array.of(0, 1), [Float64Array.of(2, 4)], 2)[0]).toEqual(Float64Array.of(2, 3, 4));
  });
});
