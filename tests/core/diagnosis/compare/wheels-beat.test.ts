import { describe, expect, it } from 'vitest';
import { beatSdDb } from '../../../../src/core/diagnosis/compare/wheels-beat.ts';
import type { SeenLevel } from '../../../../src/core/diagnosis/compare/change.ts';

const at = (amplitude: number, seen = true): SeenLevel =>
  ({ level: { power: amplitude ** 2 }, seen }) as unknown as SeenLevel;

describe('the beat of four wheels', () => {
  it('matters less the stronger the one wheel is: by hand, 0.45·8.686/√2·(√¾·0.008/A) dB a run', () => {
    // A = 0.1: 0.1915 dB a run, of two alike √2 times that.
    expect(beatSdDb('tire', 0.008, [at(0.1), at(0.1)])).toBeCloseTo(0.2708, 3);
    expect(beatSdDb('tire', 0.008, [at(0.4), at(0.4)])).toBeCloseTo(0.2708 / 4, 3);
    expect(beatSdDb('tire', 0.008, [at(0.1), at(1e-6, false)])).toBeCloseTo(0.2708, 3);
  });

  it('is bounded where the wheel is as weak as the others, and is none of what is single', () => {
    expect(beatSdDb('tire', 0.008, [at(0.001), at(0.001)])).toBeCloseTo(0.45 * 8.686, 2);
    expect(beatSdDb('driveshaft', 0.008, [at(0.1), at(0.1)])).toBe(0);
  });
});
