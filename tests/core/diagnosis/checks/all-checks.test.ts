import { describe, expect, it } from 'vitest';
import { ALL_CHECKS } from '../../../../src/core/diagnosis/checks/all-checks.ts';

/** A length in mm with its inches right behind it: '0.5 mm (0.020 in)', '0.25 mm, 0.010 in'. */
const LENGTH = /([\d.]+) mm(?: \(|, )?([\d./]*)(?: in)?/gu;

const inches = (text: string): number => {
  const [over, under = '1'] = text.split('/');
  return Number(over) / Number(under);
};

const lengths = ALL_CHECKS.flatMap((check) =>
  [...check.how, check.limit ?? ''].flatMap((text) =>
    [...text.matchAll(LENGTH)].map(
      ([whole, mm, inch]) => [`${check.id}: ${whole}`, Number(mm), inches(inch ?? '')] as const,
    ),
  ),
);

describe('lengths on the cards of checks', () => {
  it('are many', () => expect(lengths.length).toBeGreaterThan(10));

  // 25.4 mm to the inch exactly: international yard and pound agreement of 1959. The trade rounds: within a tenth.
  it.each(lengths)('%s is the same in inches', (_, mm, inch) => {
    expect(Math.abs(inch * 25.4 - mm) / mm).toBeLessThan(0.1);
  });
});
