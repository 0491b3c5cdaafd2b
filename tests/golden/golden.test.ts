/**
 * Golden figures: what the ranking and the demo reports gave when they were last looked at. They show that something has
 * changed, not that it is right; that is for the tests against sources. `npm run golden` writes them anew.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { rankingTable } from './ranking-table.ts';
import { comparisonFigures, PINNED, reportFigures } from './report-figures.ts';

const golden = (name: string): unknown => JSON.parse(readFileSync(`tests/golden/${name}.json`, 'utf8'));

/** Differences, as paths; numbers may differ by the given share, or by so much below a thousandth. */
const differences = (got: unknown, wanted: unknown, share: number, path = ''): string[] => {
  if (typeof got === 'number' && typeof wanted === 'number') {
    const isClose = Math.abs(got - wanted) <= share * Math.max(1e-3, Math.abs(wanted));
    return isClose ? [] : [`${path}: ${got}, was ${wanted}`];
  }
  if (typeof got !== 'object' || typeof wanted !== 'object' || got === null || wanted === null) {
    return got === wanted ? [] : [`${path}: ${String(got)}, was ${String(wanted)}`];
  }
  const [a, b] = [got as Record<string, unknown>, wanted as Record<string, unknown>];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].flatMap((key) =>
    differences(a[key], b[key], share, `${path}/${key}`),
  );
};

describe('golden figures', () => {
  it('of the ranking are as they were', () => {
    expect(differences(JSON.parse(JSON.stringify(rankingTable())), golden('ranking'), 1e-7)).toEqual([]);
  });

  // Sines and exponentials may differ in their last digits from one machine to another; iterations carry that on.
  it('of before and after are as they were', async () => {
    const figures: unknown = JSON.parse(JSON.stringify(await comparisonFigures()));
    expect(differences(figures, golden('comparison'), 1e-5)).toEqual([]);
  });

  it.each(PINNED)('of %s are as they were', async (name) => {
    const figures: unknown = JSON.parse(JSON.stringify(await reportFigures(name)));
    expect(differences(figures, golden(name), 1e-5)).toEqual([]);
  });
});
