import { describe, expect, it } from 'vitest';
import type { Vehicle } from '../../../src/core/vehicle/vehicle.ts';
import { vehicleNotes } from '../../../src/core/vehicle/vehicle-notes.ts';

const codesOf = (vehicle: Partial<Vehicle>): string[] =>
  vehicleNotes({ layout: 'rear-drive', ...vehicle }).map(({ code }) => code);

/** Ratios in use run from about 2 to 7 in axles and to about 12 in electric reductions (common practice, no source). */
describe('a ratio that no axle has', () => {
  it.each([37.3, 0.373, 373])('is asked about: %s', (axleRatio) => {
    expect(codesOf({ axleRatio })).toEqual(['ratio-unlikely']);
  });

  it('is asked about at the front axle and in a final drive', () => {
    expect(codesOf({ axleRatio: 3.73, frontAxleRatio: 37.3 })).toEqual(['ratio-unlikely']);
    expect(codesOf({ layout: 'front-drive', finalDrive: 36.5 })).toEqual(['ratio-unlikely']);
  });

  it.each([2.08, 3.73, 7.17])('is none of those in use: %s', (axleRatio) => {
    expect(codesOf({ axleRatio })).toEqual([]);
  });

  it('is none of an electric reduction', () => {
    expect(codesOf({ layout: 'electric', finalDrive: 11.7 })).toEqual([]);
  });
});

/** Axles of a part-time four-wheel drive are paired within 1 % (common practice, no source): 3.54 and 3.55 is one pair. */
describe('front and rear axle ratio of a four-wheel drive', () => {
  const pair = (front: number | undefined, layout: Vehicle['layout'] = 'four-wheel-drive'): string[] =>
    codesOf({ layout, axleRatio: 3.55, ...(front !== undefined && { frontAxleRatio: front }) });

  it('are asked about where locked together they would wind up', () => {
    expect(pair(3.73)).toEqual(['axle-ratios-apart']);
    expect(pair(3.27)).toEqual(['axle-ratios-apart']);
  });

  it('are no matter where they are a pair, one is not given, or there is no front axle to drive', () => {
    expect(pair(3.54)).toEqual([]);
    expect(pair(undefined)).toEqual([]);
    expect(pair(3.73, 'rear-drive')).toEqual([]);
  });
});
