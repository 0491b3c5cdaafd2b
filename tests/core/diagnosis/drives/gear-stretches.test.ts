import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { gearStretches } from '../../../../src/core/diagnosis/drives/gear-stretches.ts';
import type { Recording, Track } from '../../../../src/core/reading/recording.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { seededRandom } from '../../../support/random.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const LENGTH_S = 60;
const RATE_HZ = 200;
const SPEED_MPS = 27;
const CIRCUMFERENCE_M = 2.36;
const AXLE = 3.73;

const logOf = (valueAt: (atS: number) => number, unit: string, stepS = 1): Track => {
  const timeS = Float64Array.from({ length: LENGTH_S / stepS + 1 }, (_, k) => k * stepS);
  return { timeS, value: timeS.map(valueAt), columnName: 'log', unit, unitBecause: '', step: 0.01, intervalS: stepS };
};

/** Engine 1× of 0.3 m/s² in two gears, 1.00 and from a time on 0.70, at one road speed. */
const rpmIn = (gear: number): number => (60 * gear * AXLE * SPEED_MPS) / CIRCUMFERENCE_M;
const shiftedAt = (shiftS: number, speedAt = (): number => SPEED_MPS): Recording => {
  const { normal } = seededRandom(8);
  let turns = 0;
  const axis = Float64Array.from({ length: LENGTH_S * RATE_HZ }, (_, i) => {
    turns += rpmIn(i / RATE_HZ < shiftS ? 1 : 0.7) / 60 / RATE_HZ;
    return 0.3 * Math.cos(2 * Math.PI * turns) + 0.05 * normal();
  });
  return {
    ...plainRecording([axis], RATE_HZ, logOf(speedAt, 'm/s')),
    engineSpeedRpm: logOf((t) => rpmIn(t < shiftS ? 1 : 0.7), 'rpm', 0.5),
  };
};

describe('a gear shift in the middle of a run whose road and engine speed were logged', () => {
  it('parts it into stretches of one gear each, clear of the shift', () => {
    const [first, second, ...more] = gearStretches(shiftedAt(25));
    expect(more).toEqual([]);
    expect(first!.fromS).toBe(0);
    expect(first!.toS).toBeCloseTo(23.5, 6);
    expect(second!.fromS).toBeCloseTo(26.5, 6);
    expect(second!.toS).toBe(LENGTH_S);
  });

  it('is none where one gear was driven, or the other for less than a quarter of a minute', () => {
    expect(gearStretches(shiftedAt(0))).toEqual([]);
    expect(gearStretches(shiftedAt(10))).toEqual([]);
    expect(gearStretches({ ...shiftedAt(25), roadSpeedMps: undefined } as unknown as Recording)).toEqual([]);
  });

  it('lets the engine’s order be found at the speed it had in each', () => {
    const job = madeJob(
      {
        tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
        layout: 'rear-drive',
        axleRatio: AXLE,
        cylinders: 8,
      },
      {},
    );
    const analysis = must(analyse(job, [shiftedAt(28)]));
    const { findings, runs } = analysis.report;
    expect(runs.map(({ engine }) => Math.round(engine.usedRpm ?? 0))).toEqual([
      Math.round(rpmIn(1)),
      Math.round(rpmIn(0.7)),
    ]);
    expect(findings[0]).toMatchObject({ part: 'engine', order: 1 });
  });
});
