import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import type { Recording, Track } from '../../../../src/core/reading/recording.ts';
import type { RunCondition } from '../../../../src/core/vehicle/vehicle.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { seededRandom } from '../../../support/random.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const RATE_HZ = 200;
const LENGTH_S = 60;
const CIRCUMFERENCE_M = 2.36;
const AXLE = 3.73;
const SHAFT_MPS2 = 0.15;

/** Tones whose turns are given as functions of time, over white noise. */
const made = (tones: readonly { turns: (atS: number) => number; mps2: number }[], seed: number): Recording => {
  const { normal } = seededRandom(seed);
  const axis = Float64Array.from({ length: LENGTH_S * RATE_HZ }, (_, i) =>
    tones.reduce((sum, { turns, mps2 }) => sum + mps2 * Math.cos(2 * Math.PI * turns(i / RATE_HZ)), 0.05 * normal()),
  );
  return plainRecording([axis], RATE_HZ);
};

const logOf = (valueAt: (atS: number) => number, fromS: number, toS: number, unit: string): Track => {
  const timeS = Float64Array.from({ length: Math.floor(toS - fromS) + 1 }, (_, k) => fromS + k);
  return { timeS, value: timeS.map(valueAt), columnName: 'log', unit, unitBecause: '', step: 0.01, intervalS: 1 };
};

const reportOf = (recording: Recording, condition: RunCondition) => {
  const job = madeJob(
    {
      tire: { kind: 'rolling-circumference', circumferenceM: CIRCUMFERENCE_M },
      layout: 'rear-drive',
      axleRatio: AXLE,
      cylinders: 4,
    },
    { ...condition },
  );
  return must(analyse(job, [recording])).report;
};

/** Driveshaft 1×, its companion and a small tire 1× while the speed goes from 20 to 32 m/s, or keeps to 27. */
const speedUp = (atS: number): number => 20 + 0.2 * atS;
const metersUp = (atS: number): number => 20 * atS + 0.1 * atS ** 2;
const driveOf = (meters: (atS: number) => number, seed: number): Recording =>
  made(
    [
      { turns: (t) => (AXLE * meters(t)) / CIRCUMFERENCE_M, mps2: SHAFT_MPS2 },
      { turns: (t) => (2 * AXLE * meters(t)) / CIRCUMFERENCE_M, mps2: 0.05 },
      { turns: (t) => meters(t) / CIRCUMFERENCE_M, mps2: 0.01 },
    ],
    seed,
  );

describe('a speed that was logged over a part of the recording only', () => {
  it.each([
    [0, 30],
    [20, 60],
    [30, 60],
  ])('from %d to %d s of a sweep: what it does not cover is left out, and said so', (fromS, toS) => {
    const recording = { ...driveOf(metersUp, 3), roadSpeedMps: logOf(speedUp, fromS, toS, 'm/s') };
    const { findings, runs } = reportOf(recording, { gearRatio: 0.7 });
    expect(findings[0]).toMatchObject({ part: 'driveshaft', order: 1 });
    // Held constant beyond its ends the log gave 0.10 to 0.13 of 0.15, or another part.
    expect(findings[0]!.amplitudeMps2 / SHAFT_MPS2).toBeGreaterThan(0.95);
    expect(runs[0]!.durationS).toBeLessThan(toS - fromS + 3);
    expect(runs[0]!.notes.map(({ text }) => text).join(' ')).toContain(`logged from ${fromS} to ${toS} s only`);
  });

  it('stands for all of it where it kept to one speed', () => {
    const recording = { ...driveOf((t) => 27 * t, 4), roadSpeedMps: logOf(() => 27, 35, 60, 'm/s') };
    const { findings, runs } = reportOf(recording, { gearRatio: 0.7 });
    expect(findings[0]).toMatchObject({ part: 'driveshaft', order: 1 });
    expect(runs[0]!.durationS).toBeCloseTo(LENGTH_S, 1);
    expect(runs[0]!.speed.statedMps).toBeCloseTo(27, 6);
  });

  it('says so where that is not the speed that was stated', () => {
    const recording = { ...driveOf((t) => 27 * t, 4), roadSpeedMps: logOf(() => 27, 35, 60, 'm/s') };
    const { runs } = reportOf(recording, { speedMps: 30, speedSource: 'gps', gearRatio: 0.7 });
    expect(runs[0]!.speed).toMatchObject({ source: 'logged' });
    expect(runs[0]!.notes.map(({ code }) => code)).toContain('stated-speed-differs');
  });

  it('does not take the place of the stated speed where it is short and was changing', () => {
    const settling = logOf((t) => 22 + Math.min(5, 0.7 * t), 0, 8, 'm/s');
    const recording = { ...driveOf((t) => 27 * t, 8), roadSpeedMps: settling };
    const { findings, runs } = reportOf(recording, { speedMps: 27, speedSource: 'gps', gearRatio: 0.7 });
    expect(findings[0]).toMatchObject({ part: 'driveshaft', order: 1 });
    expect(runs[0]!.durationS).toBeCloseTo(LENGTH_S, 1);
    expect(runs[0]!.speed).toMatchObject({ statedMps: 27, source: 'gps' });
    expect(runs[0]!.notes.map(({ text }) => text).join(' ')).toContain('The stated speed is used.');
  });

  it('is no speed of the run where none was stated', () => {
    const settling = logOf((t) => 22 + Math.min(5, 0.7 * t), 0, 8, 'm/s');
    const { runs } = reportOf({ ...driveOf((t) => 27 * t, 8), roadSpeedMps: settling }, { gearRatio: 0.7 });
    expect(runs[0]!.speed.statedMps).toBeNull();
    expect(runs[0]!.notes.map(({ text }) => text).join(' ')).toContain('State the speed of the run.');
  });

  it('counts as whole where it begins and ends within two seconds of the recording', () => {
    const recording = { ...driveOf(metersUp, 5), roadSpeedMps: logOf(speedUp, 2, 58, 'm/s') };
    const { runs } = reportOf(recording, { gearRatio: 0.7 });
    expect(runs[0]!.durationS).toBeCloseTo(LENGTH_S, 1);
    expect(runs[0]!.notes.map(({ code }) => code)).not.toContain('partly-logged');
  });
});

describe('a log of the engine’s speed alone', () => {
  /** 1000 to 2600 rpm in 20 s, then held; and its integral, turns. */
  const rpmAt = (atS: number): number => 1000 + 80 * Math.min(20, atS);
  const turnsAt = (atS: number): number => {
    const risingS = Math.min(20, atS);
    return (1000 * risingS + 40 * risingS ** 2 + 2600 * (atS - risingS)) / 60;
  };

  it('is the history of a standing run: the speed held longest is no fixed tone', () => {
    const recording = made([{ turns: turnsAt, mps2: 0.4 }], 6);
    const engineSpeedRpm = logOf(rpmAt, 0, LENGTH_S, 'rpm');
    const { findings } = reportOf({ ...recording, engineSpeedRpm }, { load: 'standing' });
    expect(findings[0]).toMatchObject({ part: 'engine', order: 1 });
    expect(findings[0]!.amplitudeMps2 / 0.4).toBeGreaterThan(0.95);
  });

  it('tells in gear how the road’s speed went', () => {
    // Gear 0.7: 20 to 32 m/s and held from 30 s on.
    const speedAt = (atS: number): number => 20 + 0.4 * Math.min(30, atS);
    const meters = (atS: number): number => {
      const risingS = Math.min(30, atS);
      return 20 * risingS + 0.2 * risingS ** 2 + 32 * (atS - risingS);
    };
    const engineRpm = (atS: number): number => (60 * 0.7 * AXLE * speedAt(atS)) / CIRCUMFERENCE_M;
    const recording = { ...driveOf(meters, 7), engineSpeedRpm: logOf(engineRpm, 0, LENGTH_S, 'rpm') };
    const { findings, runs } = reportOf(recording, { speedMps: 29, speedSource: 'gps', gearRatio: 0.7 });
    expect(findings[0]).toMatchObject({ part: 'driveshaft', order: 1 });
    expect(findings[0]!.amplitudeMps2 / SHAFT_MPS2).toBeGreaterThan(0.95);
    expect(runs[0]!.speed.usedMps! / 29).toBeCloseTo(1, 2);
  });
});
