import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../../../src/core/diagnosis/judge-job.ts';
import { compareRuns } from '../../../../src/core/diagnosis/compare/compare.ts';
import { runLevels } from '../../../../src/core/diagnosis/compare/run-levels.ts';
import type { RunInference } from '../../../../src/core/diagnosis/matching/infer-run.ts';
import type { Recording } from '../../../../src/core/reading/recording.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { seededRandom } from '../../../support/random.ts';
import { sideOf } from '../../../support/side.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const WHEEL_HZ = 11;
const CIRCUMFERENCE_M = 2.36;

/** Orders as turns of the wheel with their amplitudes, along x and z as 0.6 to 0.8, while the speed swings by 1 %. */
const recordingOf = (
  orders: readonly (readonly [perTurn: number, mps2: number])[],
  seed: number,
  { rateHz = 200, axes = [0.6, 0, 0.8] }: { rateHz?: number; axes?: readonly number[] } = {},
): Recording => {
  const { normal } = seededRandom(seed);
  const made = axes.map((share) =>
    Float64Array.from({ length: 60 * rateHz }, (_, i) => {
      const t = i / rateHz;
      const turned = WHEEL_HZ * (t + (0.01 / 0.3) * (1 - Math.cos(0.3 * t)));
      return orders.reduce(
        (sum, [perTurn, mps2]) => sum + share * mps2 * Math.cos(2 * Math.PI * perTurn * turned),
        0.03 * normal(),
      );
    }),
  );
  return plainRecording(made, rateHz);
};

const inferenceOf = (recording: Recording, axleRatio: number): RunInference => {
  const job = madeJob(
    {
      tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
      layout: 'rear-drive',
      axleRatio,
      cylinders: 8,
      converter: false,
    },
    { speedMps: WHEEL_HZ * CIRCUMFERENCE_M, speedSource: 'gps', gearRatio: 0.7, load: 'cruise' },
  );
  return must(judgeJob({ job, recordings: [recording] })).inferences[0]!;
};

const SHAFT = 3.73;
const SOUND = [
  [1, 0.05],
  [SHAFT, 0.2],
  [2 * SHAFT, 0.05],
] as const;

describe('runs recorded unlike each other', () => {
  it('are compared on the axes that both have: three axes show more of one motion than one', () => {
    const before = inferenceOf(recordingOf(SOUND, 1), SHAFT);
    const after = inferenceOf(recordingOf(SOUND, 2, { axes: [0.6] }), SHAFT);
    const { pairs } = compareRuns(sideOf(before), sideOf(after));
    const shaft = pairs[0]!.orders.find(({ label }) => label === 'driveshaft 1×')!;
    expect(shaft.verdict).toBe('unchanged');
    expect(Math.abs(shaft.changeDb)).toBeLessThan(0.5);
    expect(pairs[0]!.differences.join(' ')).toContain('3 axes before and 1 after, of which only x is compared');
  });

  it('leave an order out whose place another order’s tone or image has taken', () => {
    // Sampled at 100 Hz driveshaft 2× (77.77 Hz) shows at 22.23 Hz, beside tire 2× at 22.
    const axle = 3.535;
    const tires = [
      [1, 0.05],
      [2, 0.01],
    ] as const;
    const same = [...tires, [2 * axle, 0.24]] as const;
    const before = inferenceOf(recordingOf(same, 3), axle);
    const after = inferenceOf(recordingOf(same, 4, { rateHz: 100 }), axle);
    expect(runLevels(before).has('tire 2×')).toBe(true);
    expect(runLevels(after).has('tire 2×')).toBe(false);
    // What could hide there is told, and no change is made of it.
    const tire = compareRuns(sideOf(before), sideOf(after)).pairs[0]!.orders.find(({ label }) => label === 'tire 2×');
    expect(tire?.real ?? false).toBe(false);
  });
});
