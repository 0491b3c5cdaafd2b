import { describe, expect, it } from 'vitest';
import { withoutDrift } from '../../../../src/core/signal/prepare/drift.ts';

const RATE_HZ = 1000;
const SECONDS = 20;

const rms = (values: Float64Array): number => Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / values.length);

describe('what moves slowly taken out', () => {
  it('leaves a fast tone alone to its very ends, wherever in its turn it begins', () => {
    for (const phase of [0, 1, Math.PI / 2, 3]) {
      const tone = Float64Array.from({ length: SECONDS * RATE_HZ }, (_, i) =>
        Math.cos((2 * Math.PI * 173.3 * i) / RATE_HZ + phase),
      );
      const left = withoutDrift(tone, RATE_HZ).map((v, i) => v - tone[i]!);
      // Reflected about the first sample a tone of 1 stood as 0.4 over the first and last seconds.
      expect(rms(left.subarray(0, 2 * RATE_HZ))).toBeLessThan(0.02);
      expect(rms(left.subarray(-2 * RATE_HZ))).toBeLessThan(0.02);
    }
  });

  it('takes gravity and a ramp out to the ends', () => {
    const ramp = Float64Array.from({ length: SECONDS * RATE_HZ }, (_, i) => 9.81 + (0.1 * i) / RATE_HZ);
    expect(rms(withoutDrift(ramp, RATE_HZ))).toBeLessThan(1e-9);
  });
});
