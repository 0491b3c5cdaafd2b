import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { recordingOfOrders } from '../../../support/orders.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const RATE_HZ = 400;
/** 3.05 times the outer diameter of 265/75R16, 803.9 mm. */
const WHEEL_HZ = 27 / 2.4519;
const AXLE = 4.1;

const JOB = madeJob(
  {
    tire: { kind: 'size', size: '265/75R16' },
    layout: 'four-wheel-drive',
    axleRatio: AXLE,
    frontAxleRatio: AXLE,
    cylinders: 6,
  },
  { speedMps: 27, speedSource: 'gps', gearRatio: 0.7, load: 'cruise' },
);

/** Turns for one turn of a rear wheel with their amplitudes. */
const reportOn = (orders: readonly (readonly [perTurn: number, mps2: number])[]) => {
  const made = { wheelHz: WHEEL_HZ, rateHz: RATE_HZ, seconds: 45, orders, seed: 9 };
  return must(analyse(JOB, [recordingOfOrders(made)])).report;
};

describe('the front driveshaft of a four-wheel drive', () => {
  // Front tires worn to half a percent less: through a center differential the front shaft turns that much faster.
  it('is named where it turns half a percent apart from the rear one', () => {
    const { verdict, findings } = reportOn([
      [AXLE, 0.02],
      [2 * AXLE * 1.005, 0.4],
      [1, 0.02],
    ]);
    expect(verdict).toBe('found');
    expect(findings[0]).toMatchObject({ part: 'driveshaft', order: 2, name: 'front driveshaft' });
  });

  it('is as likely as the rear one where both turn at one rate', () => {
    const { findings, checks } = reportOn([
      [2 * AXLE, 0.4],
      [1, 0.02],
    ]);
    expect(checks.map(({ id }) => id)).toContain('run-front-shaft-rests');
    const first = findings[0]!;
    expect(first).toMatchObject({ part: 'driveshaft', order: 2 });
    expect(first.probability).toBeLessThan(0.8);
    expect(first.sharesFrequencyWith[0]!.label).toMatch(/driveshaft 2×$/);
  });
});
