import { describe, expect, it } from 'vitest';
import { driveOf } from '../../../../src/core/diagnosis/drives/stretches.ts';
import type { Track } from '../../../../src/core/reading/recording.ts';
import { seededRandom } from '../../../support/random.ts';

const logOf = (mps: readonly number[]): Track => ({
  timeS: Float64Array.from(mps, (_, i) => i),
  value: Float64Array.from(mps),
  columnName: 'speed',
  unit: 'm/s',
  unitBecause: '',
  step: 0.1,
  intervalS: 1,
});

/** Longest stretch of a log of one value a second that stays within 4 % to either side, every one looked at. */
const longestBySlowSearch = (mps: readonly number[]): number => {
  let longest = 0;
  for (let from = 0; from < mps.length; from++) {
    let [low, high] = [Infinity, 0];
    for (let to = from; to < mps.length; to++) {
      low = Math.min(low, mps[to]!);
      high = Math.max(high, mps[to]!);
      if (low < 4 || high > (1.04 / 0.96) * low) break;
      longest = Math.max(longest, to + 1 - from);
    }
  }
  return longest;
};

describe('the steady stretches of a drive', () => {
  it('are as long as a search of every stretch finds', () => {
    for (let seed = 1; seed <= 40; seed++) {
      const { uniform } = seededRandom(seed);
      let held = 20;
      const mps = Array.from({ length: 400 }, () => {
        if (uniform() < 0.02) held = 30 * uniform();
        return held * (0.985 + 0.03 * uniform());
      });
      const first = driveOf(logOf(mps))!.holds[0];
      const longest = longestBySlowSearch(mps);
      // A second is left out at each end, and one stands between the first and the last of the values.
      if (longest >= 27) expect(first!.toS - first!.fromS).toBe(longest - 3);
      else expect(first).toBeUndefined();
    }
  });

  it('of a drive of five hours that slowly gets faster are found at once', () => {
    const slow = logOf(Array.from({ length: 20_000 }, (_, i) => 5 + i / 800));
    const tookMs = [1, 2, 3].map(() => {
      const before = process.cpuUsage();
      expect(driveOf(slow)!.holds.length).toBeGreaterThan(10);
      const { user, system } = process.cpuUsage(before);
      return (user + system) / 1000;
    });
    expect(Math.min(...tookMs)).toBeLessThan(500);
  });
});
