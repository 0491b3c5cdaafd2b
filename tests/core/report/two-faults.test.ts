import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/core/analyse.ts';
import { reweigh } from '../../../src/core/conclude.ts';
import { recordingOfOrders } from '../../support/orders.ts';
import { madeJob } from '../../support/made-job.ts';
import { must } from '../../support/must.ts';

const RATE_HZ = 250;
/** 3.05 times the outer diameter of P235/75R15, 733.5 mm. */
const WHEEL_HZ = 26 / 2.237175;
const AXLE = 3.55;
const GEAR = 0.7;

const JOB = madeJob(
  { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: AXLE, cylinders: 8 },
  { speedMps: 26, speedSource: 'gps', gearRatio: GEAR, load: 'cruise' },
);

/** Turns for one turn of a wheel with their amplitudes. */
const analysisOf = (orders: readonly (readonly [number, number])[]) => {
  const made = { wheelHz: WHEEL_HZ, rateHz: RATE_HZ, seconds: 45, orders, seed: 7 };
  return must(analyse(JOB, [recordingOfOrders(made)]));
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
