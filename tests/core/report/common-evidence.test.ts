import { describe, expect, it } from 'vitest';
import { commonEvidence } from '../../../src/core/report/common-evidence.ts';

const cause = (...sentences: string[]) => ({ for: sentences, against: [], missing: ['The load was not given.'] });

describe('evidence that causes share', () => {
  const out = 'The driveshaft was out before this complaint';
  const { common, causes } = commonEvidence([
    cause(`${out}; it may have gone back turned.`, 'Ring (0.1 mm; no source), outside.'),
    cause(`${out}; its fasteners were off.`),
    cause(`${out}.`, 'The level pulsates slowly.'),
    cause('Ring (0.1 mm; no source), outside.'),
  ]);

  it('is told once, and what it means stays with each cause', () => {
    expect(common).toEqual({ for: [`${out}.`], against: [], missing: ['The load was not given.'] });
    expect(causes.map((one) => one.for)).toEqual([
      ['It may have gone back turned.', 'Ring (0.1 mm; no source), outside.'],
      ['Its fasteners were off.'],
      ['The level pulsates slowly.'],
      ['Ring (0.1 mm; no source), outside.'],
    ]);
    expect(causes.every(({ missing }) => missing.length === 0)).toBe(true);
  });

  it('stays where it is in a short list', () => {
    const two = [cause(`${out}.`), cause(`${out}.`)];
    expect(commonEvidence(two)).toEqual({ common: { for: [], against: [], missing: [] }, causes: two });
  });
});
