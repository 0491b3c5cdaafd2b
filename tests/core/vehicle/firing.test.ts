import { describe, expect, test } from 'vitest';
import { evenFiringAnglesDeg, firingFactor, firingOrder } from '../../../src/core/vehicle/firing.ts';

describe('firing order of an evenly firing four-stroke engine is half its cylinders (Heywood, Internal Combustion Engine Fundamentals)', () => {
  test.each([
    [3, 1.5, 17.5, 75],
    [4, 2, 23.3333, 100],
    [5, 2.5, 29.1667, 125],
    [6, 3, 35, 150],
    [8, 4, 46.6667, 200],
    [10, 5, 58.3333, 250],
    [12, 6, 70, 300],
  ])('%d cylinders: order %d, %d Hz at 700 rpm, %d Hz at 3000 rpm', (cylinders, order, at700, at3000) => {
    expect(firingOrder(cylinders)).toBe(order);
    expect(((firingOrder(cylinders) ?? 0) * 700) / 60).toBeCloseTo(at700, 4);
    expect(((firingOrder(cylinders) ?? 0) * 3000) / 60).toBeCloseTo(at3000, 9);
  });
  test('no number of cylinders, no firing order', () => {
    for (const cylinders of [undefined, 0, -4, 2.5, NaN]) expect(firingOrder(cylinders)).toBeNull();
  });
});

describe('what is left of one pulse when all cylinders are added (phasor sum over 720°, worked by hand)', () => {
  const halfOrders = (last: number): number[] => Array.from({ length: 2 * last }, (_, index) => (index + 1) / 2);

  test('an even engine leaves the firing order and its multiples only', () => {
    for (const order of halfOrders(12)) {
      expect(firingFactor(order, evenFiringAnglesDeg(8))).toBeCloseTo(order % 4 === 0 ? 1 : 0, 12);
    }
  });
  test('four cylinders, one dead: a quarter at every half order but 2, 4, 6, where three quarters are left', () => {
    for (const order of halfOrders(6)) {
      const left = firingFactor(order, evenFiringAnglesDeg(4), [1, 1, 0, 1]);
      expect(left).toBeCloseTo(order % 2 === 0 ? 0.75 : 0.25, 12);
    }
  });
  test('eight cylinders, one dead: an eighth, and seven eighths at multiples of 4', () => {
    for (const order of halfOrders(8)) {
      const left = firingFactor(order, evenFiringAnglesDeg(8), [1, 1, 1, 1, 1, 0, 1, 1]);
      expect(left).toBeCloseTo(order % 4 === 0 ? 0.875 : 0.125, 12);
    }
  });
  test('six cylinders, one at 80 %: a thirtieth at all half orders, 0.966667 at 3 and 6', () => {
    for (const order of halfOrders(6)) {
      const left = firingFactor(order, evenFiringAnglesDeg(6), [1, 0.8, 1, 1, 1, 1]);
      expect(left).toBeCloseTo(order % 3 === 0 ? 0.9666667 : 0.0333333, 6);
    }
  });
  test.each([
    [
      'odd-fire six in vee, 150° and 90°',
      [0, 150, 240, 390, 480, 630],
      [
        [1.5, 0.3827],
        [3, 0.7071],
        [4.5, 0.9239],
      ],
    ],
    [
      'ten in vee at 90° on shared pins, 90° and 54°',
      [0, 90, 144, 234, 288, 378, 432, 522, 576, 666],
      [
        [2.5, 0.3827],
        [5, 0.7071],
        [7.5, 0.9239],
      ],
    ],
    [
      'twin in vee at 45°, 315° and 405°',
      [0, 315],
      [
        [0.5, 0.1951],
        [1, 0.9239],
        [1.5, 0.5556],
        [2, 0.7071],
      ],
    ],
  ] as const)('%s', (_, angles, table) => {
    for (const [order, factor] of table) expect(firingFactor(order, angles)).toBeCloseTo(factor, 4);
  });
  test('no cylinders leave nothing', () => {
    expect(firingFactor(1, [])).toBe(0);
  });
});
