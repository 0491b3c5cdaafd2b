/** How far a stated road speed can be trusted, by where it was read from. */
import { kmhFromMps, mphFromMps, mpsFromKmh, mpsFromMph } from '../units.ts';
import { positive } from './ratios.ts';
import type { LoggedCondition, SpeedSource } from './vehicle.ts';

/** What is believed of the true road speed over the stated one. */
export interface SpeedPrior {
  /** Expected true speed over stated speed; below 1 for a dial, which reads high. */
  readonly centreRelative: number;
  /** Standard deviation of true over stated. */
  readonly sdRelative: number;
  /** Beyond these the stated speed itself must be wrong. */
  readonly lower?: number;
  readonly upper?: number;
  readonly because: string;
}

/** A driver holds a steady speed to about this, relative (judgment). */
const HOLD_SD = 0.003;
/** GPS Doppler speed, one sigma from 0.2 m/s per axis at 95 % (NAVSTAR GPS User Equipment Introduction §3.3). */
const GPS_SD_MPS = 0.2 / 1.96;
/** Diagnostic socket: whole km/h (SAE J1979, PID for vehicle speed), rounded or cut off (common practice). */
const OBD_STEP_MPS = mpsFromKmh(1);
/** The socket's speed is computed with the factory tire; about one percent in practice (no source). */
const OBD_SD = 0.01;
/** A track of unknown make in the recording (judgment, between GPS and the diagnostic socket). */
const LOGGED_SD = 0.005;
/** Nobody said where the speed was read: wide enough for a dial, centred as stated (judgment). */
const UNKNOWN_SD = 0.03;
/**
 * UN R39 §5.3: 0 ≤ shown − true ≤ 0.1·true + 4 km/h. Within that window most dials use the quarter next to the truth;
 * the share used is taken as Beta(1, 3), mean 1/4 and sd 0.194 (judgment).
 */
const DIAL_SHARE_MEAN = 0.25;
const DIAL_SHARE_SD = Math.sqrt(3 / 80);
/** Where UN R39 does not hold a dial may also read low; up to 4 % (common practice, no source). */
const DIAL_LOW = 0.04;

const isMultiple = (value: number, step: number): boolean => Math.abs(value - step * Math.round(value / step)) < 0.02;

/** Step to which a person read a dial: a speed on a 5 mph or 10 km/h mark was read to that mark, else to 1 mph. */
export const readingStepMps = (mps: number): number => {
  if (isMultiple(mphFromMps(mps), 5)) return mpsFromMph(5);
  return isMultiple(kmhFromMps(mps), 10) ? mpsFromKmh(10) : mpsFromMph(1);
};

const uniformSd = (step: number): number => step / Math.sqrt(12);

/** Least true speed over shown speed by UN R39: (shown − 4 km/h)/1.1. */
export const leastTrueOverShown = (shownMps: number): number =>
  Math.max(0, (shownMps - mpsFromKmh(4)) / 1.1) / shownMps;

const dialPrior = (mps: number): SpeedPrior => {
  const least = leastTrueOverShown(mps);
  const step = readingStepMps(mps) / mps;
  return {
    centreRelative: 1 - DIAL_SHARE_MEAN * (1 - least),
    sdRelative: Math.hypot(DIAL_SHARE_SD * (1 - least), uniformSd(step), HOLD_SD),
    lower: Math.max(0.01, least - step / 2),
    upper: 1 + DIAL_LOW + step / 2,
    because: 'A speedometer may read high, never low, by up to a tenth and 4 km/h (UN R39).',
  };
};

const symmetric = (sdRelative: number, because: string): SpeedPrior => ({ centreRelative: 1, sdRelative, because });

const priorOf = (source: SpeedSource | undefined, mps: number, logSd: number): SpeedPrior => {
  switch (source) {
    case 'dial':
      return dialPrior(mps);
    case 'gps': {
      const readMps = uniformSd(mpsFromKmh(1));
      return symmetric(
        Math.hypot(GPS_SD_MPS, readMps, HOLD_SD * mps) / mps,
        'Satellite speed is good to about 0.1 m/s.',
      );
    }
    case 'obd':
      return symmetric(
        Math.hypot(uniformSd(OBD_STEP_MPS) / mps, OBD_SD, HOLD_SD),
        'The diagnostic socket gives whole km/h computed with the factory tire.',
      );
    case 'logged':
      return symmetric(Math.hypot(LOGGED_SD, logSd), 'Speed logged with the recording.');
    case undefined:
      return symmetric(
        Math.hypot(UNKNOWN_SD, uniformSd(readingStepMps(mps)) / mps),
        'Nobody said where the speed was read, so it may be several percent off.',
      );
  }
};

/**
 * What is believed of the true speed of a run before the recording is looked at, relative to the stated speed.
 *
 * @returns null where no speed was stated (or the vehicle stood).
 */
export const speedPrior = (condition: LoggedCondition): SpeedPrior | null => {
  const mps = positive(condition.speedMps);
  return mps === null ? null : priorOf(condition.speedSource, mps, condition.speedLogSd ?? 0);
};
