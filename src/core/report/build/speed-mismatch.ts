/** What to check where the recording's orders do not fit the stated speed and tire. */
import type { Note } from '../../note.ts';
import { inchFromMm } from '../../units.ts';
import type { SpeedReport } from '../report.ts';

/** Off by more than so many standard deviations of what speed source and tire size allow, and by more than a share. */
const MOST_SDS = 2;
const LEAST_SHARE = 0.02;

const metreText = (metre: number): string => `${metre.toFixed(2)} m (${inchFromMm(1000 * metre).toFixed(1)} in)`;

/**
 * @param statedSd relative standard uncertainty of the wheels' speed as stated, all its sources together
 * @param axleRatio as given; null where there is none
 * @returns null where speed and tire fit, or nothing was stated
 */
export const speedMismatch = (speed: SpeedReport, statedSd: number, axleRatio: number | null): Note | null => {
  const { scale, scaleSd, impliedCircumferenceM: implied, circumferenceM } = speed;
  const off = Math.abs(scale - 1);
  if (implied === null || circumferenceM === null) return null;
  if (off < LEAST_SHARE || off < MOST_SDS * Math.hypot(statedSd, scaleSd)) return null;
  const sense = scale > 1 ? 'faster' : 'slower';
  return {
    code: 'speed-does-not-fit',
    severity: 'warning',
    text:
      `By its orders the wheels turned ${(100 * off).toFixed(0)} % ${sense} than the speed and the tire make them. Check ` +
      'the speed and the tire size: they would fit with a rolling circumference of ' +
      `${metreText(implied)} instead of ${metreText(circumferenceM)}.` +
      (axleRatio === null
        ? ''
        : ' Check the axle ratio too: driveshaft and engine would fit with ' +
          `${(axleRatio * scale).toFixed(2)} instead of ${axleRatio.toFixed(2)}.`),
  };
};
