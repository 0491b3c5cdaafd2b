import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../../src/core/diagnosis/judge-job.ts';
import { compareRuns } from '../../../src/core/diagnosis/compare/compare.ts';
import { findingsOf } from '../../../src/core/diagnosis/findings/findings-of.ts';
import type { RunInference } from '../../../src/core/diagnosis/matching/infer-run.ts';
import { analyse } from '../../../src/core/analyse.ts';
import type { Recording } from '../../../src/core/reading/recording.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';
import { recordingOfOrders } from '../../support/orders.ts';
import { seededRandom } from '../../support/random.ts';
import { sideOf } from '../../support/side.ts';
import { madeJob } from '../../support/made-job.ts';
import { must } from '../../support/must.ts';

const RATE_HZ = 250;
/** 3.05 times the outer diameter of P235/75R15, 733.5 mm. */
const WHEEL_HZ = 26 / 2.237175;
const AXLE = 3.55;

const JOB = madeJob(
  { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: AXLE, cylinders: 8 },
  { speedMps: 26, speedSource: 'gps', gearRatio: 0.7, load: 'cruise' },
);

/** A road's shake from 5 to 18 Hz, of so many m/s² in all, as many sines that know nothing of each other. */
const roadOf = (rmsMps2: number, seed: number, samples: number): Float64Array => {
  const { normal } = seededRandom(seed);
  const sines = Array.from({ length: 400 }, (_, k) => ({
    hz: 5 + (13 * k) / 400,
    re: normal(),
    im: normal(),
  }));
  const scale = rmsMps2 / Math.sqrt(sines.reduce((sum, { re, im }) => sum + (re * re + im * im) / 2, 0));
  return Float64Array.from({ length: samples }, (_, i) => {
    const t = (2 * Math.PI * i) / RATE_HZ;
    return sines.reduce((sum, { hz, re, im }) => sum + scale * (re * Math.cos(hz * t) + im * Math.sin(hz * t)), 0);
  });
};

const onRoad = (orders: readonly (readonly [number, number])[], rmsMps2: number, seed: number): Recording => {
  const made = recordingOfOrders({ wheelHz: WHEEL_HZ, rateHz: RATE_HZ, seconds: 45, orders, seed });
  const [axis] = made.segments[0]!.accelerationMps2;
  const road = roadOf(rmsMps2, seed + 100, axis!.length);
  return plainRecording([axis!.map((value, i) => value + road[i]!)], RATE_HZ);
};

const inferenceOf = (recording: Recording): RunInference =>
  must(judgeJob({ job: JOB, recordings: [recording] })).inferences[0]!;

const TIRE = [1, 0.3] as const;
const TWICE = [2 * AXLE, 0.28] as const;

describe('what is answered first', () => {
  it('is what a person surely feels, before what the road covers, however much that would be felt on a smooth one', () => {
    const recording = onRoad([TIRE, TWICE], 0.8, 1);
    const [first] = findingsOf([inferenceOf(recording)]);
    expect(first).toMatchObject({ label: 'driveshaft 2×', perceived: 'felt' });
    const analysis = analyse(JOB, [recording]);
    expect(analysis.ok && analysis.value.report.sentence).toMatch(/^Driveshaft 2× at /u);
  });

  it('is what the road covers where nothing else is sure', () => {
    const [first] = findingsOf([inferenceOf(onRoad([TIRE], 0.8, 2))]);
    expect(first).toMatchObject({ label: 'tire 1×', perceived: 'buried' });
  });
});

describe('before and after', () => {
  it('names nothing as new that the road covers, or that did not change', () => {
    const before = inferenceOf(onRoad([TIRE, TWICE], 0.8, 3));
    const after = inferenceOf(onRoad([TIRE, [2 * AXLE, 0.02]], 0.8, 4));
    const { verdict, sentence, why } = compareRuns(sideOf(before), sideOf(after));
    expect(verdict).toBe('gone');
    expect(`${sentence} ${why}`).not.toContain('New since then');
  });
});
