import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/core/analyse.ts';
import { reweigh } from '../../src/core/conclude.ts';
import { compare } from '../../src/core/compare.ts';
import type { Job, Run } from '../../src/core/job/job.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';
import { recordingOfOrders } from '../support/orders.ts';
import { must } from '../support/must.ts';

/**
 * The truth of every drive here: a tire of 660 revolutions per mile (by definition of that figure 11.00 Hz at 60 mph),
 * axle 3.73, top gear 0.70. A mile is 1609.344 m (international yard, 1959), so 60 mph are 26.82 m/s and 60 km/h 16.67.
 */
const VEHICLE: Vehicle = {
  layout: 'rear-drive',
  tire: { kind: 'revs-per-mile', revsPerMile: 660 },
  axleRatio: 3.73,
  gearRatios: [1, 0.7],
  cylinders: 8,
};
const MPH = 1609.344 / 3600;
const KMH = 1 / 3.6;

/** Half a minute each: the least that people are asked for. */
const recordingAt = (mph: number, orders: readonly (readonly [number, number])[], seed: number) =>
  recordingOfOrders({ wheelHz: (660 * mph) / 3600, rateHz: 250, seconds: 30, orders, seed });

/** Driveshaft 1× and 2× and two small orders of a tire. */
const SHAFT = [
  [3.73, 0.2],
  [7.46, 0.03],
  [1, 0.03],
  [2, 0.02],
] as const;
const TIRE = [
  [1, 0.25],
  [2, 0.03],
  [3.73, 0.02],
] as const;

const jobOf = (vehicle: Vehicle, ...runs: Partial<Run>[]): Job => ({
  schemaVersion: 3,
  vehicle,
  runs: runs.map((run, i) => ({ file: `${i}.csv`, gearRatio: 0.7, speedSource: 'gps', ...run })),
  work: [],
  measurements: [],
});

const reportOf = (job: Job, recordings: Parameters<typeof analyse>[1]) => must(analyse(job, recordings)).report;

describe('a drive that was not as it was stated', () => {
  it.each([
    ['driveshaft 1×', SHAFT],
    ['tire 1×', TIRE],
  ] as const)('is taken as 60 mph where 60 km/h were given: %s', (label, orders) => {
    const report = reportOf(jobOf(VEHICLE, { speedMps: 60 * KMH }), [recordingAt(60, orders, 1)]);
    expect(report.sentence).toMatch(new RegExp(`^With 60 mph in place of 60 km/h, by what was recorded: ${label} at`));
    expect(report.findings[0]?.label).toBe(label);
    expect(report.runs[0]?.speed).toMatchObject({ restated: true });
    expect(report.runs[0]?.speed.usedMps).toBeCloseTo(60 * MPH, 0);
    expect(report.runs[0]?.notes[0]?.text).toContain('fits 60 mph, not 60 km/h');
    expect(report.vehicle).toEqual(VEHICLE);
  });

  it('is taken as 80 km/h where 80 mph were given', () => {
    const mph = (80 * KMH) / MPH;
    const report = reportOf(jobOf(VEHICLE, { speedMps: 80 * MPH }), [recordingAt(mph, SHAFT, 2)]);
    expect(report.sentence).toMatch(/^With 80 km\/h in place of 80 mph/);
    expect(report.findings[0]?.label).toBe('driveshaft 1×');
  });

  it('is taken with its runs exchanged', () => {
    const job = jobOf(VEHICLE, { speedMps: 62 * MPH }, { speedMps: 50 * MPH });
    const report = reportOf(job, [recordingAt(50, SHAFT, 3), recordingAt(62, SHAFT, 4)]);
    expect(report.sentence).toMatch(/^With the speeds of the two runs exchanged/);
    expect(report.findings[0]?.label).toBe('driveshaft 1×');
  });

  it('is taken with the axle ratio that was in it, and keeps that answer when causes are weighed anew', () => {
    const job = jobOf({ ...VEHICLE, axleRatio: 4.1 }, { speedMps: 60 * MPH });
    const analysis = must(analyse(job, [recordingAt(60, SHAFT, 5)]));
    expect(analysis.report.sentence).toMatch(/^With an axle ratio of 3\.73 in place of 4\.10/);
    expect(analysis.report.vehicle.axleRatio).toBe(4.1);
    const { report } = reweigh(analysis, job);
    expect(report).toEqual(analysis.report);
    expect(report.takenInstead).toEqual({
      kind: 'axle-ratio',
      fits: 'an axle ratio of 3.73',
      given: '4.10',
      axleRatio: 3.73,
    });
  });

  it('is judged as stated where counted teeth bear the ratio out', () => {
    const vehicle = { ...VEHICLE, axleRatio: 4.1, pinionTeeth: 10, ringTeeth: 41 };
    const report = reportOf(jobOf(vehicle, { speedMps: 60 * MPH }), [recordingAt(60, SHAFT, 5)]);
    expect(report.sentence).not.toContain('in place of');
  });

  it.each([
    ['as it was', 1],
    ['with the dial three percent high', 1.03],
    ['with a tire three percent off', 0.97],
  ])('is judged as stated %s', (_, factor) => {
    const run = { speedMps: 60 * MPH * factor, speedSource: 'dial' as const };
    const report = reportOf(jobOf(VEHICLE, run), [recordingAt(60, SHAFT, 6)]);
    expect(report.sentence).toMatch(/^Driveshaft 1× at/);
    expect(report.runs[0]?.notes.map(({ code }) => code)).not.toContain('drive-misstated');
  });

  it('leaves a logged speed alone', () => {
    const recording = recordingAt(60, SHAFT, 7);
    const timeS = Float64Array.from({ length: 41 }, (_, i) => i);
    const roadSpeedMps = {
      timeS,
      value: timeS.map(() => 60 * KMH),
      columnName: 'speed',
      unit: 'km/h',
      unitBecause: 'made',
      step: 1,
      intervalS: 1,
    };
    const report = reportOf(jobOf(VEHICLE, {}), [{ ...recording, roadSpeedMps }]);
    expect(report.sentence).not.toContain('in place of');
  });

  it('is compared as it was taken', () => {
    const job = jobOf(VEHICLE, { speedMps: 60 * KMH });
    const before = { job, recordings: [recordingAt(60, SHAFT, 8)] };
    const after = { job, recordings: [recordingAt(60, SHAFT.slice(1), 9)] };
    const comparison = must(compare(before, after));
    expect(comparison.sentence).toMatch(/^Driveshaft 1× /);
    expect(comparison.notes.map(({ code }) => code)).toEqual(['drive-misstated']);
  });
});
