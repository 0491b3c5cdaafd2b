/** What an inclinometer shows, in whatever way it was held, turned into one slope: positive = down to the rear. */
import type { Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import { degFromRad, radFromDeg } from '../../units.ts';

export interface InclinometerReading {
  /** As shown. Its sign counts only where `lowEnd` is absent. */
  readonly shownDeg: number;
  /** Which end of the part is lower, by eye; the plainest way to give the sign. */
  readonly lowEnd?: 'front' | 'rear';
  /** Signed instruments: the end that is lower when the display is positive. Rear where absent. */
  readonly positiveMeansLow?: 'front' | 'rear';
  /** 'along' the shaft (default), or 'across': held against a face square to it, such as a flange. */
  readonly held?: 'along' | 'across';
}

/** No part of a driveline lies steeper than this: a greater reading was taken on an upright face of it. */
const UPRIGHT_FROM_DEG = 45;

/** True for a reading that can only have been taken on a face square to the shaft, such as a flange. */
export const isUpright = (shownDeg: number): boolean => Math.abs(shownDeg) > UPRIGHT_FROM_DEG;

/**
 * Slope of a part, degrees, positive where its rear end is lower.
 * @param reference reading on the surface everything is measured from (frame rail, floor); level where absent.
 *   Differences between parts, which is what joints see, do not depend on it.
 */
export const slopeOfReading = (
  reading: InclinometerReading,
  reference: InclinometerReading = { shownDeg: 0 },
): Result<number> => {
  const own = signedSlope(reading);
  if (!own.ok) return own;
  const zero = signedSlope(reference);
  return zero.ok ? success(own.value - zero.value) : zero;
};

/** As an instrument shows it, with a true minus. */
const figure = (deg: number): string => String(Number(deg.toFixed(2))).replace('-', '−');

const signedSlope = (reading: InclinometerReading): Result<number> => {
  const { shownDeg, lowEnd, positiveMeansLow = 'rear', held = 'along' } = reading;
  if (!Number.isFinite(shownDeg) || Math.abs(shownDeg) > 90) {
    return failure({
      code: 'slope-out-of-range',
      message: `An inclinometer reading of ${figure(shownDeg)}° is not between −90° and 90°.`,
      remedy: 'Read the instrument again and enter what it shows, in degrees.',
    });
  }
  // A face square to the shaft stands upright where the shaft lies level: what is missing to 90° is the slope.
  const turned = held === 'across' && isUpright(shownDeg);
  const sizeDeg = turned ? 90 - Math.abs(shownDeg) : Math.abs(shownDeg);
  if (lowEnd !== undefined) return success(lowEnd === 'rear' ? sizeDeg : -sizeDeg);
  if (turned) {
    return failure({
      code: 'slope-sign-missing',
      message: `A reading of ${figure(shownDeg)}° on an upright face does not tell which end of the shaft is lower.`,
      remedy: 'Say which end is lower, the front or the rear.',
    });
  }
  return success(positiveMeansLow === 'rear' ? shownDeg : -shownDeg);
};

/**
 * Plan angle of a shaft piece, degrees, positive where its rear end lies to the right.
 * @param frontOffsetMm sideways distance of the front joint's centre from any straight line along the vehicle, right +
 * @param rearOffsetMm the same at the rear joint
 * @param lengthMm joint centre to joint centre along the shaft, at this slope
 */
export const planOfOffsets = (
  frontOffsetMm: number,
  rearOffsetMm: number,
  lengthMm: number,
  slopeDeg = 0,
): Result<number> => {
  const levelLengthMm = lengthMm * Math.cos(radFromDeg(slopeDeg));
  const sine = (rearOffsetMm - frontOffsetMm) / levelLengthMm;
  if (!(lengthMm > 0) || !(Math.abs(sine) < 1)) {
    return failure({
      code: 'plan-offset-too-large',
      message: `Sideways offsets of ${frontOffsetMm} mm and ${rearOffsetMm} mm do not fit a shaft ${lengthMm} mm long.`,
      remedy: 'Measure both offsets from the same line, and the length from joint center to joint center.',
    });
  }
  return success(degFromRad(Math.asin(sine)));
};
