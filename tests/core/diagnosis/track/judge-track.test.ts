import { describe, expect, it } from 'vitest';
import { best, judge, reachOf, type Judged } from '../../../../src/core/diagnosis/track/judge-track.ts';
import { sharpness } from '../../../../src/core/diagnosis/track/sharpness.ts';
import { STEADY, type SpeedTrack } from '../../../../src/core/signal/speed/equal-angle.ts';
import { swayingSpeed } from '../../../support/swaying-speed.ts';
import { normals, preparedOf } from '../../signal/made.ts';

const RATE_HZ = 200;
const LENGTH_S = 60;
const SWING = 0.01;
const PERIOD_S = 24;

const speed = swayingSpeed([{ depth: SWING, periodS: PERIOD_S }]);
const timeS = Float64Array.from({ length: LENGTH_S + 1 }, (_, i) => i);
const track: SpeedTrack = { timeS, relative: timeS.map(speed.at) };
const opposite: SpeedTrack = { ...track, relative: track.relative.map((r) => 2 - r) };

const recorded = (hz: number) => {
  const normal = normals(7);
  return preparedOf(
    [
      Float64Array.from(
        { length: LENGTH_S * RATE_HZ },
        (_, i) => 0.1 * Math.cos(2 * Math.PI * hz * speed.turnedAt(i / RATE_HZ)) + 0.05 * normal(),
      ),
    ],
    RATE_HZ,
  );
};

describe('a track judged by how sharp lines are on it', () => {
  const prepared = recorded(40);
  const steady = sharpness(prepared, RATE_HZ);

  it('reaches as far as its greatest relative change, either way', () => {
    expect(reachOf(track)).toBeCloseTo(Math.log(1 / (1 - SWING)), 3);
    expect(reachOf({ timeS: Float64Array.of(0, 1, 2), relative: Float64Array.of(1, 1.2, 0.9) })).toBeCloseTo(
      Math.log(1.2),
      12,
    );
    expect(reachOf(STEADY)).toBe(0);
  });

  it('gains much where it is the line’s own, nothing where it is none or turns the other way', () => {
    const own = judge(prepared, track, steady);
    expect(own.gain).toBeGreaterThan(100);
    expect(judge(prepared, STEADY, steady).gain).toBeLessThan(1);
    expect(judge(prepared, opposite, steady).gain).toBeLessThan(1);
    expect(own.bands.reduce((a, b) => (b.evidence > a.evidence ? b : a)).frequencyHz).toBeCloseTo(40, 0);
  });

  it('does not gain by a fixed tone that it smears', () => {
    const normal = normals(8);
    const fixed = preparedOf(
      [
        Float64Array.from(
          { length: LENGTH_S * RATE_HZ },
          (_, i) => 0.1 * Math.cos((2 * Math.PI * 40 * i) / RATE_HZ) + 0.05 * normal(),
        ),
      ],
      RATE_HZ,
    );
    expect(judge(fixed, track, sharpness(fixed, RATE_HZ)).gain).toBeLessThan(1);
  });

  it('the best of several gains most; of none there is no best', () => {
    const of = (gain: number): Judged => ({ track, even: prepared, bands: [], gain });
    expect(best([of(3), of(9), of(5)])?.gain).toBe(9);
    expect(best([])).toBeNull();
  });
});
