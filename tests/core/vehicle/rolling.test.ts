import { describe, expect, test } from 'vitest';
import { revsPerKm, revsPerMile, rollingCircumference } from '../../../src/core/vehicle/rolling.ts';
import type { RollingCircumference } from '../../../src/core/vehicle/rolling.ts';
import type { TireSpec } from '../../../src/core/vehicle/vehicle.ts';
import { mpsFromKmh, mpsFromMph } from '../../../src/core/units.ts';
import { must } from '../../support/must.ts';

const rollingOf = (spec: TireSpec): RollingCircumference => must(rollingCircumference(spec));
const bySize = (size: string): RollingCircumference => rollingOf({ kind: 'size', size });

/**
 * Table by the rule C = 3.05·D (radial) or 2.99·D (diagonal) of the ETRTO Standards Manual, general notes; turns per
 * km 1000/C, per mile 1609.344/C; computed apart from this program to full precision.
 */
const TABLE = [
  ['P215/65R15', 2.014525, 496.3949318077463, 798.8702051352057, 13.78874810577073, 13.314503418920093],
  ['205/55R16', 1.927295, 518.8619282465841, 835.0273310520705, 14.412831340182889, 13.917122184201174],
  ['245/40ZR18', 1.99226, 501.942517542891, 807.7981789525464, 13.94284770952475, 13.463302982542439],
  ['LT245/75R16', 2.360395, 423.65790471510064, 681.811307005819, 11.768275130975018, 11.363521783430315],
  ['33x12.50R15LT', 2.55651, 391.1582587198955, 629.5081967213115, 10.865507186663764, 10.491803278688524],
  ['275/60R20', 2.5559, 391.25161391290743, 629.6584373410541, 10.868100386469651, 10.494307289017566],
  ['195/65R15', 1.935225, 516.735780077252, 831.605627252645, 14.353771668812556, 13.860093787544084],
  ['31x10.50R15LT', 2.40157, 416.3942754115017, 670.1216287678478, 11.566507650319492, 11.168693812797462],
  ['T155/70D17', 1.939912, 515.4873004548659, 829.5963940632358, 14.319091679301833, 13.826606567720596],
] as const;

describe('rolling circumference from the size', () => {
  test.each(TABLE)('%s rolls %d m a turn', (size, circumferenceM, perKm, perMile, at100Kmh, at60Mph) => {
    const rolling = bySize(size).circumferenceM;
    expect(rolling).toBeCloseTo(circumferenceM, 12);
    expect(revsPerKm(rolling)).toBeCloseTo(perKm, 9);
    expect(revsPerMile(rolling)).toBeCloseTo(perMile, 9);
    expect(mpsFromKmh(100) / rolling).toBeCloseTo(at100Kmh, 10);
    expect(mpsFromMph(60) / rolling).toBeCloseTo(at60Mph, 10);
  });

  test('a bias tire rolls 2.99 of its diameter, 2 % less far than a radial', () => {
    const radial = bySize('225/70R15').circumferenceM;
    expect(bySize('225/70D15').circumferenceM / radial).toBeCloseTo(2.99 / 3.05, 12);
    expect(bySize('225/70B15').circumferenceM / radial).toBeCloseTo(2.99 / 3.05, 12);
  });

  test('the geometric rule R_w = R_g − (R_g − R_h)/3 (Jazar, Vehicle Dynamics, tire chapter) agrees within 0.6 %', () => {
    // 205/55R16: free radius 0.31595 m, loaded height 0.293 m.
    const rolling = 2 * Math.PI * (0.31595 - (0.31595 - 0.293) / 3);
    expect(Math.abs(bySize('205/55R16').circumferenceM / rolling - 1)).toBeLessThan(0.006);
  });

  test('it is 2.9 % less than the free circumference', () => {
    expect(bySize('205/55R16').circumferenceM / (Math.PI * 0.6319)).toBeCloseTo(0.9708452, 7);
  });

  test('wear unknown, one standard deviation is 1.2 %; more where ratio or true diameter is open', () => {
    expect(bySize('205/55R16').relativeSd).toBe(0.012);
    expect(bySize('165R15').relativeSd).toBeGreaterThan(0.0125);
    expect(bySize('33x12.50R15').relativeSd).toBeGreaterThan(0.015);
    expect(bySize('33x12.50R15').relativeSd).toBeLessThan(0.02);
  });

  test('it says where it comes from, and passes the notes of the size on', () => {
    expect(bySize('205/55R16').because).toBe('205/55R16: 3.05 times the outer diameter of 632 mm (radial).');
    expect(bySize('165R15').notes.map((note) => note.code)).toEqual(['tire-ratio-assumed']);
  });
});

describe('measured circumference and turns per mile or kilometer', () => {
  test('they are taken as they are', () => {
    expect(rollingOf({ kind: 'rolling-circumference', circumferenceM: 2.36 }).circumferenceM).toBe(2.36);
    expect(rollingOf({ kind: 'revs-per-mile', revsPerMile: 680 }).circumferenceM).toBeCloseTo(2.366682353, 9);
    expect(rollingOf({ kind: 'revs-per-km', revsPerKm: 423.6579 }).circumferenceM).toBeCloseTo(2.360395, 6);
  });

  test('a measurement is trusted more than a figure, and a figure more than the size', () => {
    // The values are judgment; a change should be made on purpose.
    const measured = rollingOf({ kind: 'rolling-circumference', circumferenceM: 2.36 }).relativeSd;
    const figure = rollingOf({ kind: 'revs-per-mile', revsPerMile: 680 }).relativeSd;
    expect([measured, figure]).toEqual([0.005, 0.008]);
    expect(measured).toBeLessThan(figure);
    expect(figure).toBeLessThan(bySize('205/55R16').relativeSd);
  });

  test.each([
    [{ kind: 'rolling-circumference', circumferenceM: 0.3 }, '0.3 m'],
    [{ kind: 'rolling-circumference', circumferenceM: 2360 }, '2360 m'],
    [{ kind: 'rolling-circumference', circumferenceM: NaN }, 'NaN m'],
    [{ kind: 'revs-per-mile', revsPerMile: 0 }, 'Infinity m'],
    [{ kind: 'revs-per-km', revsPerKm: -400 }, '-2.5 m'],
  ] as const)('%o is refused', (spec, found) => {
    const result = rollingCircumference(spec);
    expect(result.ok ? '' : result.problem.message).toBe(
      `A rolling circumference of ${found} does not belong to a road vehicle.`,
    );
  });

  test('the refusal of a size is passed on', () => {
    const result = rollingCircumference({ kind: 'size', size: '265/70' });
    expect(result.ok ? '' : result.problem.code).toBe('tire-size');
  });
});
