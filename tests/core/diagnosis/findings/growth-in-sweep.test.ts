import { describe, expect, it } from 'vitest';
import { growthInSweep } from '../../../../src/core/diagnosis/findings/growth-in-sweep.ts';
import { judgeJob } from '../../../../src/core/diagnosis/judge-job.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { seededRandom } from '../../../support/random.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const RATE_HZ = 200;
const LENGTH_S = 60;
const CIRCUMFERENCE_M = 2.36;
const AXLE = 3.73;

/** Driveshaft 1× as a power of the speed, 0.3 m/s² at the end, while the speed goes evenly from one to another. */
const growthOf = (exponent: number, fromMps: number, toMps: number, shareAt = (_mps: number): number => 1) => {
  const { normal } = seededRandom(11);
  const gain = (toMps - fromMps) / LENGTH_S;
  const axis = Float64Array.from({ length: LENGTH_S * RATE_HZ }, (_, i) => {
    const t = i / RATE_HZ;
    const turned = (AXLE * (fromMps * t + (gain / 2) * t ** 2)) / CIRCUMFERENCE_M;
    const mps = fromMps + gain * t;
    const amplitude = 0.3 * (mps / toMps) ** exponent * shareAt(mps);
    return amplitude * Math.cos(2 * Math.PI * turned) + 0.03 * normal();
  });
  const timeS = Float64Array.from({ length: LENGTH_S + 1 }, (_, k) => k);
  const value = timeS.map((t) => fromMps + gain * t);
  const log = { timeS, value, columnName: 'speed', unit: 'm/s', unitBecause: '', step: 0.01, intervalS: 1 };
  const job = madeJob(
    {
      tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
      layout: 'rear-drive',
      axleRatio: AXLE,
      cylinders: 4,
    },
    { load: 'pull' },
  );
  const judged = must(judgeJob({ job, recordings: [plainRecording([axis], RATE_HZ, log)] }));
  const finding = judged.found[0]!;
  expect(finding).toMatchObject({ part: 'driveshaft', order: 1 });
  return growthInSweep(finding);
};

describe('a level within one sweep', () => {
  // The force of an unbalance is m·r·ω² (mechanics): a level that grows with its square has exponent 2.
  it.each([2, 0])('that follows the power %d of the speed is told to', (exponent) => {
    const growth = growthOf(exponent, 20, 31);
    if (growth === null || typeof growth === 'string') throw new Error(`not told: ${growth}`);
    expect(Math.abs(growth.value - exponent)).toBeLessThan(2 * growth.sd);
    expect(growth.sd).toBeLessThan(0.5);
  });

  it('stays hidden where the sweep goes through a resonance', () => {
    // Second-order resonance of 5 % of critical damping at 25 m/s: |1 / (1 − r² + 2jζr)| (mechanics).
    const share = (mps: number): number => 0.2 / Math.hypot(1 - (mps / 25) ** 2, (0.1 * mps) / 25);
    expect(growthOf(2, 20, 31, share)).toBe('resonance');
  });

  it('stays hidden where the noise covers the order at the slow end', () =>
    expect(growthOf(2, 20, 31, (mps) => (mps < 23 ? 1e-3 : 1))).toBe('noise'));

  it('says nothing of growth at about one speed', () => expect(growthOf(2, 27, 28)).toBeNull());
});
