/** The peaks of a recording made even by a track, and how far up they are looked for. */
import { findPeaks, HALF_RATE_SHARE, HIGHEST_SHAKE_HZ } from '../../signal/peaks/detect.ts';
import type { Peak } from '../../signal/peaks/peak.ts';
import { STEADY, type SpeedTrack } from '../../signal/speed/equal-angle.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';

/** More noise peaks are let in than a plain list would: the lines they fall on decide. */
export const FALSE_ALARM = 0.3;
/** Fastest over slowest of a speed that swept, and of one that swept far. */
const SWEPT = 1.3;
const SWEPT_FAR = 1.8;
/** There no order is broader than this share of its frequency; what keeps to the clock is spread over far more. */
const SWEPT_WIDTH = 0.03;
/** What stands this far over the floor is no chance. */
const HIGH_DB = 15;
/** Nearer than this, in widths, two peaks are one. */
const NEAR_WIDTHS = 2;

const standsHigh = ({ overFloorDb }: Peak): boolean => overFloorDb >= HIGH_DB;

/**
 * Highest frequency (at the mean speed) to which what moves with a track is looked for: where the vehicle was fastest,
 * what is above it was above half the rate.
 */
const highestOn = ({ relative }: SpeedTrack, samplingRateHz: number): number => {
  const fastest = relative.reduce((most, r) => Math.max(most, r), 1);
  return Math.min(HIGHEST_SHAKE_HZ, (HALF_RATE_SHARE * samplingRateHz) / 2 / fastest);
};

/** Highest frequency to which lines of turning parts are looked for, as they stand at the mean speed, Hz. */
export const highestSearchedHz = (tracks: readonly SpeedTrack[], samplingRateHz: number): number =>
  Math.min(highestOn(STEADY, samplingRateHz), ...tracks.map((track) => highestOn(track, samplingRateHz)));

/** Fastest over slowest. */
const spanOf = ({ relative }: SpeedTrack): number =>
  relative.reduce((most, r) => Math.max(most, r), 1) / relative.reduce((least, r) => Math.min(least, r), 1);

/** True of a speed that changed so far that what keeps to the clock is spread over many bins along the track. */
export const hasSwept = (track: SpeedTrack): boolean => spanOf(track) > SWEPT;

const isNear = (one: Peak, other: Peak): boolean =>
  Math.abs(one.frequencyHz - other.frequencyHz) < NEAR_WIDTHS * Math.max(one.widthHz, other.widthHz);

/** @param samplingRateHz of the recording; the even one has more */
export const peaksOn = (even: Prepared, track: SpeedTrack, samplingRateHz: number): readonly Peak[] => {
  const options = { falseAlarm: FALSE_ALARM, highestHz: highestOn(track, samplingRateHz) };
  const peaks = findPeaks(even, options);
  if (spanOf(track) < SWEPT_FAR) return peaks;
  // An order that swept through resonances is as broad as one; but one that keeps to the clock is a far broader hump here.
  const orders = findPeaks(even, { ...options, resonances: false }).filter(
    (peak) =>
      standsHigh(peak) && peak.widthHz < SWEPT_WIDTH * peak.frequencyHz && !peaks.some((one) => isNear(peak, one)),
  );
  return [...peaks, ...orders];
};
