import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  anyAcross,
  directionFromSlope,
  jointAngleDeg,
  jointPlane,
  lengthOf,
  turnAboutDeg,
  unit,
} from '../../../../src/core/driveline/angles/compound-angle.ts';
import type { Direction } from '../../../../src/core/driveline/angles/compound-angle.ts';
import { planOfOffsets, slopeOfReading } from '../../../../src/core/driveline/angles/inclinometer.ts';
import { radFromDeg } from '../../../../src/core/units.ts';
import { must } from '../../../support/must.ts';

/** Direction of a shaft from the angles it shows in a side view and in a plan view of a drawing. */
const directionFromViews = (sideDeg: number, planDeg: number): Direction =>
  unit([1, Math.tan(radFromDeg(planDeg)), -Math.tan(radFromDeg(sideDeg))]);

describe('true angle between two shafts', () => {
  // Derived: plan angle, slope, by projected views (tan rule), by slope and plan (cos rule).
  it.each([
    [3, 5, 5.82315, 5.828991],
    [10, 12, 15.438712, 15.573394],
  ])('from plan %s° and side %s° follows both rules', (plan, side, projected, exact) => {
    const level = directionFromSlope(0);
    expect(jointAngleDeg(level, directionFromViews(side, plan))).toBeCloseTo(projected, 6);
    expect(jointAngleDeg(level, directionFromSlope(side, plan))).toBeCloseTo(exact, 6);
  });

  it('follows the rules on the worked vehicle, where the slopes and plan angles are differences', () => {
    const transmission = directionFromSlope(3);
    const pinion = directionFromSlope(2.4);
    expect(jointAngleDeg(transmission, directionFromSlope(6.2, 1.5))).toBeCloseTo(3.531987, 6);
    expect(jointAngleDeg(directionFromSlope(6.2, 1.5), pinion)).toBeCloseTo(4.083689, 6);
    expect(jointAngleDeg(directionFromViews(3, 0), directionFromViews(6.2, 1.5))).toBeCloseTo(3.530079, 6);
    expect(jointAngleDeg(directionFromViews(6.2, 1.5), directionFromViews(2.4, 0))).toBeCloseTo(4.081728, 6);
  });

  it('turns a view angle into a slope by tan S = tan V / cos H', () => {
    const slope = (Math.atan(Math.tan((12 * Math.PI) / 180) * Math.cos((10 * Math.PI) / 180)) * 180) / Math.PI;
    expect(jointAngleDeg(directionFromViews(12, 10), directionFromSlope(slope, 10))).toBeLessThan(1e-9);
  });

  it('keeps its figures at a thousandth of a degree', () => {
    expect(jointAngleDeg(directionFromSlope(3), directionFromSlope(3.001))).toBeCloseTo(0.001, 12);
  });

  it('has unit directions, and a plane whose two across-directions lie an angle apart', () => {
    const front = directionFromSlope(4, 2);
    const rear = directionFromSlope(-3, 5);
    expect(lengthOf(front)).toBeCloseTo(1, 14);
    const plane = jointPlane(front, rear, [0, 1, 0]);
    expect(jointAngleDeg(plane.acrossFront, plane.acrossRear)).toBeCloseTo(plane.angleDeg, 10);
    expect(turnAboutDeg([1, 0, 0], [0, 1, 0], [0, 0, 1])).toBeCloseTo(90, 12);
  });
});

const slope = (...args: Parameters<typeof slopeOfReading>): number => must(slopeOfReading(...args));

describe('an inclinometer held in any way', () => {
  it('tells the same slope along the tube, facing either way, or across a flange', () => {
    expect(slope({ shownDeg: 4.2, lowEnd: 'rear' })).toBe(4.2);
    expect(slope({ shownDeg: -4.2, lowEnd: 'rear' })).toBe(4.2);
    expect(slope({ shownDeg: 4.2, positiveMeansLow: 'rear' })).toBe(4.2);
    expect(slope({ shownDeg: -4.2, positiveMeansLow: 'front' })).toBe(4.2);
    expect(slope({ shownDeg: 85.8, held: 'across', lowEnd: 'rear' })).toBeCloseTo(4.2, 12);
    expect(slope({ shownDeg: 4.2, lowEnd: 'front' })).toBe(-4.2);
  });

  it('takes any reference off, so that joint angles do not depend on it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.double({ min: -10, max: 10, noNaN: true }),
        fc.double({ min: -10, max: 10, noNaN: true }),
        (one, two, reference) => {
          const zero = { shownDeg: reference };
          const difference = slope({ shownDeg: one }, zero) - slope({ shownDeg: two }, zero);
          expect(difference).toBeCloseTo(one - two, 10);
        },
      ),
      { numRuns: 50 },
    );
  });

  it('refuses a reading past upright, and an upright face without its low end', () => {
    expect(slopeOfReading({ shownDeg: 90 }).ok).toBe(true);
    expect(slopeOfReading({ shownDeg: 90.5 }).ok).toBe(false);
    expect(slopeOfReading({ shownDeg: 120 })).toMatchObject({ ok: false, problem: { code: 'slope-out-of-range' } });
    expect(slopeOfReading({ shownDeg: 86, held: 'across' })).toMatchObject({
      ok: false,
      problem: { code: 'slope-sign-missing', remedy: 'Say which end is lower, the front or the rear.' },
    });
  });
});

describe('a direction across a shaft', () => {
  // Definition: at a right angle and of length 1, for a shaft on end as well.
  it.each([
    [0, 0, 1],
    [0, 0, -1],
    [1, 0, 0],
    [0.6, 0, 0.8],
    [0.36, 0.48, 0.8],
  ])('of %s, %s, %s', (x, y, z) => {
    const across = anyAcross([x, y, z]);
    expect(across[0] * x + across[1] * y + across[2] * z).toBeCloseTo(0, 12);
    expect(lengthOf(across)).toBeCloseTo(1, 12);
  });
});

describe('plan angle from sideways offsets', () => {
  it('is the angle whose sine is offset over length, on the level part of a sloping shaft', () => {
    const level = planOfOffsets(20, 60, 1500);
    const sloping = planOfOffsets(20, 60, 1500, 8);
    expect(level.ok && level.value).toBeCloseTo((Math.asin(40 / 1500) * 180) / Math.PI, 12);
    const onLevel = 1500 * Math.cos((8 * Math.PI) / 180);
    expect(sloping.ok && sloping.value).toBeCloseTo((Math.asin(40 / onLevel) * 180) / Math.PI, 12);
    expect(planOfOffsets(0, -40, 1500)).toMatchObject({ ok: true, value: expect.closeTo(-1.528, 3) });
  });

  it('refuses offsets that do not fit the shaft', () => {
    expect(planOfOffsets(0, 2000, 1500)).toMatchObject({ ok: false, problem: { code: 'plan-offset-too-large' } });
    expect(planOfOffsets(0, 10, 0)).toMatchObject({ ok: false });
  });
});
