/**
 * Golden figures: what the ranking and the demo reports gave when they were last looked at. They show that something has
 * changed, not that it is right; that is for the tests against sources. `npm run golden` writes them anew.
 */
import { describe, expect, it } from 'vitest';
import { benchFigures } from './bench-figures.ts';
import { differences, golden } from './differences.ts';
import { rankingTable } from './ranking-table.ts';
import { comparisonFigures, PINNED, reportFigures } from './report-figures.ts';
import { vehicleFigures } from './vehicle-figures.ts';

describe('golden figures', () => {
  it('of the ranking are as they were', () => {
    expect(differences(JSON.parse(JSON.stringify(rankingTable())), golden('ranking'), 1e-7)).toEqual([]);
  });

  it('of random vehicles are as they were', () => {
    expect(differences(JSON.parse(JSON.stringify(vehicleFigures())), golden('vehicle'), 1e-7)).toEqual([]);
  });

  it('of the bench are as they were', () => {
    expect(differences(JSON.parse(JSON.stringify(benchFigures())), golden('bench'), 1e-6)).toEqual([]);
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
