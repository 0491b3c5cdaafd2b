/** Complex numbers as plain objects: phasors of vibration, weights and eccentricities, joint chains, transfer paths. */
import { degFromRad, radFromDeg } from './units.ts';

export interface Complex {
  readonly re: number;
  readonly im: number;
}

export const ZERO: Complex = { re: 0, im: 0 };

export const complex = (re: number, im = 0): Complex => ({ re, im });

export const polar = (size: number, angleDeg: number): Complex => ({
  re: size * Math.cos(radFromDeg(angleDeg)),
  im: size * Math.sin(radFromDeg(angleDeg)),
});

export const add = (a: Complex, b: Complex): Complex => ({ re: a.re + b.re, im: a.im + b.im });
export const subtract = (a: Complex, b: Complex): Complex => ({ re: a.re - b.re, im: a.im - b.im });
export const scale = (a: Complex, factor: number): Complex => ({ re: a.re * factor, im: a.im * factor });
export const conjugate = (a: Complex): Complex => ({ re: a.re, im: -a.im });
export const multiply = (a: Complex, b: Complex): Complex => ({
  re: a.re * b.re - a.im * b.im,
  im: a.re * b.im + a.im * b.re,
});
export const divide = (a: Complex, b: Complex): Complex => {
  const denominator = b.re * b.re + b.im * b.im;
  const { re, im } = multiply(a, conjugate(b));
  return { re: re / denominator, im: im / denominator };
};

export const size = (a: Complex): number => Math.hypot(a.re, a.im);

/** Angle in degrees, 0 ≤ angle < 360. */
export const angleDegOf = (a: Complex): number => wrapDeg(degFromRad(Math.atan2(a.im, a.re)));

/** The same direction as an angle from 0 to below 360 degrees. */
export const wrapDeg = (angleDeg: number): number => {
  const wrapped = angleDeg % 360;
  // The second step meets −1e-17, which would come out as 360.
  const positive = wrapped < 0 ? wrapped + 360 : wrapped;
  return positive >= 360 ? 0 : positive + 0;
};

/** How far apart two directions are, 0..180 degrees. */
export const angleBetweenDeg = (oneDeg: number, otherDeg: number): number => {
  const apart = wrapDeg(oneDeg - otherDeg);
  return Math.min(apart, 360 - apart);
};
