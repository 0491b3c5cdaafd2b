import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { recordingOfOrders } from '../../../support/orders.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const SPEED_MPS = 27;
const CIRCUMFERENCE_M = 2.36;
const WHEEL_HZ = SPEED_MPS / CIRCUMFERENCE_M;
const AXLE = 3.73;

const JOB = madeJob(
  {
    tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
    layout: 'rear-drive',
    axleRatio: AXLE,
    cylinders: 8,
  },
  { speedMps: SPEED_MPS, speedSource: 'gps', gearRatio: 0.7, load: 'cruise' },
);

const SLAB_M = 6.1;
/** Thumps a turn of the wheel, and how strongly each multiple comes through body and wheel hop. */
const THUMPS = [0.12, 0.3, 0.35, 0.3, 0.2, 0.12, 0.08, 0.05, 0.05, 0.06, 0.05].map(
  (mps2, k) => [((k + 1) * CIRCUMFERENCE_M) / SLAB_M, mps2] as const,
);

const reportOn = (orders: readonly (readonly [perTurn: number, mps2: number])[]) => {
  const made = recordingOfOrders({ wheelHz: WHEEL_HZ, rateHz: 200, seconds: 30, orders, seed: 12 });
  return must(analyse(JOB, [made])).report;
};

// Thumps at even spacing have all multiples of speed over spacing in their spectrum (Fourier series of a row of pulses).
describe('a road of slabs', () => {
  it('is told as such, with the spacing of its joints, and no part is named for it', () => {
    const { verdict, sentence, findings, runs } = reportOn(THUMPS);
    expect(findings).toEqual([]);
    expect(verdict).toBe('cannot-tell');
    expect(sentence).toContain('once every 6.1 m (20 ft)');
    expect(runs[0]!.notes.map(({ code }) => code)).toContain('road-joints');
  });

  it('leaves what shakes beside it to the parts', () => {
    const { verdict, findings } = reportOn([...THUMPS, [AXLE, 0.3]]);
    expect(verdict).toBe('found');
    expect(findings[0]).toMatchObject({ part: 'driveshaft', order: 1 });
  });

  it('is not taken for one where the tones are orders of wheels, driveshaft and engine', () => {
    const orders = [
      ...[1, 2, 3, 4].map((order) => [order, 0.1] as const),
      [AXLE, 0.2],
      [2 * AXLE, 0.05],
      ...[0.5, 1, 1.5, 2, 4].map((order) => [order * 0.7 * AXLE, 0.1] as const),
    ] as const;
    const { runs, findings } = reportOn(orders);
    expect(runs[0]!.notes.map(({ code }) => code)).not.toContain('road-joints');
    expect(findings.length).toBeGreaterThan(1);
  });
});
