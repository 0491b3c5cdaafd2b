import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import type { Job } from '../../../../src/core/job/job.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { must } from '../../../support/must.ts';
import { normals } from '../../signal/made.ts';

const RATE = 200;
const SECONDS = 63;
const MPS_PER_MPH = 0.44704;
const CIRCUMFERENCE_M = 2.45;
const AXLE = 3.73;

/** Driveshaft 1× at 45, 72 and 57 mph, a third of a minute each, the changes cut out. */
const steppedMph = (t: number): number => (t < 20 ? 45 : t < 41 ? 72 : 57);
const recorded = (mph: (t: number) => number, amplitudeMps2: number) => {
  const normal = normals(3);
  let turns = 0;
  const axis = Float64Array.from({ length: SECONDS * RATE }, (_, i) => {
    const t = i / RATE;
    // As a driver holds a speed.
    turns +=
      (mph(t) * MPS_PER_MPH * (1 + 2.5e-3 * Math.sin(0.4 * t) + 1e-3 * Math.sin(1.1 * t)) * AXLE) /
      CIRCUMFERENCE_M /
      RATE;
    return amplitudeMps2 * Math.cos(2 * Math.PI * turns) + 0.15 * normal();
  });
  return plainRecording([axis], RATE);
};
const jobOf = (mph: number): Job =>
  ({
    vehicle: {
      tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
      layout: 'rear-drive',
      axleRatio: AXLE,
      cylinders: 8,
    },
    runs: [{ file: 'a.csv', speedMps: mph * MPS_PER_MPH, speedSource: 'gps', gearRatio: 0.7 }],
    work: [],
    measurements: [],
  }) as unknown as Job;
const answerTo = (driven: (t: number) => number, amplitudeMps2: number) =>
  must(analyse(jobOf(57), [recorded(driven, amplitudeMps2)])).report;

describe('one order at several speeds of a drive without a log', () => {
  it('takes turns with itself, and none is named for certain', () => {
    const report = answerTo(steppedMph, 0.1);
    expect(report.verdict).toBe('cannot-tell');
    const [first] = report.findings;
    expect(first!.probability).toBeLessThan(0.5);
    expect(first!.against[0]).toContain('takes turns with what shakes at');
    report.findings.forEach(({ probability }) => expect(probability).toBeLessThan(0.5));
  });

  it('is named where one speed was driven', () => {
    const report = answerTo(() => 57, 0.2);
    expect(report.verdict).toBe('found');
    expect(report.findings[0]!.label).toBe('driveshaft 1×');
  });
});
