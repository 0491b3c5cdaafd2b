import { describe, expect, it } from 'vitest';
import { decorrelated } from '../../../../src/core/signal/noise/decorrelate.ts';
import { normals, preparedOf, samples, tone } from '../made.ts';

const RATE = 100;
const SECONDS = 60;

const drawn = (seed: number, sd: number): Float64Array => {
  const normal = normals(seed);
  return samples(SECONDS * RATE, RATE, () => sd * normal());
};

const product = (a: Float64Array, b: Float64Array): number => a.reduce((sum, v, i) => sum + v * b[i]!, 0) / a.length;
const correlation = (a: Float64Array, b: Float64Array): number =>
  product(a, b) / Math.sqrt(product(a, a) * product(b, b));

/** |Σ x·e^(−jωt)|²/N, so that white noise of variance σ² has σ² on average. */
const powerAt = (x: Float64Array, hz: number): number => {
  let re = 0;
  let im = 0;
  x.forEach((v, i) => {
    re += v * Math.cos((2 * Math.PI * hz * i) / RATE);
    im += v * Math.sin((2 * Math.PI * hz * i) / RATE);
  });
  return (re * re + im * im) / x.length;
};

describe('axes with independent noise', () => {
  it('y = ½x + n of σ 2 is left with n', () => {
    const x = drawn(1, 1);
    const own = drawn(2, 2);
    const [first, second] = decorrelated(preparedOf([x, x.map((v, i) => 0.5 * v + own[i]!)], RATE), 49).pieces[0]!.axes;
    expect(first).toEqual(x);
    // Of 6000 samples the correlation is known to 0.013.
    expect(Math.abs(correlation(first!, second!))).toBeLessThan(0.04);
    expect(product(second!, second!) / 4).toBeCloseTo(1, 1);
    expect(correlation(second!, own)).toBeGreaterThan(0.99);
  });

  it('also where one axis shakes later than the other: frequency by frequency', () => {
    const x = drawn(3, 1);
    const own = drawn(4, 0.1);
    const late = x.map((_, i) => (x[i - 3] ?? 0) + own[i]!);
    const [, second] = decorrelated(preparedOf([x, late], RATE), 49).pieces[0]!.axes;
    expect(Math.abs(correlation(x, late))).toBeLessThan(0.05);
    // Ten times less is left: but for what changes faster than from band to band.
    expect(Math.sqrt(product(second!, second!) / product(late, late))).toBeLessThan(0.25);
  });

  it('a line in the quiet direction of a turned sensor stands as high as xᴴ·C⁻¹·x says', () => {
    const loud = drawn(5, 1);
    const quiet = [drawn(6, 0.05), drawn(7, 0.05)];
    const line = samples(SECONDS * RATE, RATE, tone(0.01, 12.05));
    // A turn by 45° about one axis and then another (sides of a cube's diagonal section).
    const h = Math.SQRT1_2;
    const [u, v] = [quiet[0]!.map((n, i) => n + line[i]!), quiet[1]!];
    const axes = [
      loud.map((n, i) => h * n - h * u[i]!),
      loud.map((n, i) => 0.5 * n + 0.5 * u[i]! - h * v[i]!),
      loud.map((n, i) => 0.5 * n + 0.5 * u[i]! + h * v[i]!),
    ];
    const overNoise = (all: readonly Float64Array[]): number =>
      all.reduce((sum, axis) => sum + powerAt(axis, 12.05) / product(axis, axis), 0);
    const { axes: freed } = decorrelated(preparedOf(axes, RATE), 49).pieces[0]!;
    // Turned back the line alone has a²·N/4 over σ² = 60, and each axis' noise adds one on average.
    expect(overNoise([loud, u, v])).toBeGreaterThan(40);
    expect(overNoise(axes)).toBeLessThan(0.2 * overNoise([loud, u, v]));
    expect(overNoise(freed) / overNoise([loud, u, v])).toBeGreaterThan(0.8);
    expect(overNoise(freed) / overNoise([loud, u, v])).toBeLessThan(1.2);
  });

  it('stands a dead axis, whichever it is: the others come out as without it', () => {
    const x = drawn(1, 1);
    const own = drawn(2, 2);
    const y = x.map((v, i) => 0.5 * v + own[i]!);
    const dead = new Float64Array(x.length);
    const freedOf = (axes: readonly Float64Array[]): readonly Float64Array[] =>
      decorrelated(preparedOf(axes, RATE), 49).pieces[0]!.axes;
    const alone = freedOf([x, y])[1]!;
    for (const [axes, at] of [
      [[x, y, dead], 1],
      [[dead, x, y], 2],
    ] as const) {
      const freed = freedOf(axes);
      expect(freed.flatMap((axis) => Array.from(axis)).every(Number.isFinite)).toBe(true);
      expect(correlation(freed[at]!, alone)).toBeGreaterThan(0.999);
    }
  });

  it('leaves one axis, and a recording too short to tell, as they are; pieces keep their places', () => {
    const alone = preparedOf([drawn(8, 1)], RATE);
    expect(decorrelated(alone, 49)).toBe(alone);
    const short = preparedOf([drawn(9, 1).slice(0, 50), drawn(10, 1).slice(0, 50)], RATE);
    expect(decorrelated(short, 49)).toBe(short);
    const x = drawn(11, 1);
    const two = {
      ...preparedOf([x, x], RATE),
      pieces: [0, 3100].map((from) => ({
        startS: from / RATE,
        axes: [x.slice(from, from + 2900), x.slice(from, from + 2900)],
      })),
    };
    const { pieces } = decorrelated(two, 49);
    expect(pieces.map(({ startS, axes }) => [startS, axes.map(({ length }) => length)])).toEqual([
      [0, [2900, 2900]],
      [31, [2900, 2900]],
    ]);
  });
});
