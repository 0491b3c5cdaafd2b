import { describe, expect, it } from 'vitest';
import { feltLevel, weightingHorizontal, weightingVertical } from '../../../src/core/signal/felt.ts';

/**
 * ISO 2631-1:1997, Table 3 (×1000), as transcribed in a public source: third octaves at nominal frequencies. The printed
 * value of Wd at 10 Hz, 212, does not fit its own formula (201.7) and is left out.
 */
const TABLE: readonly [hz: number, wk: number, wd: number | null][] = [
  [0.5, 418, 853],
  [0.63, 459, 944],
  [0.8, 477, 992],
  [1, 482, 1011],
  [1.25, 484, 1008],
  [1.6, 494, 968],
  [2, 531, 890],
  [2.5, 631, 776],
  [3.15, 804, 642],
  [4, 967, 512],
  [5, 1039, 409],
  [6.3, 1054, 323],
  [8, 1036, 253],
  [10, 988, null],
  [12.5, 902, 161],
  [16, 768, 125],
  [20, 636, 100],
  [25, 513, 80],
  [31.5, 405, 63.2],
  [40, 314, 49.4],
  [50, 246, 38.8],
  [63, 186, 29.5],
  [80, 132, 21.1],
];

/** Transfer functions of Annex A by complex numbers written out, independent of the program's products of moduli. */
function annexA(f: number, f34: number, step: boolean): number {
  type C = readonly [number, number];
  const times = (a: C, b: C): C => [a[0] * b[0] - a[1] * b[1], a[0] * b[1] + a[1] * b[0]];
  const over = (a: C, b: C): C => {
    const d = b[0] ** 2 + b[1] ** 2;
    return [(a[0] * b[0] + a[1] * b[1]) / d, (a[1] * b[0] - a[0] * b[1]) / d];
  };
  const s: C = [0, f];
  const s2 = times(s, s);
  const quadratic = (f0: number, q: number): C => [f0 * f0 + s2[0], (s[1] * f0) / q];
  let h = over(s2, quadratic(0.4, Math.SQRT1_2));
  h = times(h, over([1e4, 0], quadratic(100, Math.SQRT1_2)));
  h = times(h, over([f34 * f34, f * f34], quadratic(f34, 0.63)));
  if (step) h = times(h, over(quadratic(2.37, 0.91), quadratic(3.35, 0.91)));
  return Math.hypot(...h);
}

describe('what a seated person feels (ISO 2631-1:1997)', () => {
  it.each(TABLE)('%f Hz: Wk %f, Wd %f thousandths', (hz, wk, wd) => {
    expect(Math.abs(1000 * weightingVertical(hz) - wk)).toBeLessThan(0.75);
    if (wd !== null) expect(Math.abs(1000 * weightingHorizontal(hz) - wd)).toBeLessThan(wd >= 100 ? 0.55 : 0.06);
  });

  it('follows the transfer functions of Annex A from 0.1 to 400 Hz', () => {
    for (let f = 0.1; f < 400; f *= 1.3) {
      expect(weightingVertical(f) / annexA(f, 12.5, true)).toBeCloseTo(1, 10);
      expect(weightingHorizontal(f) / annexA(f, 2, false)).toBeCloseTo(1, 10);
    }
    expect(weightingVertical(0)).toBe(0);
    expect(weightingHorizontal(-3)).toBe(0);
  });

  it('points worked by hand: 14.4128 Hz and 53.7599 Hz', () => {
    expect(weightingVertical(14.4128)).toBeCloseTo(0.828724, 5);
    expect(weightingHorizontal(14.4128)).toBeCloseTo(0.139344, 5);
    expect(weightingVertical(53.7599)).toBeCloseTo(0.22603, 5);
    expect(weightingHorizontal(53.7599)).toBeCloseTo(0.035752, 5);
  });

  // Annex C: threshold of perception about 0.015 m/s² peak (figure from memory).
  it('felt level 1 is a weighted peak of 0.015 m/s²; directions join by root-sum-square', () => {
    expect(feltLevel(8, 0.015 / weightingVertical(8), 1)).toBeCloseTo(1, 12);
    expect(feltLevel(8, 0.015 / weightingHorizontal(8), 0)).toBeCloseTo(1, 12);
    // 0.2 m/s² up and 0.1 across at 14.4128 Hz: 0.1657448 and 0.0139344, together 0.1663295.
    const amplitude = Math.hypot(0.2, 0.1);
    expect(0.015 * feltLevel(14.4128, amplitude, 0.04 / 0.05)).toBeCloseTo(0.1663295, 6);
  });

  it('an unknown direction is taken as vertical, which weighs more', () => {
    expect(feltLevel(14, 0.3, null)).toBe(feltLevel(14, 0.3, 1));
    for (let f = 3; f < 100; f += 5) expect(feltLevel(f, 1, null)).toBeGreaterThan(feltLevel(f, 1, 0.3));
  });
});
