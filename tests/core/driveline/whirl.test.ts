import { describe, expect, it } from 'vitest';
import type { Tube } from '../../../src/core/driveline/shaft-tube.ts';
import { MATERIALS, pieceMassKg, tubeMassPerMetreKg, tubeOf } from '../../../src/core/driveline/shaft-tube.ts';
import { criticalSpeedRpm, longestTubeMm, whirl } from '../../../src/core/driveline/whirl.ts';
import { whirlAdvice } from '../../../src/core/report/whirl-text.ts';
import { must } from '../../support/must.ts';

const tube = (outerMm: number, wallMm: number, lengthMm: number, material: Tube['material'] = 'steel'): Tube => ({
  outerMm,
  wallMm,
  lengthMm,
  material,
});

describe('critical speed', () => {
  // Derived from EI·y'''' = m'·ω²·y with pinned ends; E 207 and 69 GPa, 7850 and 2700 kg/m³.
  it.each([
    [tube(76.2, 1.65, 1320), 3.0335, 7322.89, 122.0482, 3661.4, 5492.2],
    [tube(76.2, 2.1082, 1219.2), 3.8521, 8532.42, 142.2071, 4266.2, 6399.3],
    [tube(88.9, 2.1082, 1524), 4.5124, 6396.07, 106.6012, 3198, 4797.1],
    [tube(101.6, 3, 1700, 'aluminium'), 2.5091, 5749.75, 95.8291, 2874.9, 4312.3],
  ])('of %j is as worked out', (one, massPerMetre, rpm, hz, half, threeQuarters) => {
    expect(Math.abs(tubeMassPerMetreKg(one) - massPerMetre)).toBeLessThan(0.00006);
    expect(Math.abs(criticalSpeedRpm(one) - rpm)).toBeLessThan(0.0051);
    expect(Math.abs(criticalSpeedRpm(one) / 60 - hz)).toBeLessThan(0.000051);
    const [piece] = must(
      whirl([{ lengthMm: one.lengthMm, tubeOuterMm: one.outerMm, wallMm: one.wallMm, material: one.material }], {
        complaintRpm: null,
        topRpm: null,
      }),
    );
    expect(Math.abs(piece!.halfCriticalRpm - half)).toBeLessThan(0.051);
    expect(Math.abs(piece!.safeRpm - threeQuarters)).toBeLessThan(0.051);
  });

  it('of a solid steel bar is 4 768 668·d/L² in inches within 0.2 % (Machinery’s Handbook, as quoted)', () => {
    const solid = criticalSpeedRpm(tube(25.4, 12.7, 25.4 * 40));
    expect(solid / (4768668 / 1600)).toBeCloseTo(1, 2);
    expect(Math.abs(solid / (4768668 / 1600) - 1)).toBeGreaterThan(0.001);
    expect(solid / (4763517 / 1600)).toBeCloseTo(1, 5);
  });

  it('has the constant 1.20993e8 in millimeters, and hardly depends on the material (0.98445)', () => {
    const { youngPa, densityKgPerM3 } = MATERIALS.steel;
    expect(Math.sqrt(youngPa / densityKgPerM3)).toBeCloseTo(5135.117, 3);
    const one = tube(80, 2, 1000);
    expect(criticalSpeedRpm(one) / (Math.hypot(80, 76) / 1000 ** 2)).toBeCloseTo(1.2099334e8, -3);
    const aluminium = criticalSpeedRpm({ ...one, material: 'aluminium' });
    expect(aluminium / criticalSpeedRpm(one)).toBeCloseTo(0.98445, 5);
  });

  it('agrees with a bar of lumps on a string of springs, solved slowly', () => {
    // Finite differences of the beam equation with pinned ends, lowest eigenvalue by inverse iteration.
    const one = tube(76.2, 1.65, 1320);
    const nodes = 60;
    const step = 1.32 / (nodes + 1);
    const inner = 76.2 - 3.3;
    const stiffness = 207e9 * (Math.PI / 64) * ((76.2 / 1000) ** 4 - (inner / 1000) ** 4);
    const curvature = (y: readonly number[]) =>
      y.map((value, index) => ((y[index - 1] ?? 0) - 2 * value + (y[index + 1] ?? 0)) / step ** 2);
    // Pinned: moment is zero at both ends, so the same operator applies twice; invert it by Thomas sweeps.
    const solveCurvature = (right: readonly number[]) => {
      const upper: number[] = [];
      const value: number[] = [];
      for (let index = 0; index < nodes; index++) {
        const pivot = -2 - (upper[index - 1] ?? 0);
        upper.push(1 / pivot);
        value.push((right[index]! * step ** 2 - (value[index - 1] ?? 0)) / pivot);
      }
      for (let index = nodes - 2; index >= 0; index--) value[index]! -= upper[index]! * value[index + 1]!;
      return value;
    };
    let shape = Array.from({ length: nodes }, () => 1);
    for (let round = 0; round < 20; round++) {
      const next = solveCurvature(solveCurvature(shape));
      const length = Math.hypot(...next);
      shape = next.map((value) => value / length);
    }
    const bent = curvature(curvature(shape));
    const eigenvalue = shape.reduce((sum, value, index) => sum + value * bent[index]!, 0);
    const omega = Math.sqrt((eigenvalue * stiffness) / tubeMassPerMetreKg(one));
    expect((omega * 60) / (2 * Math.PI) / criticalSpeedRpm(one)).toBeCloseTo(1, 3);
  });

  it('judges each piece at the complaint and at top speed, and finds the half-critical', () => {
    const long = { lengthMm: 1524, tubeOuterMm: 88.9, wallMm: 2.1082 };
    const [first, second] = must(whirl([long, { ...long, lengthMm: 900 }], { complaintRpm: 3100, topRpm: 5000 }));
    expect(first!.atComplaint).toMatchObject({ inside: true, measured: expect.closeTo(3100 / 6396.07, 5) });
    expect(first!.atTopSpeed!.inside).toBe(false);
    expect(first!.nearHalfCritical).toBe(true);
    expect(second!.atTopSpeed!.inside).toBe(true);
    expect(second!.nearHalfCritical).toBe(false);
    const cautious = must(
      whirl([long], { complaintRpm: 4500, topRpm: null, limits: { 'whirl-share': { value: 0.65 } } }),
    );
    expect(cautious[0]!.atComplaint!.inside).toBe(false);
  });

  it('advises each piece by its margin', () => {
    const long = { lengthMm: 1524, tubeOuterMm: 88.9, wallMm: 2.1082 };
    const pieces = must(whirl([long, { ...long, lengthMm: 900 }], { complaintRpm: 3100, topRpm: 5000 }));
    const [first, second] = pieces.map((piece) => whirlAdvice(piece, pieces.length).join(' '));
    expect(first).toMatch(/moving its center bearing or adding another.*near half the critical speed/u);
    expect(second).toMatch(/^The margin is enough up to top speed/u);
    const [silent] = must(whirl([long], { complaintRpm: null, topRpm: null }));
    expect(whirlAdvice(silent!, 1)).toEqual([]);
  });

  it('gives the longest tube for a speed', () => {
    const lengthMm = longestTubeMm({ outerMm: 88.9, wallMm: 2.1082, material: 'steel' }, 6396.07);
    expect(lengthMm).toBeCloseTo(1524, 1);
  });

  it('refuses a piece that makes no tube, naming it', () => {
    expect(
      whirl([{ lengthMm: 1500, tubeOuterMm: 76, wallMm: 1.6 }, { lengthMm: 900 }], {
        complaintRpm: null,
        topRpm: null,
      }),
    ).toMatchObject({ ok: false, problem: { code: 'tube-not-known', key: 'vehicle.driveshaftPieces[1]' } });
    expect(tubeOf({ lengthMm: 1000, tubeOuterMm: 50, wallMm: 30 })).toBeNull();
    expect(tubeOf({ lengthMm: 1000, tubeOuterMm: 50, wallMm: 25.1 })).toBeNull();
    expect(tubeOf({ lengthMm: 1000, tubeOuterMm: 50, wallMm: 0 })).toBeNull();
    expect(tubeOf({ lengthMm: 0, tubeOuterMm: 50, wallMm: 2 })).toBeNull();
    expect(tubeOf({ lengthMm: 1000, tubeOuterMm: 50, wallMm: 25 })).toMatchObject({ material: 'steel' });
    expect(whirl([], { complaintRpm: null, topRpm: null })).toMatchObject({ ok: false, problem: { code: 'no-shaft' } });
  });
});

describe('mass of a piece', () => {
  it('is as weighed, else estimated from its tube and said so, else not known', () => {
    const sizes = { lengthMm: 1320, tubeOuterMm: 76.2, wallMm: 1.65 };
    expect(pieceMassKg({ ...sizes, massKg: 9 })).toEqual({ massKg: 9, estimated: false });
    expect(pieceMassKg(sizes)).toEqual({ massKg: expect.closeTo(3.0335 * 1.32 * 1.5, 2), estimated: true });
    expect(pieceMassKg({ lengthMm: 1320 })).toBeNull();
  });
});
