import { describe, expect, it } from 'vitest';
import type { ChirpMap } from '../../../../src/core/diagnosis/track/chirp-map.ts';
import { combEvidence, evidenceMap } from '../../../../src/core/diagnosis/track/comb-evidence.ts';

/** One row, three slopes, 1 Hz bins up to 50 Hz; evidence of bin k at slope c is 100·c + k, so that each place tells itself. */
const BINS = 51;
const map: ChirpMap = {
  timeS: Float64Array.of(0),
  ratesPerS: Float64Array.of(-0.01, 0, 0.01),
  stepHz: 1,
  bins: BINS,
  axes: 1,
  excess: Float32Array.from({ length: 3 * BINS }, (_, i) => 100 * Math.floor(i / BINS) + (i % BINS)),
};
const same = evidenceMap(map, (excess) => excess);
const SCALES = Float64Array.of(Math.log(0.9), 0, Math.log(1.1));
const RATE_HZ = 100;

const gridOf = (linesHz: readonly number[]): number[] =>
  Array.from(combEvidence(map, same, linesHz, SCALES, RATE_HZ), (value) => Math.round(1e4 * value) / 1e4);

describe('evidence of all lines at a speed', () => {
  it('is read where each line would stand, between two bins in proportion', () => {
    // 20.5 Hz at 0.9, 1 and 1.1 times the speed: 18.45, 20.5, 22.55 Hz, at the three slopes.
    const line = [18.45, 20.5, 22.55];
    expect(gridOf([20.5])).toEqual([0, 1, 2].flatMap((slope) => line.map((hz) => 100 * slope + hz)));
  });

  it('adds up over lines', () => {
    const [one, two, both] = [gridOf([20]), gridOf([31]), gridOf([20, 31])];
    both.forEach((value, i) => expect(value).toBeCloseTo(one[i]! + two[i]!, 3));
  });

  it('leaves out what lies beyond the map or next to nothing', () => {
    expect(gridOf([60]).every((value) => value >= 0)).toBe(true);
    // 48 Hz is outside at 1.1 times the speed only; 1.5 Hz is at the edge, and below it at 0.9 times.
    expect(gridOf([48]).slice(3, 6)).toEqual([143.2, 148, 0]);
    expect(gridOf([1.5]).slice(3, 6)).toEqual([0, 101.5, 101.65]);
  });

  it('reads an image at half the weight, at the slope at which it moves: the other way, by the line’s own hertz', () => {
    // 120 Hz at 100 Hz shows at 20 Hz and moves on by 120 Hz per unit of ln speed: six times as steep, beyond the map.
    const [falling, still, rising] = [gridOf([120]).slice(0, 3), gridOf([120]).slice(3, 6), gridOf([120]).slice(6)];
    expect(still).toEqual([8, 20, 32].map((hz) => 0.5 * (100 + hz)));
    expect([...falling, ...rising]).toEqual([0, 0, 0, 0, 0, 0]);
    // 55 Hz shows at 45 Hz and falls as it rises: slopes change places (steeper by 55/45, the nearest is the last).
    const folded = gridOf([55]);
    expect(folded[1]).toBe(0.5 * (200 + 45));
    expect(folded[7]).toBe(0.5 * 45);
  });
});
