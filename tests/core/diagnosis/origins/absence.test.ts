import { describe, expect, it } from 'vitest';
import { logAbsence, seenProbability, type DetectionLimit } from '../../../../src/core/diagnosis/origins/absence.ts';
import type { Origin } from '../../../../src/core/diagnosis/origins/origin.ts';
import type { ScaleAxis } from '../../../../src/core/diagnosis/origins/scale-prior.ts';

/** Sampled at 100 Hz; what is above 0.01 m/s² is found, but only from 1 m/s² on below 20 Hz. */
const LIMIT: DetectionLimit = {
  samplingRateHz: 100,
  stepHz: 1,
  limitMps2: Float64Array.from({ length: 51 }, (_, hz) => (hz < 20 ? 1 : 0.01)),
};
/** There in 6 of 10 sound vehicles, half of these above 0.01 m/s²; hardly ever at fault. */
const originAt = (trueHz: number): Origin => ({
  line: {} as Origin['line'],
  group: 'road',
  trueHz,
  levels: {
    normal: { presence: 0.6, medianMps2: 0.01, spread: 0.5 },
    fault: { presence: 0, medianMps2: 0.1, spread: 1 },
  },
  place: [{ weight: 1, mean: 0, sd: 1e-4 }],
});

describe('how surely a line would have been seen', () => {
  it('is its share above the limit at its place', () => {
    expect(seenProbability(originAt(30), 30, LIMIT)).toBeCloseTo(0.3, 9);
    expect(seenProbability(originAt(15), 15, LIMIT)).toBeLessThan(1e-6);
  });

  it('says little of an image: it may not have got through, and counts at the place where it shows', () => {
    // 70 Hz folds to 30 Hz; of an image one in five would show (judgment). 88 Hz folds to 12 Hz, where nothing shows.
    expect(seenProbability(originAt(70), 70, LIMIT)).toBeCloseTo(0.2 * 0.3, 9);
    expect(seenProbability(originAt(88), 88, LIMIT)).toBeLessThan(1e-6);
  });
});

describe('the absence of lines along a scale', () => {
  it('is the sum over the lines, each at the place that the scale gives it', () => {
    const axis: ScaleAxis = { start: -0.48, step: 0.01, logPrior: new Float64Array(97) };
    const log = logAbsence([originAt(30), originAt(70)], axis, LIMIT);
    expect(log).toHaveLength(97);
    expect(log[48]).toBeCloseTo(Math.log(1 - 0.3) + Math.log(1 - 0.06), 6);
    // 18.6 and 43.3 Hz: the first is hidden, the second below half the rate; 48.5 and 113 Hz: that one folds to 13 Hz.
    expect(log[0]).toBeCloseTo(Math.log(1 - 0.3), 6);
    expect(log[96]).toBeCloseTo(Math.log(1 - 0.3), 6);
  });
});
