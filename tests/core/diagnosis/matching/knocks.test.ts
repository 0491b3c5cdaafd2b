/** A row of tones at whole multiples of one part's turning: a periodic knock has all multiples (Fourier). */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import type { Job } from '../../../../src/core/job/job.ts';
import type { Report } from '../../../../src/core/report/report.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { recordingOfOrders } from '../../../support/orders.ts';

const AXLE = 3.73;
const CIRCUMFERENCE_M = 2.36;
const SPEED_MPS = 28;
/** Six tenths of a percent faster than stated. */
const WHEEL_HZ = (1.006 * SPEED_MPS) / CIRCUMFERENCE_M;
const RATE_HZ = 1000;
const SECONDS = 30;

const JOB: Job = {
  schemaVersion: 1,
  vehicle: {
    tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
    layout: 'rear-drive',
    axleRatio: AXLE,
    cylinders: 8,
  },
  work: [],
  runs: [{ file: 'k.csv', speedMps: SPEED_MPS, speedSource: 'gps', gearRatio: 0.7, load: 'cruise' }],
  measurements: [],
};

const reportOf = (multiples: readonly number[], gearRatio = 0.7, turns = AXLE): Report => {
  const orders = multiples.map((k) => [k * turns, 0.2] as const);
  const recording = recordingOfOrders({ wheelHz: WHEEL_HZ, rateHz: RATE_HZ, seconds: SECONDS, orders, seed: 3 });
  const analysis = analyse({ ...JOB, runs: [{ ...JOB.runs[0]!, gearRatio }] }, [recording]);
  if (!analysis.ok) throw new Error(analysis.problem.message);
  return analysis.value.report;
};

describe('multiples of the driveshaft’s turning', () => {
  it.each([[[3, 4, 5, 6, 7, 8]], [[3, 5, 6, 7]]])('%j are its knock, one finding, and no other part’s', (multiples) => {
    const { findings, peaks } = reportOf(multiples);
    expect(findings).toMatchObject([{ part: 'driveshaft' }]);
    expect(findings[0]?.causes[0]?.id).toBe('joint-loose');
    for (const { frequencyHz, matches } of peaks) {
      const order = Math.round(frequencyHz / (AXLE * WHEEL_HZ));
      expect(matches[0]).toMatchObject({ part: 'driveshaft', order });
    }
  });

  it('are not looked for where one tone alone stands at a multiple', () => {
    expect(reportOf([5]).orders.some(({ label }) => label === 'driveshaft 5×')).toBe(false);
  });

  it('are left open where the engine turns in the same ratio', () => {
    expect(reportOf([5, 6, 7], 1).orders.some(({ label }) => label === 'driveshaft 5×')).toBe(false);
  });
});

/** Hums that keep their frequencies while the tires' orders move with the speed. */
const withHums = (humsHz: readonly number[]): Report => {
  const orders = [1, 2, 3, AXLE].map((perTurn) => [perTurn, 0.2] as const);
  const recording = recordingOfOrders({ wheelHz: WHEEL_HZ, rateHz: RATE_HZ, seconds: SECONDS, orders, seed: 4 });
  const [axis] = recording.segments[0]!.accelerationMps2;
  const hummed = axis!.map((value, i) =>
    humsHz.reduce((sum, hz) => sum + 0.2 * Math.cos((2 * Math.PI * hz * i) / RATE_HZ), value),
  );
  const analysis = analyse(JOB, [plainRecording([hummed], RATE_HZ)]);
  if (!analysis.ok) throw new Error(analysis.problem.message);
  return analysis.value.report;
};

describe('a family of hums', () => {
  it.each([
    ['at multiples of 50 Hz', [100, 150, 200, 250]],
    ['at the very places of the driveshaft’s multiples', [3, 5, 6, 7].map((k) => k * AXLE * WHEEL_HZ)],
    ['at the very places of the wheel’s multiples', [5, 6, 7, 8].map((k) => k * WHEEL_HZ)],
  ])('%s is no knock', (_, humsHz) => {
    const { orders, findings } = withHums(humsHz);
    const knocks = orders.filter(
      ({ part, order, visibility }) => (part === 'driveshaft' || part === 'tire') && order > 4 && visibility === 'seen',
    );
    expect(knocks).toEqual([]);
    expect(findings.filter(({ part, order }) => part === 'driveshaft' && order !== 1)).toEqual([]);
  });
});

const WHEEL = 1;

describe('multiples of the wheel’s turning', () => {
  it.each([[[3, 4, 5, 6, 7, 8, 9]], [[4, 5, 6, 7, 9]], [[1, 2, 3, 4, 5, 6, 7]]])(
    '%j are its knock, and no other part’s',
    (multiples) => {
      const { findings, peaks } = reportOf(multiples, 0.7, WHEEL);
      expect(new Set(findings.map(({ part }) => part))).toEqual(new Set(['tire']));
      for (const { frequencyHz, matches } of peaks) {
        expect(matches[0]).toMatchObject({ part: 'tire', order: Math.round(frequencyHz / WHEEL_HZ) });
      }
    },
  );

  // Common practice, no source: a knock once a wheel's turn is a loose wheel, a belt that lets go, or what rubs at the
  // brake; a tire that is a little out of round or stiff in one place makes a few multiples only.
  it('have causes that strike once a turn, and the wheel is looked over first', () => {
    const { findings, checks } = reportOf([5, 6, 7, 8, 9], 0.7, WHEEL);
    const ids = findings[0]!.causes.map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(['belt-separated', 'wheel-loose', 'brake-rubs', 'object-in-tread']));
    expect(ids).not.toContain('tire-force-variation');
    expect(ids).not.toContain('tire-unbalance');
    expect(checks[0]?.id).toBe('tire-inspection');
  });

  it.each([
    ['every second one, as half orders of an engine of unknown speed may fall', [2, 4, 6, 8, 10]],
    ['every third one', [3, 6, 9, 12]],
  ])('%s are no row', (_, multiples) => {
    const { orders } = reportOf(multiples, 0.7, WHEEL);
    expect(orders.some(({ part, order }) => part === 'tire' && order > 4)).toBe(false);
  });
});
