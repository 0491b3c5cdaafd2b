import { expect, test } from 'vitest';
import fc from 'fast-check';
import { aliasOfHz, visibilityOf } from '../../../src/core/vehicle/alias.ts';

test.each([
  [87, 100, 13],
  [107.5197, 100, 7.5197],
  [53.7599, 50, 3.7599],
  [100, 100, 0],
  [149, 100, 49],
  [30, 100, 30],
])('%d Hz sampled at %d Hz shows at %d Hz (|f − fs·round(f/fs)|)', (frequencyHz, rateHz, imageHz) => {
  expect(aliasOfHz(frequencyHz, rateHz)).toBeCloseTo(imageHz, 9);
});

test('half the rate itself is above: its amplitude depends on the phase', () => {
  expect(visibilityOf(50, 100).visibility).toBe('above-half-rate');
  expect(visibilityOf(49.99, 100)).toEqual({ visibility: 'below-half-rate' });
  expect(visibilityOf(1e6, undefined)).toEqual({ visibility: 'below-half-rate' });
});

test('samples of a tone are samples of its image', () => {
  fc.assert(
    fc.property(fc.double({ min: 0.1, max: 2000, noNaN: true }), fc.integer({ min: 20, max: 1000 }), (hz, rateHz) => {
      const imageHz = aliasOfHz(hz, rateHz);
      for (let n = 0; n < 20; n += 1) {
        expect(Math.cos((2 * Math.PI * imageHz * n) / rateHz)).toBeCloseTo(
          Math.cos((2 * Math.PI * hz * n) / rateHz),
          6,
        );
      }
    }),
    { numRuns: 50 },
  );
});
