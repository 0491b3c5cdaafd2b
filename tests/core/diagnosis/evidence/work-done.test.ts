import { expect, test } from 'vitest';
import { workRatio } from '../../../../src/core/diagnosis/evidence/work-done.ts';
import { rankCauses } from '../../../../src/core/diagnosis/ranking/rank-causes.ts';
import { caseOf, finding, probabilityOf } from '../causes/case-fixtures.ts';

const weights = {
  prior: 1,
  withoutWork: 0.2,
  work: { 'joint-replaced-front': 4, 'joint-replaced-rear': 4, 'wheels-balanced': 0.5 },
} as const;

test('Risks of several works add, doubts multiply', () => {
  expect(workRatio(weights, ['joint-replaced-front'])).toBe(4);
  expect(workRatio(weights, ['joint-replaced-front', 'joint-replaced-rear'])).toBe(7);
  expect(workRatio(weights, ['joint-replaced-front', 'wheels-balanced'])).toBe(2);
  expect(workRatio(weights, ['joint-replaced-front', 'joint-replaced-front'])).toBe(4);
});

test('Without work that names it, a cause that only work brings is held back', () => {
  expect(workRatio(weights, [])).toBe(0.2);
  expect(workRatio(weights, ['exhaust-changed'])).toBe(0.2);
  expect(workRatio({ prior: 1 }, [])).toBe(1);
  const causes = rankCauses(finding('driveshaft', 1), caseOf());
  expect(causes.find(({ id }) => id === 'shaft-not-indexed')!.against).toContain(
    'No work is on record that would have brought this.',
  );
});

test('The front driveshaft of a four-wheel drive has no center bearing, whatever the rear one has', () => {
  const vehicle = { layout: 'four-wheel-drive', driveshaftPieces: [{ lengthMm: 700 }, { lengthMm: 1100 }] } as const;
  const ids = (name?: string) =>
    rankCauses(finding('driveshaft', 2, name === undefined ? {} : { name }), caseOf({ vehicle })).map(({ id }) => id);
  expect(ids()).toEqual(expect.arrayContaining(['center-bearing', 'launch-shudder']));
  expect(ids('front driveshaft')).not.toContain('launch-shudder');
  expect(ids('front driveshaft')).toContain('double-cardan-centering');
});

test('Work moves causes the way the trade knows them to move (common practice, no source)', () => {
  const once = finding('driveshaft', 1);
  const share = (id: string, work: Parameters<typeof workRatio>[1]) =>
    probabilityOf(rankCauses(once, caseOf({ work })), id);
  expect(share('companion-flange-runout', ['flange-removed'])).toBeGreaterThan(share('companion-flange-runout', []));
  expect(share('shaft-not-indexed', ['shaft-removed'])).toBeGreaterThan(3 * share('shaft-not-indexed', []));
  const tire = (id: string, work: Parameters<typeof workRatio>[1]) =>
    probabilityOf(rankCauses(finding('tire', 1), caseOf({ work })), id);
  expect(tire('tire-unbalance', ['wheels-balanced'])).toBeLessThan(tire('tire-unbalance', []));
  expect(tire('wheel-not-centered', ['tires-rotated'])).toBeGreaterThan(3 * tire('wheel-not-centered', []));
});

// Bad part, wrong rings (unequal, or too thick), bent ears, not re-marked, burrs at the seat, U-bolts overtightened,
// lost weight, forks one tooth off: what comes back after a joint was replaced (common practice, no source).
test('A joint replacement brings the comeback list, each likelier than without it', () => {
  const rows: readonly (readonly [string, 1 | 2])[] = [
    ['new-part-bad', 1],
    ['joint-off-center', 1],
    ['ring-too-tight', 2],
    ['ears-bent', 1],
    ['shaft-not-indexed', 1],
    ['yoke-seat-burrs', 1],
    ['u-bolt-overtightened', 1],
    ['shaft-unbalance', 1],
    ['forks-out-of-phase', 2],
  ];
  for (const [id, order] of rows) {
    const at = (work: Parameters<typeof workRatio>[1]) =>
      rankCauses(finding('driveshaft', order), caseOf({ work })).find((cause) => cause.id === id)!;
    const [before, after] = [at([]), at(['joint-replaced-rear'])];
    // Odds against the causes that the work leaves alone: a share of all can fall where the whole list rises.
    const alone = (work: Parameters<typeof workRatio>[1]) =>
      probabilityOf(
        rankCauses(finding('driveshaft', order), caseOf({ work })),
        order === 1 ? 'slip-yoke-worn' : 'angles-from-ride-height',
      );
    expect(after.probability / alone(['joint-replaced-rear']), id).toBeGreaterThan(
      1.2 * (before.probability / alone([])),
    );
    expect(after.for.join(' '), id).toContain('replaced before this complaint');
  }
});
