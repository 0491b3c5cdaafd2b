import { describe, expect, test } from 'vitest';
import { firingOrder } from '../../../src/core/vehicle/firing.ts';

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
