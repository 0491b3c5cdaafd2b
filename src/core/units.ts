/**
 * Quantities and the only conversions between their units.
 *
 * Inside the core every quantity is held in one unit, and every name says which: `frequencyHz`, `speedMps`,
 * `accelerationMps2`, `tubeOuterMm`, `angleDeg`. Conversions are named aFromB and stand here and nowhere else.
 * Factors are exact by definition (international yard and pound agreement 1959; ISO 80000-3; standard gravity,
 * 3rd CGPM 1901) unless a comment says otherwise.
 */

/** Standard gravity, m/s² (3rd CGPM, 1901; exact). */
export const STANDARD_GRAVITY_MPS2 = 9.80665;
/** Metres in one mile (exact). */
export const METRES_PER_MILE = 1609.344;
/** Millimetres in one inch (exact). */
export const MM_PER_INCH = 25.4;
/** Grams in one avoirdupois ounce (exact). */
const GRAMS_PER_OUNCE = 28.349523125;

export const mpsFromMph = (mph: number): number => mph * 0.44704;
export const mphFromMps = (mps: number): number => mps / 0.44704;
export const mpsFromKmh = (kmh: number): number => kmh / 3.6;
export const kmhFromMps = (mps: number): number => mps * 3.6;
export const mpsFromKnots = (knots: number): number => (knots * 1852) / 3600;
export const mpsFromFps = (fps: number): number => fps * 0.3048;

export const hzFromRpm = (rpm: number): number => rpm / 60;
export const rpmFromHz = (hz: number): number => hz * 60;
export const radPerSFromRpm = (rpm: number): number => (rpm * 2 * Math.PI) / 60;

export const mps2FromG = (g: number): number => g * STANDARD_GRAVITY_MPS2;
export const gFromMps2 = (mps2: number): number => mps2 / STANDARD_GRAVITY_MPS2;

export const mmFromInch = (inch: number): number => inch * MM_PER_INCH;
export const inchFromMm = (mm: number): number => mm / MM_PER_INCH;
export const metreFromMm = (mm: number): number => mm / 1000;
export const mmFromMetre = (metre: number): number => metre * 1000;
/** One thou (or mil) is a thousandth of an inch. */
export const mmFromThou = (thou: number): number => (thou * MM_PER_INCH) / 1000;
export const metreFromInch = (inch: number): number => (inch * MM_PER_INCH) / 1000;
export const metreFromFoot = (foot: number): number => foot * 0.3048;
export const metreFromMile = (mile: number): number => mile * METRES_PER_MILE;

export const gramFromOunce = (ounce: number): number => ounce * GRAMS_PER_OUNCE;
export const ounceFromGram = (gram: number): number => gram / GRAMS_PER_OUNCE;
export const kgFromPound = (pound: number): number => pound * 0.45359237;
export const poundFromKg = (kg: number): number => kg / 0.45359237;
/** 1 oz·in = 720.0778874 g·mm. */
export const gmmFromOzIn = (ozIn: number): number => ozIn * GRAMS_PER_OUNCE * MM_PER_INCH;
export const ozInFromGmm = (gmm: number): number => gmm / (GRAMS_PER_OUNCE * MM_PER_INCH);

/** 1 lbf·ft = 0.45359237 kg · 9.80665 m/s² · 0.3048 m, about 1.3558 N·m. */
export const nmFromLbfFt = (lbfFt: number): number => lbfFt * 0.45359237 * STANDARD_GRAVITY_MPS2 * 0.3048;
/** Pounds of force. */
export const lbfFromNewton = (newton: number): number => newton / (0.45359237 * STANDARD_GRAVITY_MPS2);
export const lbfFtFromNm = (nm: number): number => nm / (0.45359237 * STANDARD_GRAVITY_MPS2 * 0.3048);

export const radFromDeg = (deg: number): number => (deg * Math.PI) / 180;
export const degFromRad = (rad: number): number => (rad * 180) / Math.PI;

/** Peak velocity in mm/s of a sine of the given peak acceleration: V = A/(2πf). */
export const velocityMmpsOfSine = (accelerationMps2: number, frequencyHz: number): number =>
  (1000 * accelerationMps2) / (2 * Math.PI * frequencyHz);

/** Level ratio in decibels of two amplitudes. */
export const dbFromAmplitudeRatio = (ratio: number): number => 20 * Math.log10(ratio);
