import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/core/analyse.ts';
import { reweigh } from '../../../src/core/conclude.ts';
import type { Job } from '../../../src/core/job/job.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';
import { normals } from '../signal/made.ts';

const RATE_HZ = 250;
/** 3.05 times the outer diameter of P235/75R15, 733.5 mm. */
const WHEEL_HZ = 26 / 2.237175;
const AXLE = 3.55;
const GEAR = 0.7;

const JOB: Job = {
  schemaVersion: 1,
  vehicle: { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: AXLE, cylinders: 8 },
  work: [],
  runs: [{ file: 'made.csv', speedMps: 26, speedSource: 'gps', gearRatio: GEAR, load: 'cruise' }],
  measurements: [],
};

/** Orders as turns a wheel turn with their amplitudes, at a speed that swings by half a percent. */
const analysisOf = (orders: readonly (readonly [number, number])[]) => {
  const normal = normals(7);
  const samples = Float64Array.from({ length: 45 * RATE_HZ }, (_, i) => {
    const t = i / RATE_HZ;
    const turned = WHEEL_HZ * (t + (0.005 / 0.3) * (1 - Math.cos(0.3 * t)));
    return orders.reduce(
      (sum, [perTurn, mps2]) => sum + mps2 * Math.cos(2 * Math.PI * perTurn * turned),
      0.05 * normal(),
    );
  });
  const analysis = analyse(JOB, [plainRecording([samples], RATE_HZ)]);
  if (!analysis.ok) throw new Error(analysis.problem.message);
  return analysis.value;
};

const SHAFT = [AXLE, 0.2] as const;
const MISFIRE = [(AXLE * GEAR) / 2, 0.1] as const;

describe('the reason given with the answer', () => {
  it('names the other part that shakes', () => {
    const analysis = analysisOf([SHAFT, MISFIRE]);
    const { findings, sentence, why } = analysis.report;
    expect(new Set(findings.slice(0, 2).map(({ label }) => label))).toEqual(new Set(['driveshaft 1×', 'engine ½×']));
    const other = findings[1]!;
    const name = `${other.label[0]!.toUpperCase()}${other.label.slice(1)}`;
    expect(sentence).not.toContain(other.label);
    expect(why).toContain(`${name} at ${other.frequencyHz.toFixed(1)} Hz shakes as well.`);
    expect(reweigh(analysis, { ...JOB, work: ['shaft-removed'] }).report.why).toContain('shakes as well.');
  });

  it('does not where it is another order of the same part, or nothing else is felt', () => {
    expect(analysisOf([SHAFT]).report.why).not.toContain('as well');
    expect(analysisOf([[1, 0.15] as const, [2, 0.1] as const]).report.why).not.toContain('shakes as well');
  });
});
