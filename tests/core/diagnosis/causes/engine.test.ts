import { describe, expect, it } from 'vitest';
import { rankCauses } from '../../../../src/core/diagnosis/ranking/rank-causes.ts';
import { caseOf, finding } from './case-fixtures.ts';

const causesAt = (order: number, cylinders: number | undefined, role?: 'firing'): string[] =>
  rankCauses(
    finding('engine', order, role && { role }),
    caseOf({ vehicle: { layout: 'rear-drive', ...(cylinders !== undefined && { cylinders }) } }),
  ).map(({ id }) => id);

const isMisfire = (ids: readonly string[]): boolean => ids.some((id) => id.startsWith('misfire'));

// A four-stroke engine fires cylinders/2 times a turn (J. B. Heywood, Internal Combustion
// Engine Fundamentals, 1988; from memory).
describe('engine causes by order', () => {
  it('a half order is a misfire, unless it is the order at which the engine fires', () => {
    expect(isMisfire(causesAt(0.5, 4))).toBe(true);
    expect(isMisfire(causesAt(1.5, 4))).toBe(true);
    expect(isMisfire(causesAt(1.5, 3))).toBe(false);
    expect(isMisfire(causesAt(2.5, 5))).toBe(false);
    expect(isMisfire(causesAt(1.5, 5))).toBe(true);
    expect(isMisfire(causesAt(1.5, undefined))).toBe(true);
    expect(isMisfire(causesAt(1.5, undefined, 'firing'))).toBe(false);
  });

  it('lugging is blamed at the order at which the engine fires only', () => {
    const lugs = (order: number, cylinders: number): boolean => causesAt(order, cylinders).includes('lugging');
    expect([lugs(2, 4), lugs(3, 6), lugs(2, 6), lugs(1, 4)]).toEqual([true, true, false, false]);
  });

  it('a balance shaft is blamed at the order it cancels: 2× in fours, 1× in threes', () => {
    const blamed = (order: number, cylinders: number): boolean =>
      causesAt(order, cylinders).some((id) => id.includes('balance-shaft'));
    expect([blamed(2, 4), blamed(1, 3), blamed(1, 4), blamed(2, 3), blamed(2, 6), blamed(1, 6)]).toEqual([
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
  });
});
