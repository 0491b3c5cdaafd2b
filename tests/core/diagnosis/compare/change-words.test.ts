import { describe, expect, it } from 'vitest';
import { decibelText, intervalText, timesChangeText } from '../../../../src/core/diagnosis/compare/change-words.ts';

describe('a change of level in words', () => {
  it('is told as a ratio: 20 dB are ten times, 6.02 dB twice (20 log of the ratio of amplitudes)', () => {
    expect(timesChangeText({ changeDb: -20, lowDb: -22, highDb: -18 })).toBe('ten times weaker');
    expect(timesChangeText({ changeDb: 6.02, lowDb: 5, highDb: 7 })).toBe('twice as strong');
    expect(timesChangeText({ changeDb: -0.2, lowDb: -1, highDb: 1 })).toBe('the same');
    expect(timesChangeText({ changeDb: -6.02, lowDb: -7, highDb: -5 })).toBe('half as strong');
  });

  it('is a bound where the noise hides one side, and nothing where it hides both', () => {
    expect(timesChangeText({ changeDb: -20, lowDb: null, highDb: -14.2 })).toBe('at least five times weaker');
    expect(timesChangeText({ changeDb: 3, lowDb: 12, highDb: null })).toBe('at least four times as strong');
    expect(timesChangeText({ changeDb: 0, lowDb: null, highDb: null })).toBe('');
  });

  // An end on the other side of 'no change' claims none: it says how much more, or less, it may be at most.
  it.each([
    [null, 6.02, 'at most twice as strong'],
    [null, -6.02, 'at least twice as weak'],
    [null, 0.1, 'no stronger'],
    [-14.2, null, 'at most five times weaker'],
    [-0.1, null, 'no weaker'],
  ])('states no more than its interval from %s to %s', (lowDb, highDb, text) =>
    expect(timesChangeText({ changeDb: 0, lowDb, highDb })).toBe(text),
  );

  it('has one rounding in decibels', () => {
    expect([-30.5, -9.4, 0, 1.23].map(decibelText)).toEqual(['−31 dB', '−9.4 dB', '0.0 dB', '+1.2 dB']);
    expect(intervalText({ changeDb: -30.5, lowDb: -32.2, highDb: -28.7 })).toBe('−32 dB to −29 dB');
    expect(intervalText({ changeDb: -20, lowDb: null, highDb: -14.2 })).toBe('−14 dB or less');
  });
});
