import { describe, expect, it } from 'vitest';
import { besideLine } from '../../../../src/core/signal/peaks/beside-line.ts';
import { normals, preparedOf, samples, tone } from '../made.ts';

const RATE = 500;
const SECONDS = 24;
const COUNT = SECONDS * RATE;

/** The sum as it is defined (Harris 1978: Hann, periodic), all axes together by root-sum-square. */
const slowly = (axes: readonly Float64Array[], hz: number): number => {
  const hann = (i: number): number => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / COUNT);
  const square = axes.map((axis) => {
    const angle = (2 * Math.PI * hz) / RATE;
    const re = axis.reduce((sum, v, i) => sum + v * hann(i) * Math.cos(angle * i), 0);
    const im = axis.reduce((sum, v, i) => sum + v * hann(i) * Math.sin(angle * i), 0);
    return ((2 / (COUNT / 2)) * Math.hypot(re, im)) ** 2;
  });
  return Math.sqrt(square.reduce((a, b) => a + b));
};

const normal = normals(3);
const AXES = [
  samples(COUNT, RATE, (t) => tone(0.7, 13.21, 1)(t) + tone(0.3, 13.47, 2)(t) + tone(2, 41, 0)(t) + 0.1 * normal()),
  samples(COUNT, RATE, (t) => tone(0.2, 13.21, -1)(t) + 0.1 * normal()),
];

describe('the spectrum beside a line', () => {
  it('is that of the whole recording under a Hann window, bin by bin', () => {
    const { centreHz, binHz, amplitudeMps2 } = besideLine(preparedOf(AXES, RATE, 3), 13.2, 0.5, 10)!;
    expect(binHz).toBeCloseTo(1 / SECONDS, 3);
    expect(Math.abs(centreHz - 13.2)).toBeLessThan(binHz / 2);
    expect(amplitudeMps2.length).toBe(2 * (Math.floor(0.5 / binHz) + 10) + 1);
    const middle = (amplitudeMps2.length - 1) / 2;
    amplitudeMps2.forEach((amplitude, k) => {
      expect(Math.abs(amplitude - slowly(AXES, centreHz + (k - middle) * binHz))).toBeLessThan(0.002);
    });
  });

  it('is taken from the longest stretch', () => {
    const prepared = preparedOf(AXES, RATE, 0);
    const stub = { startS: 40, axes: AXES.map((axis) => axis.subarray(0, 2 * RATE)) };
    const one = besideLine(prepared, 13.2, 0.5, 10)!;
    const two = besideLine({ ...prepared, pieces: [stub, ...prepared.pieces] }, 13.2, 0.5, 10)!;
    expect(two).toEqual(one);
  });

  it('is not there without samples', () => {
    expect(besideLine({ ...preparedOf(AXES, RATE, 0), pieces: [] }, 13.2, 0.5, 10)).toBeNull();
  });
});
