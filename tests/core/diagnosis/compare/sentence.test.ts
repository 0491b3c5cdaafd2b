import { describe, expect, it } from 'vitest';
import type { ComparedPair } from '../../../../src/core/diagnosis/compare/comparison.ts';
import { sentenceOf } from '../../../../src/core/diagnosis/compare/sentence.ts';
import type { Finding } from '../../../../src/core/diagnosis/finding.ts';

const pair: ComparedPair = {
  before: { name: 'before', speedMps: 27, durationS: 60 },
  after: { name: 'after', speedMps: 27, durationS: 60 },
  unlikeSdDb: 0,
  differences: [],
  orders: [],
};
const complaint = (part: 'fixed' | 'unknown'): Finding =>
  ({ part, label: `${part} tone`, order: null, trueHz: 47.26 }) as unknown as Finding;

describe('a complaint that is no order of a part', () => {
  it('is not compared, and the answer says what to do instead', () => {
    const fixed = sentenceOf({ complaint: complaint('fixed'), change: null, fresh: [], pairs: [pair] });
    expect(fixed.verdict).toBe('cannot-tell');
    expect(fixed.sentence).toBe('Fixed tone at 47.3 Hz cannot be compared: only orders of a named part are.');
    expect(fixed.why).toContain('keeps its frequency');
    const unknown = sentenceOf({ complaint: complaint('unknown'), change: null, fresh: [], pairs: [pair] });
    expect(unknown.why).toContain('Give tire size, axle ratio and the road speed');
  });
});

describe('two sets of runs', () => {
  it('that share no speed cannot be compared', () => {
    expect(sentenceOf({ complaint: null, change: null, fresh: [], pairs: [] }).verdict).toBe('cannot-tell');
  });
});
