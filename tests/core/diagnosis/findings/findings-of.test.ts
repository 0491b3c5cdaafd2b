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

interface Seen {
  readonly frequencyHz: number;
  readonly amplitudeMps2: number;
  readonly verticalShare: number;
  readonly lines: readonly OriginShare[];
}

const inferenceFrom = (samplingRateHz: number, tones: readonly Seen[]): RunInference => {
  const others = { fixed: 0, unlisted: 0, resonance: 0, noise: 0 };
  return {
    run: {
      part: null,
      prepared: { samplingRateHz, pieces: [] },
      tracks: [],
      histories: { count: 0, wander: [] },
      recording: { clippedShare: 0 },
    },
    model: { road: null, engine: null, factor: 1 },
    posterior: { road: { mean: 0, sd: 0.001 }, engine: { mean: 0, sd: 0.001 } },
    matches: tones.map(({ lines, ...peak }) => ({
      tone: { peak: { ...peak, frequencySdHz: 0.001, overFloorDb: 30 }, folds: [] },
      lines,
      others,
    })),
  } as unknown as RunInference;
};

/** A tone of 0.3 m/s² across at 21.65 Hz: at 78.35 Hz it is less than is felt and no drone yet, at 121.65 Hz it is one. */
const inferenceOf = (lines: readonly OriginShare[]): RunInference =>
  inferenceFrom(RATE_HZ, [{ frequencyHz: 21.65, amplitudeMps2: 0.3, verticalShare: 0, lines }]);

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

describe('orders of one part', () => {
  /** 1× up and down at 11 Hz, as sound vehicles may have it, and 3× across at 33 Hz, as a fault has; at 10 Hz seen folded. */
  const labelsOf = (part: string): readonly string[] =>
    findingsOf([
      inferenceFrom(10, [
        { frequencyHz: 1, amplitudeMps2: 0.06, verticalShare: 1, lines: [image(`${part} 1×`, 11, 1)] },
        { frequencyHz: 3, amplitudeMps2: 0.6, verticalShare: 0, lines: [image(`${part} 3×`, 33, 1)] },
      ]),
    ]).map(({ label }) => label);

  it('of a tire are one fault’s: what is felt most comes first. Of an engine each has a cause of its own', () => {
    // ISO 2631-1: 0.06 m/s² up and down at 11 Hz (Wk 0.96) is 3.8 times what is felt, 0.6 across at 33 Hz (Wd 0.06) 2.4.
    expect(labelsOf('tire')).toEqual(['tire 1×', 'tire 3×']);
    expect(labelsOf('engine')).toEqual(['engine 3×', 'engine 1×']);
  });
});
