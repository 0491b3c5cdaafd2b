import { describe, expect, it } from 'vitest';
import type { ComparedPair, OrderChange } from '../../../../src/core/diagnosis/compare/comparison.ts';
import { sentenceOf } from '../../../../src/core/diagnosis/compare/sentence.ts';
import type { Finding } from '../../../../src/core/diagnosis/findings/finding.ts';

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
    expect(fixed.sentence).toBe('Fixed tone at 47.3 Hz cannot be compared.');
    expect(fixed.why).toContain('keeps its frequency');
    const unknown = sentenceOf({ complaint: complaint('unknown'), change: null, fresh: [], pairs: [pair] });
    expect(unknown.sentence).toBe(
      'Unknown tone at 47.3 Hz cannot be compared: it is not known well enough where it would stand in the run after.',
    );
    expect(unknown.why).toContain('give tire size, axle ratio and the road speed');
  });
});

describe('a complaint that both show', () => {
  const shaft = { part: 'driveshaft', label: 'driveshaft 1×', order: 1, trueHz: 52 } as unknown as Finding;
  const fresh = { part: 'tire', label: 'tire 1×', order: 1, trueHz: 13.04 } as unknown as Finding;
  const level = { frequencyHz: 52, amplitudeMps2: 0.2, feltLevel: 2.4, seen: true };
  const change = (verdict: OrderChange['verdict'], changeDb: number, reach = 1): OrderChange => ({
    part: 'driveshaft',
    order: 1,
    label: 'driveshaft 1×',
    before: level,
    after: { ...level, feltLevel: 2.4 * 10 ** (changeDb / 20) },
    changeDb,
    lowDb: changeDb - reach,
    highDb: changeDb + reach,
    real: Math.abs(changeDb) > reach,
    verdict,
  });
  const told = (one: OrderChange, more: readonly Finding[] = [], pairs: readonly ComparedPair[] = [pair]) =>
    sentenceOf({ complaint: shaft, change: one, fresh: more, pairs });

  it('is gone, better, unchanged or worse, with the change, its interval and the felt levels', () => {
    expect(told(change('gone', -20)).sentence).toBe('Driveshaft 1× is gone.');
    expect(told(change('better', -6)).sentence).toBe('Driveshaft 1× is better, but not gone.');
    expect(told(change('worse', 6)).sentence).toBe('Driveshaft 1× is worse.');
    expect(told(change('appeared', 6)).verdict).toBe('worse');
    const same = told(change('unchanged', -0.4));
    expect(same.sentence).toBe('Driveshaft 1× is unchanged.');
    expect(same.why).toBe('Felt level 2.4 before, 2.3 now: the same (−0.4 dB, 95 % interval −1.4 dB to +0.6 dB).');
  });

  it('has moved where it went down and something else shakes now, which is named', () => {
    const moved = told(change('better', -6), [fresh]);
    expect(moved.verdict).toBe('moved');
    expect(moved.sentence).toBe(
      'Driveshaft 1× is weaker, but something else shakes now. New since then: tire 1× at 13.0 Hz.',
    );
  });

  it('asks for a like-for-like run only where unlike runs leave it undecided', () => {
    const unlike = [{ ...pair, unlikeSdDb: 2, differences: ['the sensor was mounted differently'] }];
    expect(told(change('unchanged', -2, 4), [], unlike).why).toContain('a run like the first one would decide');
    expect(told(change('gone', -20), [], unlike).why).not.toContain('would decide');
    expect(told(change('unchanged', 0)).why).not.toContain('would decide');
  });

  it('is said by what could hide where the noise hides it', () => {
    const hidden = { ...change('gone', -20), lowDb: null, after: { ...level, feltLevel: 0.2, seen: false } };
    expect(told(hidden).why).toBe(
      'Felt level 2.4 before, under 0.2 now: at least nine times weaker (19 dB), for the noise hides it now.',
    );
  });

  it('says of a level that was hidden before that it was under what could hide', () => {
    const appeared = { ...change('appeared', 12), highDb: null, before: { ...level, feltLevel: 0.6, seen: false } };
    expect(told(appeared).why).toContain('Felt level under 0.6 before, 9.6 now');
  });
});

describe('two sets of runs', () => {
  it('that share no speed cannot be compared', () => {
    expect(sentenceOf({ complaint: null, change: null, fresh: [], pairs: [] }).verdict).toBe('cannot-tell');
  });
});
