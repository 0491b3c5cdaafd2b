import { describe, expect, it } from 'vitest';
import { termsIn } from '../../src/app/help/terms-in.ts';

describe('words of the trade in a text', () => {
  it('are found in the order of the glossary, each once', () => {
    const text = 'Runout of the companion flange. Put the dial on the Companion Flange, then on the slip yoke.';
    expect(termsIn(text)).toEqual(['companion-flange', 'slip-yoke', 'runout']);
  });

  it('are whole words', () => {
    expect(termsIn('Cross the road with a cupboard across.')).toEqual(['cross']);
    expect(termsIn('Across the cupboard.')).toEqual([]);
  });

  it('are none in a text that everybody understands', () => {
    expect(termsIn('Look under the vehicle.')).toEqual([]);
  });
});
