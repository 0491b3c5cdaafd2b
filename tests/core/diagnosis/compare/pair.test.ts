import { describe, expect, it } from 'vitest';
import { fasterDb, pairRuns, statedFaster } from '../../../../src/core/diagnosis/compare/pair.ts';
import { judgeJob } from '../../../../src/core/diagnosis/judge-job.ts';
import type { RunInference } from '../../../../src/core/diagnosis/matching/infer-run.ts';
import type { RunCondition } from '../../../../src/core/vehicle/vehicle.ts';
import { recordingOfOrders } from '../../../support/orders.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

/** The engine's first order alone, the vehicle standing. */
const standing = (rpm: number, condition: RunCondition = {}): RunInference => {
  const orders = [[1, 0.2]] as const;
  const recording = recordingOfOrders({ wheelHz: rpm / 60, rateHz: 200, seconds: 20, orders, seed: rpm });
  const job = madeJob(
    { layout: 'front-drive', cylinders: 4 },
    { file: `${rpm}.csv`, load: 'standing', engineRpm: rpm, ...condition },
  );
  return must(judgeJob({ job, recordings: [recording] })).inferences[0]!;
};

describe('runs made standing', () => {
  const slow = standing(1500);
  const fast = standing(3000);

  it('are paired by the speed of the engine: twice as fast is not like for like', () => {
    expect(pairRuns([slow], [fast])).toEqual([]);
    const pairs = pairRuns([slow], [fast, standing(1530)]);
    expect(pairs.map(({ after }) => after.run.name)).toEqual(['1530.csv']);
    expect(statedFaster(pairs[0]!)).toBeCloseTo(1.02, 6);
    // 2 % faster is 0.172 dB of speed, as far as the recordings place the engine's speed.
    expect(fasterDb(pairs[0]!)).toBeCloseTo(20 * Math.log10(1.02), 1);
  });

  it('are paired where their road speed is stated as nothing', () => {
    expect(pairRuns([standing(1500, { speedMps: 0 })], [slow])).toHaveLength(1);
  });
});
