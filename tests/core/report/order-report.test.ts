import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../../src/core/diagnosis/judge-job.ts';
import type { Recording } from '../../../src/core/reading/recording.ts';
import { orderReports } from '../../../src/core/report/build/order-report.ts';
import { orderWords } from '../../../src/core/report/order-words.ts';
import type { OrderReport } from '../../../src/core/report/report.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';
import { recordingOfOrders } from '../../support/orders.ts';
import { seededRandom } from '../../support/random.ts';
import { madeJob } from '../../support/made-job.ts';
import { must } from '../../support/must.ts';

const WHEEL_HZ = 11;
const CIRCUMFERENCE_M = 2.36;
const AXLE = 3.73;
const RATE_HZ = 200;

const ordersOf = (recording: Recording, gearRatio: number): ReadonlyMap<string, OrderReport> => {
  const job = madeJob(
    {
      tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
      layout: 'rear-drive',
      axleRatio: AXLE,
      cylinders: 8,
      converter: false,
    },
    { speedMps: WHEEL_HZ * CIRCUMFERENCE_M, speedSource: 'gps', gearRatio, load: 'cruise' },
  );
  const judged = must(judgeJob({ job, recordings: [recording] }));
  return new Map(judged.inferences.flatMap(orderReports).map((order) => [order.label, order]));
};

describe('an order that is not seen', () => {
  it('shares the line of another that turns at its rate: what could hide is all of that', () => {
    // In direct gear the crankshaft turns as fast as the driveshaft.
    const orders = [
      [1, 0.05],
      [AXLE, 0.2],
    ] as const;
    const recording = recordingOfOrders({ wheelHz: WHEEL_HZ, rateHz: RATE_HZ, seconds: 60, orders, seed: 5 });
    const found = ordersOf(recording, 1);
    const [one, other] = [found.get('driveshaft 1×')!, found.get('engine 1×')!];
    const shares = one.sharesLineOf === undefined ? other : one;
    expect(shares.sharesLineOf).toBe(shares === one ? 'engine 1×' : 'driveshaft 1×');
    expect(shares.amplitudeMps2).toBeCloseTo(0.2, 1);
    expect(orderWords(shares)).toMatchObject({ state: `shares the line of ${shares.sharesLineOf}` });
    expect(orderWords(shares).level).toMatch(/^under 0\./);
    expect(found.get('driveshaft 2×')!.sharesLineOf).toBeUndefined();
  });

  it('may hide in a hump of the road’s as strong as that stands there', () => {
    const { normal } = seededRandom(7);
    // A resonance of 2 % of critical damping at the wheel's rate, shaken by noise: x″ + 2ζω·x′ + ω²·x, step by step.
    const omega = (2 * Math.PI * WHEEL_HZ) / RATE_HZ;
    const decay = Math.exp(-0.02 * omega);
    let [before, last] = [0, 0];
    const axis = Float64Array.from({ length: 60 * RATE_HZ }, () => {
      const now = 2 * decay * Math.cos(omega) * last - decay ** 2 * before + 0.01 * normal();
      [before, last] = [last, now];
      return now + 0.02 * normal();
    });
    const rms = Math.sqrt(axis.reduce((sum, value) => sum + value ** 2, 0) / axis.length);
    const tire = ordersOf(plainRecording([axis], RATE_HZ), 0.7).get('tire 1×')!;
    expect(tire.visibility).toBe('not-seen');
    // The resonance is 0.4 Hz wide between its half-power points: an eighth of a hertz of it holds a third of the power.
    expect(tire.amplitudeMps2!).toBeGreaterThan((Math.SQRT2 * rms) / 3);
  });
});
