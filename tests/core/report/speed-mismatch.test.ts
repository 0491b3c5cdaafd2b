import { describe, expect, it } from 'vitest';
import { speedMismatch } from '../../../src/core/report/build/speed-mismatch.ts';
import type { SpeedReport } from '../../../src/core/report/report.ts';

/** 225/60R16 stated (3.05 times 676.4 mm) for P235/75R15 (3.05 times 733.5 mm): 8.44 % more, so turns 7.8 % slower. */
const STATED_M = 2.063;
const TRUE_M = 2.2372;
const speed = (over: Partial<SpeedReport> = {}): SpeedReport => ({
  statedMps: 26.8224,
  source: 'gps',
  circumferenceM: STATED_M,
  usedMps: (26.8224 * STATED_M) / TRUE_M,
  scale: STATED_M / TRUE_M,
  scaleSd: 0.0008,
  impliedCircumferenceM: TRUE_M,
  impliedCircumferenceSdM: 0.002,
  ...over,
});

describe('a speed that the orders do not fit', () => {
  it('is told, with the circumference that would fit', () => {
    expect(speedMismatch(speed(), 0.018, null)?.text).toBe(
      'By its orders the wheels turned 8 % slower than the speed and the tire make them. Check the speed and the tire ' +
        'size: they would fit with a rolling circumference of 2.24 m (88.1 in) instead of 2.06 m (81.2 in).',
    );
    expect(speedMismatch(speed({ scale: 1.08 }), 0.018, null)?.text).toContain('8 % faster');
  });

  it('may be an axle ratio as well: 3.73 × 2.063 / 2.2372 by hand', () => {
    expect(speedMismatch(speed(), 0.018, 3.73)?.text).toContain('would fit with 3.44 instead of 3.73.');
  });

  it('is nothing to tell within what source and tire allow, within two percent, or where nothing is known', () => {
    expect(speedMismatch(speed(), 0.04, null)).toBeNull();
    expect(speedMismatch(speed({ scaleSd: 0.04 }), 0.001, null)).toBeNull();
    expect(speedMismatch(speed({ scale: 1.019 }), 0.001, null)).toBeNull();
    expect(speedMismatch(speed({ scale: 1.021 }), 0.001, null)).not.toBeNull();
    expect(speedMismatch(speed({ impliedCircumferenceM: null }), 0.001, null)).toBeNull();
  });
});
