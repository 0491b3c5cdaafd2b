import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { ENGINE_LAYOUTS } from '../../../src/core/vehicle/engine-layouts.ts';
import { inertiaBalance, secondOrderCoefficient } from '../../../src/core/vehicle/inertia-balance.ts';
import type { CylinderPlace } from '../../../src/core/vehicle/inertia-balance.ts';

type Layout = keyof typeof ENGINE_LAYOUTS;
/** Force at 1×, couple at 1× forward and backward, force at 2×, couple at 2× forward and backward. */
type Row = readonly [Layout, number, number, number, number, number, number];

/**
 * Summed over the cylinders apart from this program. The √3 of the three, the √10 of the cross-plane eight and the 4λ
 * of the four are those of the standard tables; the sixes' zero is the exercise of S. S. Rao, Mechanical Vibrations.
 */
const TABLE: readonly Row[] = [
  ['inline-2, pins together', 2, 0, 0, 2, 0, 0],
  ['inline-2, pins opposed', 0, 0.5, 0.5, 2, 0, 0],
  ['inline-3', 0, 0.866, 0.866, 0, 0.866, 0.866],
  ['inline-4', 0, 0, 0, 4, 0, 0],
  ['inline-5', 0, 0.2245, 0.2245, 0, 2.4899, 2.4899],
  ['inline-6', 0, 0, 0, 0, 0, 0],
  ['vee-6 60°, six throws', 0, 1.5, 0, 0, 0, 1.5],
  ['vee-6 90°, split pins', 0, 1.673, 0.4483, 0, 0.4483, 1.673],
  ['vee-6 90°, shared pins', 0, 1.7321, 0, 0, 1.2247, 1.2247],
  ['vee-6 120°, shared pins', 0, 1.7321, 0.866, 0, 0.866, 1.7321],
  ['vee-8 90°, cross-plane', 0, 3.1623, 0, 0, 0, 0],
  ['vee-8 90°, flat-plane', 0, 0, 0, 5.6569, 0, 0],
  ['vee-10 72°', 0, 0.449, 0.1388, 0, 4.0287, 1.5388],
  ['vee-12 60°', 0, 0, 0, 0, 0, 0],
  ['flat-4', 0, 0, 0, 0, 0.5, 0.5],
  ['flat-6', 0, 0, 0, 0, 0, 0],
];

test.each(TABLE)('%s', (layout, force1, forward1, backward1, force2, forward2, backward2) => {
  const { once, twice } = inertiaBalance(ENGINE_LAYOUTS[layout]);
  expect(once.force.peak).toBeCloseTo(force1, 4);
  expect(once.couple.forward).toBeCloseTo(forward1, 4);
  expect(once.couple.backward).toBeCloseTo(backward1, 4);
  expect(twice.force.peak).toBeCloseTo(force2, 4);
  expect(twice.couple.forward).toBeCloseTo(forward2, 4);
  expect(twice.couple.backward).toBeCloseTo(backward2, 4);
  expect(once.couple.peak).toBeCloseTo(forward1 + backward1, 3);
});

test('the table has every layout once', () => {
  expect(TABLE.map(([layout]) => layout).sort()).toEqual(Object.keys(ENGINE_LAYOUTS).sort());
});

/** Slow judge: adds up the pistons' forces at one crank angle and takes the longest over a turn. */
const greatestForce = (cylinders: readonly CylinderPlace[], order: 1 | 2): number => {
  let greatest = 0;
  for (let step = 0; step < 720; step += 1) {
    const theta = (step * Math.PI) / 360;
    let x = 0;
    let y = 0;
    for (const { bankDeg, pinDeg } of cylinders) {
      const bank = (bankDeg * Math.PI) / 180;
      const push = Math.cos(order * (theta + (pinDeg * Math.PI) / 180 - bank));
      x += push * Math.cos(bank);
      y += push * Math.sin(bank);
    }
    greatest = Math.max(greatest, Math.hypot(x, y));
  }
  return greatest;
};

test('any crankshaft: the peak is what stepping through a turn finds', () => {
  const place = fc.record({
    bankDeg: fc.integer({ min: -90, max: 90 }),
    pinDeg: fc.integer({ min: 0, max: 359 }),
    station: fc.integer({ min: -3, max: 3 }),
  });
  fc.assert(
    fc.property(fc.array(place, { minLength: 1, maxLength: 8 }), (cylinders) => {
      const { once, twice } = inertiaBalance(cylinders);
      expect(Math.abs(once.force.peak - greatestForce(cylinders, 1))).toBeLessThan(1e-3);
      expect(Math.abs(twice.force.peak - greatestForce(cylinders, 2))).toBeLessThan(1e-3);
    }),
    { numRuns: 50 },
  );
});

describe('worked: 0.60 kg, crank radius 43 mm, rod 150 mm, 3000 rpm', () => {
  const lambda = 43 / 150;
  const unitN = 0.6 * 0.043 * ((2 * Math.PI * 3000) / 60) ** 2;
  test('m·r·ω² is 2546.36 N; the four shakes with 2919.82 N at 2×', () => {
    expect(unitN).toBeCloseTo(2546.3579, 4);
    expect(inertiaBalance(ENGINE_LAYOUTS['inline-4']).twice.force.peak * lambda * unitN).toBeCloseTo(2919.8238, 4);
  });
  test('the three rocks with 396.94 N·m at 1× on a pitch of 90 mm', () => {
    expect(inertiaBalance(ENGINE_LAYOUTS['inline-3']).once.couple.peak * unitN * 0.09).toBeCloseTo(396.9379, 4);
  });
  test('the exact coefficient of 2× is 0.2927829', () => {
    expect(secondOrderCoefficient(lambda)).toBeCloseTo(0.2927829, 7);
  });
});
