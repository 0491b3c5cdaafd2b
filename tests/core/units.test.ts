import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import * as unit from '../../src/core/units.ts';

describe('conversions are the exact factors of the international definitions', () => {
  test.each([
    ['60 mph', unit.mpsFromMph(60), 26.8224],
    ['100 km/h', unit.mpsFromKmh(100), 27.77777777777778],
    ['1 knot', unit.mpsFromKnots(1), 1852 / 3600],
    ['10 ft/s', unit.mpsFromFps(10), 3.048],
    ['1 inch in mm', unit.mmFromInch(1), 25.4],
    ['1 inch in m', unit.metreFromInch(1), 0.0254],
    ['1 mile in m', unit.metreFromMile(1), 1609.344],
    ['1 foot in m', unit.metreFromFoot(1), 0.3048],
    ['2 thou in mm', unit.mmFromThou(2), 0.0508],
    ['1 mm in m', unit.metreFromMm(1), 0.001],
    ['1 m in mm', unit.mmFromMetre(1), 1000],
    ['1 pound in kg', unit.kgFromPound(1), 0.45359237],
    ['1 ounce in g', unit.gramFromOunce(1), 28.349523125],
    ['16 ounces are 1 pound', unit.gramFromOunce(16) / 1000, unit.kgFromPound(1)],
    // NIST SP 811 (2008), appendix B.8.
    ['1 oz·in in g·mm', unit.gmmFromOzIn(1), 720.0778874],
    ['1 lbf·ft in N·m', unit.nmFromLbfFt(1), 1.3558179483],
    ['1 g in m/s²', unit.mps2FromG(1), 9.80665],
    ['1850 rpm in Hz', unit.hzFromRpm(1850), 30.833333333333332],
    ['3000 rpm in rad/s', unit.radPerSFromRpm(3000), 314.1592653589793],
    ['180° in rad', unit.radFromDeg(180), Math.PI],
  ])('%s', (_, found, expected) => {
    expect(found).toBeCloseTo(expected, 7);
  });

  test('a sine of 0.5 m/s² moves at 5.684105 mm/s peak at 14 Hz and 1.473657 mm/s at 54 Hz', () => {
    expect(unit.velocityMmpsOfSine(0.5, 14)).toBeCloseTo(5.684105, 6);
    expect(unit.velocityMmpsOfSine(0.5, 54)).toBeCloseTo(1.473657, 6);
  });

  test('twice the amplitude is 6.0206 dB', () => {
    expect(unit.dbFromAmplitudeRatio(2)).toBeCloseTo(6.0206, 4);
    expect(unit.dbFromAmplitudeRatio(0.1)).toBeCloseTo(-20, 12);
  });

  test.each([
    ['mph', unit.mpsFromMph, unit.mphFromMps],
    ['km/h', unit.mpsFromKmh, unit.kmhFromMps],
    ['rpm', unit.hzFromRpm, unit.rpmFromHz],
    ['g', unit.mps2FromG, unit.gFromMps2],
    ['inch', unit.mmFromInch, unit.inchFromMm],
    ['mm', unit.metreFromMm, unit.mmFromMetre],
    ['ounce', unit.gramFromOunce, unit.ounceFromGram],
    ['pound', unit.kgFromPound, unit.poundFromKg],
    ['oz·in', unit.gmmFromOzIn, unit.ozInFromGmm],
    ['lbf·ft', unit.nmFromLbfFt, unit.lbfFtFromNm],
    ['degree', unit.radFromDeg, unit.degFromRad],
  ] as const)('%s and back gives the number again', (_, there, back) => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (value) => {
        expect(back(there(value))).toBeCloseTo(value, 6);
      }),
    );
  });
});
