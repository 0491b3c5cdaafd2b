import { describe, expect, it } from 'vitest';
import { isSideTone } from '../../../../src/core/diagnosis/observing/side-tones.ts';

// (1 + m·cos 2πFt)·A·cos 2πft is A at f and m·A/2 at f − F and at f + F: amplitude modulation, any textbook on signals.
const tone = (frequencyHz: number, amplitudeMps2: number) => ({ frequencyHz, amplitudeMps2, limitWidthHz: 0.04 });
const pulsing = [tone(16.2, 0.26), tone(15.71, 0.007), tone(16.69, 0.008)];
const sides = (peaks: readonly ReturnType<typeof tone>[]): boolean[] => peaks.map((peak) => isSideTone(peak, peaks));

describe('side tones', () => {
  it('are the pair equally far to both sides of a strong tone', () => {
    expect(sides(pulsing)).toEqual([false, true, true]);
  });

  it('come in pairs: one alone, or two that are not mirrored, are lines', () => {
    expect(sides(pulsing.slice(0, 2))).toEqual([false, false]);
    expect(sides([...pulsing.slice(0, 2), tone(16.75, 0.008)])).toEqual([false, false, false]);
  });

  it('are weak, and near', () => {
    expect(sides([tone(16.2, 0.26), tone(15.71, 0.05), tone(16.69, 0.05)])).toEqual([false, false, false]);
    expect(sides([tone(16.2, 0.26), tone(14.8, 0.007), tone(17.6, 0.008)])).toEqual([false, false, false]);
  });
});
