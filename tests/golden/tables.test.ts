/**
 * Golden figures of what needs no recording. They show that something has changed, not that it is right; that is for the
 * tests against sources. `npm run golden` writes them anew.
 */
import { describe, expect, it } from 'vitest';
import { benchFigures } from './bench-figures.ts';
import { differences, golden } from './differences.ts';
import { rankingTable } from './ranking-table.ts';
import { vehicleFigures } from './vehicle-figures.ts';

describe('golden figures', () => {
  it.each([
    ['ranking', rankingTable, 1e-7],
    ['vehicle', vehicleFigures, 1e-7],
    // Least changes of angles are searched for, which carries last digits on.
    ['bench', benchFigures, 1e-6],
  ] as const)('of %s are as they were', (name, figures, share) => {
    expect(differences(JSON.parse(JSON.stringify(figures())), golden(name), share)).toEqual([]);
  });

  it('hold no sentence with more digits than a number is worth', () => {
    const sentences = Object.values(benchFigures())
      .flat(2)
      .filter((leaf) => typeof leaf === 'string');
    // Four decimals are the tenth of a thousandth of an inch that a dial shows.
    expect(sentences.filter((text) => /\d\.\d{5,}|\de[+-]?\d|(^|\s)-\d/.test(text))).toEqual([]);
  });
});
