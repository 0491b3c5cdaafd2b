import { describe, expect, it } from 'vitest';
import { apart } from '../../../../src/core/signal/speed/find-ramp.ts';

describe('multiples that count as lines of their own', () => {
  it('are those 2 % off the last one kept, not off one that was dropped', () => {
    expect(apart([1.03, 1, 1.015])).toEqual([1, 1.03]);
    expect(apart([2, 2, 2.1])).toEqual([2, 2.1]);
  });
});
