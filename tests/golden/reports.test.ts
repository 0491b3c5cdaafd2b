/**
 * Golden figures of the demo jobs: what their reports gave when they were last looked at. They show that something has
 * changed, not that it is right; that is for the tests against sources. `npm run golden` writes them anew.
 */
import { describe, expect, it } from 'vitest';
import { differences, golden } from './differences.ts';
import { comparisonFigures, PINNED, reportFigures } from './report-figures.ts';

describe('golden figures of recordings', () => {
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
