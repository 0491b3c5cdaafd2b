import { describe, expect, it } from 'vitest';
import {
  accelerationRatio,
  angleOfRipple,
  drivenAngleDeg,
  peakAcceleration,
  rippleOfAngle,
  speedRatio,
} from '../../../../src/core/driveline/angles/single-joint.ts';
import { degFromRad, radFromDeg, radPerSFromRpm } from '../../../../src/core/units.ts';

/** Most the driven shaft runs ahead of the driving one, degrees: where tan φ₁ = √cos β and both run alike. */
const greatestLeadDeg = (angleDeg: number): number => {
  const atDeg = degFromRad(Math.atan(Math.sqrt(Math.cos(radFromDeg(angleDeg)))));
  return drivenAngleDeg(atDeg, angleDeg) - atDeg;
};

const peakAccelerationRadPerS2 = (angleDeg: number, rpm: number): number =>
  peakAcceleration(angleDeg).ratio * radPerSFromRpm(rpm) ** 2;

// Computed from the joint laws in Seherr-Thoss, Schmelz, Aucktor, "Universal Joints and Driveshafts", 2006, to more
// figures than handbooks print. Columns: angle °, highest, lowest, total swing %, lead °, peak acceleration/ω², at °,
// 2× speed ripple %.
const table = [
  [1, 1.000152, 0.999848, 0.0305, 0.00436, 0.0003046, 44.9913, 0.01523],
  [2, 1.00061, 0.999391, 0.1219, 0.01746, 0.0012187, 44.9651, 0.06094],
  [3, 1.001372, 0.99863, 0.2743, 0.03929, 0.0027428, 44.9214, 0.13714],
  [4, 1.002442, 0.997564, 0.4878, 0.06987, 0.0048779, 44.8603, 0.24389],
  [5, 1.00382, 0.996195, 0.7625, 0.10922, 0.0076253, 44.7816, 0.38126],
  [6, 1.005508, 0.994522, 1.0986, 0.15737, 0.0109867, 44.6853, 0.54932],
  [7, 1.00751, 0.992546, 1.4964, 0.21434, 0.0149645, 44.5714, 0.74817],
  [8, 1.009828, 0.990268, 1.956, 0.28016, 0.0195614, 44.4398, 0.97795],
  [9, 1.012465, 0.987688, 2.4777, 0.35489, 0.0247806, 44.2904, 1.23879],
  [10, 1.015427, 0.984808, 3.0619, 0.43856, 0.030626, 44.1232, 1.53085],
  [11, 1.018717, 0.981627, 3.709, 0.53123, 0.0371023, 43.9381, 1.85432],
  [12, 1.022341, 0.978148, 4.4193, 0.63295, 0.0442146, 43.7351, 2.20938],
  [13, 1.026304, 0.97437, 5.1934, 0.7438, 0.051969, 43.514, 2.59626],
  [14, 1.030614, 0.970296, 6.0318, 0.86383, 0.0603727, 43.2749, 3.01521],
  [15, 1.035276, 0.965926, 6.935, 0.99312, 0.0694336, 43.0176, 3.46648],
  [20, 1.064178, 0.939693, 12.4485, 1.78168, 0.1249656, 41.4587, 6.21824],
  [30, 1.154701, 0.866025, 28.8675, 4.11719, 0.2945711, 37.0215, 14.35935],
] as const;

/** Every printed figure to within half a unit of its last place. */
const printed = (value: number, figure: number, places: number): void =>
  expect(Math.abs(value - figure)).toBeLessThanOrEqual(0.5000001 * 10 ** -places);

describe('one cross joint', () => {
  it.each(table)('runs at %s° as the table of joint laws says', (...row) => {
    const [angle, highest, lowest, totalPercent, lead, acceleration, at, ripplePercent] = row;
    const [most, least] = [speedRatio(0, angle), speedRatio(90, angle)];
    printed(most, highest, 6);
    printed(least, lowest, 6);
    printed(100 * (most - least), totalPercent, 4);
    printed(greatestLeadDeg(angle), lead, 5);
    printed(peakAcceleration(angle).ratio, acceleration, 7);
    printed(peakAcceleration(angle).atDrivingAngleDeg, at, 4);
    printed(200 * rippleOfAngle(angle), ripplePercent, 5);
  });

  // As some tables print them, each way from even running, %: of the same source.
  it.each([
    [1, 0.0152, -0.0152],
    [2, 0.061, -0.0609],
    [3, 0.1372, -0.137],
    [4, 0.2442, -0.2436],
    [5, 0.382, -0.3805],
    [6, 0.5508, -0.5478],
    [7, 0.751, -0.7454],
    [8, 0.9828, -0.9732],
    [9, 1.2465, -1.2312],
    [10, 1.5427, -1.5192],
    [11, 1.8717, -1.8373],
    [12, 2.2341, -2.1852],
    [13, 2.6304, -2.563],
    [14, 3.0614, -2.9704],
    [15, 3.5276, -3.4074],
    [20, 6.4178, -6.0307],
    [30, 15.4701, -13.3975],
  ])('at %s° runs up to %s % faster and %s % slower, found by turning it slowly', (angle, faster, slower) => {
    const ratios = Array.from({ length: 721 }, (_, half) => speedRatio(half / 2, angle));
    printed(100 * (Math.max(...ratios) - 1), faster, 4);
    printed(100 * (Math.min(...ratios) - 1), slower, 4);
  });

  // Derived by differentiating tan φ₂ = tan φ₁ / cos β; driving angle, ratio, driven angle, acceleration/ω².
  it.each([
    [30, 1.00759478, 30.381255, -0.02692102],
    [45, 0.99988283, 45.438549, -0.03061168],
    [60, 0.99228804, 60.378348, -0.0261093],
  ])('at 10° and a driving angle of %s° has the ratio, driven angle and acceleration of the laws', (at, r, d, a) => {
    printed(speedRatio(at, 10), r, 8);
    printed(drivenAngleDeg(at, 10), d, 6);
    printed(accelerationRatio(at, 10), a, 8);
  });

  it('runs fastest with the driving fork in the plane of the shafts, slowest a quarter turn on', () => {
    expect(speedRatio(0, 12)).toBeCloseTo(1 / Math.cos(Math.PI / 15), 12);
    expect(speedRatio(180, 12)).toBeCloseTo(1 / Math.cos(Math.PI / 15), 12);
    expect(speedRatio(90, 12)).toBeCloseTo(Math.cos(Math.PI / 15), 12);
  });

  it('runs at 250 rev/min and 10° as the worked case of Baranyi (Design News, 1 Sept 1969) by these laws', () => {
    printed(greatestLeadDeg(10), 0.43856, 5);
    printed(250 * speedRatio(0, 10), 253.8567, 4);
    printed(250 * speedRatio(90, 10), 246.2019, 4);
    printed(peakAccelerationRadPerS2(10, 250), 20.99075, 5);
  });

  it.each([
    [1, 30.0661],
    [2, 120.2826],
    [3, 270.7051],
    [4, 481.4271],
    [5, 752.582],
    [6, 1084.3454],
  ])('at %s° and 3000 rev/min peaks at %s rad/s² (derived)', (angle, acceleration) => {
    printed(peakAccelerationRadPerS2(angle, 3000), acceleration, 4);
  });

  it('follows 3.3405038e-6·n²·β² at small angles (derived)', () => {
    expect(peakAccelerationRadPerS2(0.5, 3000) / (3.3405038e-6 * 3000 ** 2 * 0.5 ** 2)).toBeCloseTo(1, 4);
  });

  it.each([
    [1, 10942.4, 17301.5],
    [2, 5470.8, 8650.1],
    [3, 3646.7, 5766],
    [4, 2734.6, 4323.7],
    [5, 2187.1, 3458.2],
    [6, 1822.1, 2881],
    [8, 1365.5, 2159.1],
    [10, 1091.3, 1725.5],
  ])('at %s° reaches 400 rad/s² at %s and 1000 rad/s² at %s rev/min (derived)', (angle, at400, at1000) => {
    // Speeds are printed to 0.1 rev/min, so accelerations are good to a ten-thousandth.
    expect(Math.abs(peakAccelerationRadPerS2(angle, at400) / 400 - 1)).toBeLessThan(1e-4);
    expect(Math.abs(peakAccelerationRadPerS2(angle, at1000) / 1000 - 1)).toBeLessThan(1e-4);
  });

  it('has an angle error that is the sum of its harmonic series, by numbers all round', () => {
    for (const angle of [3, 15, 30]) {
      // q, q²/2, q³/3 … at 2×, 4×, 6× …
      const series = Array.from({ length: 12 }, (_, k) => rippleOfAngle(angle) ** (k + 1) / (k + 1));
      for (let at = 0; at < 360; at += 7) {
        const sum = series.reduce((s, a, k) => s + a * Math.sin((2 * (k + 1) * at * Math.PI) / 180), 0);
        expect(((drivenAngleDeg(at, angle) - at) * Math.PI) / 180).toBeCloseTo(sum, 11);
      }
    }
  });

  it('counts whole turns through, forwards and backwards', () => {
    expect(drivenAngleDeg(750, 10)).toBeCloseTo(720 + drivenAngleDeg(30, 10), 9);
    expect(drivenAngleDeg(360 * 500 + 30, 10)).toBeCloseTo(360 * 500 + drivenAngleDeg(30, 10), 6);
    expect(drivenAngleDeg(-330, 10)).toBeCloseTo(-360 + drivenAngleDeg(30, 10), 9);
  });

  it('does nothing at 0° and gives the joint angle back from its ripple number', () => {
    expect(peakAcceleration(0)).toEqual({ ratio: 0, atDrivingAngleDeg: 45 });
    for (const angle of [0, 0.001, 4, 30]) expect(angleOfRipple(rippleOfAngle(angle))).toBeCloseTo(angle, 12);
  });
});
