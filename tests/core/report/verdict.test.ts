import { describe, expect, it } from 'vitest';
import { foundAnswer } from '../../../src/core/report/build/verdict.ts';
import type { CauseReport, FindingReport, SharedOrigin } from '../../../src/core/report/report.ts';

const cause = (title: string, probability: number): CauseReport => ({
  id: title,
  title,
  probability,
  for: [],
  against: [],
  missing: [],
  repair: '',
  checks: [],
});
const finding = (causes: readonly CauseReport[], shared: readonly SharedOrigin[] = []): FindingReport => ({
  part: 'driveshaft',
  order: 1,
  label: 'driveshaft 1×',
  probability: 0.6,
  run: 'cruise',
  frequencyHz: 42.7,
  frequencySdHz: 0.01,
  amplitudeMps2: 0.2,
  feltLevel: 3,
  perceived: 'felt',
  overRoad: null,
  sharesFrequencyWith: shared,
  for: [],
  against: [],
  missing: [],
  causes,
});
const sentence = (one: FindingReport): string => foundAnswer(one, [one]).sentence;
const engine = (probability: number): SharedOrigin => ({
  part: 'engine',
  order: 1,
  label: 'engine 1×',
  probability,
  separatedBy: 'Drive in another gear.',
});

// A customer hears a diagnosis and a shop sells the part: a cause is named as the likeliest only where it clearly is.
describe('the answer in a sentence', () => {
  it('names the likeliest cause with its percent where it leads clearly', () => {
    const clear = finding([cause('Bent tube', 0.55), cause('Worn joint', 0.3)]);
    expect(sentence(clear)).toBe(
      'Driveshaft 1× at 42.7 Hz, three times what a person just feels. Most likely bent tube (55\u00a0%).',
    );
  });

  it.each([
    [0.21, 0.19],
    [0.35, 0.1],
    [0.5, 0.4],
  ])('says that the cause is open at %s against %s', (first, second) => {
    const text = sentence(finding([cause('Bent tube', first), cause('U-bolts loose', second)]));
    expect(text).toContain('The cause is not settled yet; likeliest are bent tube (');
    expect(text).toContain('and U-bolts loose (');
    expect(text).not.toContain('Most likely');
  });

  it('names no repair of one part where another is about as likely', () => {
    const causes = [cause('Bent tube', 0.9), cause('Worn joint', 0.05)];
    expect(sentence(finding(causes, [engine(0.35)]))).toMatch(
      /^Driveshaft 1× or engine 1× .* Tell the two apart first\.$/,
    );
    expect(sentence(finding(causes, [engine(0.2)]))).toContain('Most likely bent tube');
  });
});
