import { describe, expect, it } from 'vitest';
import { likelyVerticalPower, verticalShare } from '../../../../src/core/signal/peaks/vertical-share.ts';
import { outer } from '../../../../src/core/signal/numeric/hermitian.ts';
import { seededRandom } from '../../../support/random.ts';

describe('the vertical part of a line', () => {
  it('is what was read where the road hides little', () => {
    expect(likelyVerticalPower(0.004, 1e-12, 0.01)).toBeCloseTo(0.004, 9);
    // Stronger than along the horizontal axes, nothing says that noise took any.
    expect(likelyVerticalPower(0.006, 0.003, 0.01)).toBe(0.006);
    expect(likelyVerticalPower(0.004, 0.003, 0)).toBe(0.004);
    expect(likelyVerticalPower(-0.001, 0.003, 0)).toBe(0);
  });

  it('is, on average, what is there, where the line shakes all ways alike and the road hides it', () => {
    // By drawing: complex normal amplitudes of mean square `before` on the vertical axis, in noise of `noisePower`. The
    // mean over all draws of a posterior mean is the mean of what was drawn (e.g. Kay, 1993, ch. 11).
    const { normal } = seededRandom(5);
    const before = 0.002;
    const noisePower = 0.003;
    let drawn = 0;
    let told = 0;
    const draws = 40_000;
    for (let i = 0; i < draws; i++) {
      const part = (power: number): number => normal() * Math.sqrt(power / 2);
      const [re, im] = [part(before), part(before)];
      const read = (re + part(noisePower)) ** 2 + (im + part(noisePower)) ** 2 - noisePower;
      if (read >= before) continue;
      drawn += re * re + im * im;
      told += likelyVerticalPower(read, noisePower, 2 * before);
    }
    expect(told / drawn).toBeGreaterThan(0.98);
    expect(told / drawn).toBeLessThan(1.02);
  });

  it('is a share of the whole, along gravity however the sensor is mounted, and never more than all', () => {
    const up = [0.6, 0, 0.8];
    const amplitude = { re: [0.06, 0, 0.08], im: [0, 0, 0] };
    const still = new Float64Array(9);
    expect(verticalShare(3, outer(3, amplitude), still, up)).toBeCloseTo(1, 9);
    expect(verticalShare(3, outer(3, { re: [0.08, 0, -0.06], im: [0, 0, 0] }), still, up)).toBeCloseTo(0, 9);
    // Noise along gravity alone, of 0.01²: hand case. Before the reading (0.08² + 0.06²)/2 = 0.005; of the noise's
    // 0.0001 that leaves 0.0001·k(k + 1) with k = 0.005/0.0051, a share of 1.94 %.
    const noise = outer(3, { re: [0.006, 0, 0.008], im: [0, 0, 0] });
    expect(verticalShare(3, outer(3, { re: [0.08, 0, -0.06], im: [0, 0, 0] }), noise, up)).toBeCloseTo(0.0194, 4);
  });

  it('stays as read where an axis is missing', () => {
    const noise = outer(2, { re: [0, 0.05], im: [0, 0] });
    expect(verticalShare(2, outer(2, { re: [0.1, 0], im: [0, 0] }), noise, [0, 1])).toBeCloseTo(0, 9);
  });

  it('is not made of what is no more than noise', () => {
    const noise = outer(3, { re: [0.02, 0.02, 0.02], im: [0, 0, 0] });
    expect(verticalShare(3, outer(3, { re: [0, 0, 0.001], im: [0, 0, 0] }), noise, [0, 0, 1])).toBeLessThan(0.001);
  });
});
