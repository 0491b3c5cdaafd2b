/** The first few thousand cases of every target; npm run fuzz goes on from there. */
import { describe, expect, it } from 'vitest';
import { runCase } from './run-case.ts';
import { targets } from './targets/all.ts';

const SEED = 11;
const CASES: Readonly<Record<string, number>> = {
  reader: 500,
  truncation: 400,
  damage: 150,
  job: 500,
  tire: 2000,
  quantity: 2000,
  words: 200,
  analysis: 4,
  wide: 12,
  large: 2,
};

describe('made-up bad input', () => {
  it.each(targets.map((target) => [target.name, target] as const))(
    'of the kind "%s" ends in a sound answer or a sentence, in time',
    async (name, target) => {
      const found: string[] = [];
      for (let index = 0; index < CASES[name]!; index++) {
        const finding = await runCase(target, SEED, index);
        if (finding) found.push(`${finding.kind} in case ${index}: ${finding.text}`);
      }
      expect(found).toEqual([]);
    },
  );

  it('has a part in these tests for every target', () => {
    expect(Object.keys(CASES).sort()).toEqual(targets.map(({ name }) => name).sort());
  });
});
