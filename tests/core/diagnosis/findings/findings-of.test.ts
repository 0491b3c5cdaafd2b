import { describe, expect, it } from 'vitest';
import { findingsOf } from '../../../../src/core/diagnosis/findings/findings-of.ts';
import type { RunInference } from '../../../../src/core/diagnosis/matching/infer-run.ts';
import type { OriginShare } from '../../../../src/core/diagnosis/matching/match.ts';

const RATE_HZ = 100;
const LEVELS = {
  normal: { presence: 0.5, medianMps2: 0.01, spread: 1 },
  fault: { presence: 0.1, medianMps2: 0.3, spread: 0.7 },
};

/** An order above half the rate, seen folded. */
const image = (label: string, trueHz: number, probability: number): OriginShare =>
  ({
    origin: {
      line: { part: label.split(' ')[0], order: 2, label, group: 'road', frequencyHz: trueHz },
      group: 'road',
      trueHz,
      levels: LEVELS,
      place: [{ weight: 1, mean: 0, sd: 0 }],
    },
    image: true,
    probability,
  }) as unknown as OriginShare;

/** A tone of 0.3 m/s² across at 21.65 Hz: at 78.35 Hz it is less than is felt and no drone yet, at 121.65 Hz it is one. */
const inferenceOf = (lines: readonly OriginShare[]): RunInference => {
  const peak = {
    frequencyHz: 21.65,
    frequencySdHz: 0.001,
    amplitudeMps2: 0.3,
    overFloorDb: 30,
    verticalShare: 0,
  };
  const others = { fixed: 0, unlisted: 0, resonance: 0, noise: 0 };
  return {
    run: {
      part: null,
      prepared: { samplingRateHz: RATE_HZ, pieces: [] },
      tracks: [],
      histories: { count: 0, wander: [] },
    },
    model: { road: null, engine: null, factor: 1 },
    posterior: { road: { mean: 0, sd: 0.001 }, engine: { mean: 0, sd: 0.001 } },
    matches: [{ tone: { peak, folds: [] }, lines, others }],
  } as unknown as RunInference;
};

describe('an image that may be several orders', () => {
  it('is taken for one of which it would be noticed, where those are likelier than not', () => {
    // Across (Wd of ISO 2631-1) 0.3 m/s² at 78 Hz is 0.45 of what is felt, at 122 Hz less; from 80 Hz on it is a drone.
    const lines = [
      image('engine 2×', 78.35, 0.38),
      image('driveshaft 2×', 121.65, 0.31),
      image('front driveshaft 2×', 121.65, 0.31),
    ];
    const [finding] = findingsOf([inferenceOf(lines)]);
    expect(finding?.label).toBe('driveshaft 2×');
    expect(finding?.perceived).toBe('heard');
    expect(finding?.trueHz).toBeCloseTo(121.65, 6);
    expect(finding?.probability).toBe(0.31);
  });

  it('is no finding where the likeliest order would not be noticed and the others are less likely than not', () => {
    const lines = [image('engine 2×', 78.35, 0.6), image('driveshaft 2×', 121.65, 0.4)];
    expect(findingsOf([inferenceOf(lines)])).toEqual([]);
  });
});
