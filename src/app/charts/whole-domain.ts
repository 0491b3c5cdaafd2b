/** Which stretch of frequency a picture has, and which part of it to show first. */
import type { RunPicture } from '../../core/report/analysis.ts';
import type { PeakReport } from '../../core/report/report.ts';
import type { Domain } from './viewport.ts';

/** The first look goes no higher than this, Hz: above it a person hears rather than feels. */
const FIRST_LOOK_HZ = 240;
const LEAST_LOOK_HZ = 40;

/** From zero to half the sampling rate. */
export function wholeDomain({ spectrum }: RunPicture): Domain {
  return [0, Math.max(spectrum.stepHz, (spectrum.amplitudeMps2.length - 1) * spectrum.stepHz)];
}

/** The stretch that holds the peaks and the lower orders of each part. */
export function homeDomain(picture: RunPicture, peaks: readonly PeakReport[]): Domain {
  const [from, top] = wholeDomain(picture);
  const lineHz = picture.lines
    .filter(({ visibility, order, role }) => visibility === 'below-half-rate' && (order <= 2 || role === 'firing'))
    .map((line) => line.frequencyHz);
  const wanted = Math.max(LEAST_LOOK_HZ, ...peaks.map((peak) => peak.frequencyHz), ...lineHz) * 1.08;
  return [from, Math.min(top, wanted, FIRST_LOOK_HZ)];
}
