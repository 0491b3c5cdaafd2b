import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import {
  NO_BREAK,
  accelerationText,
  decimalsFor,
  durationText,
  feltText,
  frequencyText,
  frequencyWithSdText,
  keptTogether,
  lengthText,
  percentText,
  rateText,
  rpmText,
  significant,
  speedText,
} from '../../../src/core/report/format.ts';
import { chanceText } from '../../../src/core/words.ts';

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('numbers as people read them', () => {
  it('rounds to significant digits without exponents', () => {
    expect(significant(0.012345, 2)).toBe('0.012');
    expect(significant(1234.5, 2)).toBe('1235');
    expect(significant(0, 3)).toBe('0');
    expect(significant(4.4e-19, 2)).toBe('0');
    expect(significant(Number.NaN, 3)).toBe('–');
  });

  // Rule of the Guide to the Expression of Uncertainty in Measurement (JCGM 100:2008, 7.2.6): at most two digits.
  it('gives decimals that show a standard uncertainty to one digit, two where it begins with 1', () => {
    expect(decimalsFor(0.2)).toBe(1);
    expect(decimalsFor(0.12)).toBe(2);
    expect(decimalsFor(0.034)).toBe(2);
    expect(decimalsFor(3)).toBe(0);
  });

  it('writes frequencies with their uncertainty to matching decimals', () => {
    expect(plain(frequencyWithSdText(84.163, 0.21))).toBe('84.2 ± 0.2 Hz');
    expect(plain(frequencyWithSdText(84.163, 0.0004))).toBe('84.16 ± 0.01 Hz');
    expect(plain(frequencyText(61.44))).toBe('61.4 Hz');
  });

  it('shows speed, length and acceleration in the units of the reader', () => {
    expect(plain(speedText(27.7168, 'us'))).toBe('62.0 mph');
    expect(plain(speedText(27.7778, 'metric'))).toBe('100.0 km/h');
    expect(plain(lengthText(0.3, 'us'))).toBe('0.012 in (0.30 mm)');
    expect(plain(lengthText(0.3, 'metric'))).toBe('0.30 mm');
    // 0.5 m/s² = 0.0509858 g (standard gravity, 3rd CGPM 1901)
    expect(plain(accelerationText(0.5))).toBe('0.50 m/s² (51 mg)');
    expect(plain(accelerationText(19.6))).toBe('20 m/s² (2.0 g)');
  });

  it('never claims certainty it does not have', () => {
    expect(plain(percentText(0.9999))).toBe('over 99 %');
    expect(plain(percentText(0.001))).toBe('under 1 %');
    expect(plain(percentText(0.54))).toBe('54 %');
    expect(chanceText(1)).toBe('99 in 100');
  });

  it('keeps short things short', () => {
    expect(plain(durationText(60))).toBe('60 s');
    expect(plain(durationText(600))).toBe('10 min');
    expect(plain(rateText(400.001))).toBe('400 Hz');
    expect(plain(rateText(104.28))).toBe('104.3 Hz');
    expect(plain(rpmText(1847))).toBe('1850 rpm');
    expect(feltText(9.04)).toBe('9.0');
    expect(feltText(0.034)).toBe('0.03');
  });

  it('shows any finite number without an exponent', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-9, max: 1e9, noNaN: true }), fc.integer({ min: 1, max: 4 }), (value, digits) => {
        const text = significant(value, digits);
        expect(text).not.toMatch(/e/);
        expect(Math.abs(Number(text) - value)).toBeLessThanOrEqual(
          0.51 * 10 ** (Math.floor(Math.log10(value)) - digits + 1) + 1e-12,
        );
      }),
    );
  });
});

it('a number is not parted from its unit, and no word is taken for one', () => {
  const kept = keptTogether(
    'Found at 66.6 Hz: −31 dB, 95 % of 0.5 m/s² at 41 mph (66 km/h). 55 in 100 of 3 mmm, 2 Hzs.',
  );
  expect(kept.replaceAll(NO_BREAK, '_')).toBe(
    'Found at 66.6_Hz: −31_dB, 95_% of 0.5_m/s² at 41_mph (66_km/h). 55 in 100 of 3 mmm, 2 Hzs.',
  );
});
