/**
 * A tone at the place of driveshaft 1×, and nothing else to be seen: an order is spread by the wander of the speed that
 * every driver makes (some tenths of a percent; common practice, no source), a hum of its own is not.
 */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import type { FindingReport } from '../../../../src/core/report/report.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { normals } from '../../signal/made.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const RATE_HZ = 200;
/** 3.05 times the outer diameter of 205/55R16, 631.9 mm; axle ratio 3.73. */
const SHAFT_HZ = (3.73 * 25) / 1.927295;

const JOB = madeJob(
  { tire: { kind: 'size', size: '205/55R16' }, layout: 'rear-drive', axleRatio: 3.73, cylinders: 4 },
  { speedMps: 25, speedSource: 'gps', gearRatio: 0.74, load: 'cruise' },
);

/** The first finding of a minute with one tone, whose frequency wanders by a share of itself. */
const firstOf = (wander: number, seed: number): FindingReport => {
  const normal = normals(seed);
  const samples = Float64Array.from({ length: 60 * RATE_HZ }, (_, i) => {
    const t = i / RATE_HZ;
    const turned = t + (wander / 0.4) * Math.sin(0.4 * t) + (wander / 0.9) * Math.sin(0.9 * t + 1);
    return 0.3 * Math.cos(2 * Math.PI * 1.003 * SHAFT_HZ * turned) + 0.05 * normal();
  });
  return must(analyse(JOB, [plainRecording([samples], RATE_HZ)])).report.findings[0]!;
};

describe('a tone at the place of driveshaft 1×', () => {
  it('is the driveshaft where it wanders as a speed does', () => {
    const finding = firstOf(0.003, 1);
    expect(finding.label).toBe('driveshaft 1×');
    expect(finding.probability).toBeGreaterThan(0.8);
  });

  it('belongs to nothing that turns where it does not wander', () => {
    const finding = firstOf(0, 2);
    expect(finding.part).toBe('fixed');
    expect(finding.probability).toBeGreaterThan(0.5);
    // A minute's Hann window is 1.44/60 = 0.024 Hz wide; over 2.355 (width to standard deviation) and 48 Hz: 0.0002.
    expect(finding.for.join(' ')).toMatch(
      /It held its frequency within 0\.02 %; a driver holds a speed to some tenths/u,
    );
    expect(finding.against[0]).toMatch(/^Driveshaft 1× could make it too \(\d+ in 100\)\.$/u);
  });
});
