import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/core/analyse.ts';
import { reportText } from '../../../src/core/report/text.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';
import { normals } from '../signal/made.ts';
import { madeJob } from '../../support/made-job.ts';
import { must } from '../../support/must.ts';

const RATE_HZ = 250;
/** 3.05 times the outer diameter of P235/75R15, 733.5 mm, at 60 mph; times 3.55. */
const SHAFT_HZ = (3.55 * 26.8224) / (3.05 * 0.7335);

const JOB = madeJob(
  { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: 3.55, cylinders: 8 },
  { speedMps: 26.8224, speedSource: 'gps', gearRatio: 0.75, load: 'cruise' },
);

/** Noise, small normal orders, and one order of 0.3 m/s² while it shakes. */
const reportOf = (hz: number, fromS: number, toS: number, seed = 5) => {
  const normal = normals(seed);
  const samples = Float64Array.from({ length: 90 * RATE_HZ }, (_, i) => {
    const t = i / RATE_HZ;
    const order = (at: number): number => Math.cos(2 * Math.PI * at * t);
    const shake = t > fromS && t < toS ? 0.3 * order(hz) : 0;
    return 0.008 * order(SHAFT_HZ / 3.55) + 0.008 * order(SHAFT_HZ * 0.75) + shake + 0.05 * normal();
  });
  return must(analyse(JOB, [plainRecording([samples], RATE_HZ)])).report;
};

describe('a shake in one part of a steady run', () => {
  it('is found, with its time and the level it had then', () => {
    const report = reportOf(SHAFT_HZ, 50, 58);
    expect(report.verdict).toBe('found');
    expect(report.sentence).toMatch(/^Driveshaft 1× at 42\.\d Hz, in (49|50|51) to (57|58|59) s only, /u);
    const [first] = report.findings;
    expect(first?.during).toHaveLength(1);
    expect(first?.amplitudeMps2).toBeGreaterThan(0.22);
    expect(first?.amplitudeMps2).toBeLessThan(0.31);
    expect(reportText(report, { units: 'us' })).toMatch(/felt\), in \d\d to \d\d s only;/u);
  });

  it('is found where the mean over the run shows no line at all', () => {
    const report = reportOf(SHAFT_HZ / 3.55, 30, 35);
    expect(report.sentence).toMatch(/^Tire 1× at 1[12]\.\d Hz, in \d\d to \d\d s only, /u);
  });

  it('leaves what shakes all along as it was', () => {
    const report = reportOf(SHAFT_HZ, 0, 90);
    expect(report.findings[0]?.label).toBe('driveshaft 1×');
    expect(report.findings[0]?.during).toBeUndefined();
  });
});
