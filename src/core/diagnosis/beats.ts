/** Whether a finding's level pulsates slowly: a second tone stands so near to it that the two beat. */
import { withoutIdleRate } from '../signal/decimate.ts';
import { resampleToEqualAngle } from '../signal/equal-angle.ts';
import { median } from '../signal/statistics.ts';
import { welchAmplitude } from '../signal/welch.ts';
import type { Finding } from './finding.ts';

/** Two wheels, two fans, a pulley and its belt stand no further apart than this, relative. Judgement. */
const NEAR = 0.015;
/** The weaker one makes the level swing by this share at least. Judgement. */
const LEAST_SWING = 0.25;
/** Nearer than this, in bins of the whole recording, it is the line's own main lobe (Hann: two bins to each side). */
const OWN_BINS = 3;
/** A second tone is this much above what lies about it. */
const OVER_NOISE = 4;
const NOISE_BINS = 40;
/** Of the line's frequency: up to here the spectrum is needed, its surroundings for the noise included. */
const NEEDED = 1.5;
/** Speed that still wanders puts a like tone on both sides; a second wheel stands on one. */
const LIKE_MIRROR = 0.6;

/**
 * Frequencies of the tones that beat with the finding's, Hz; read in the spectrum of the whole recording, evened by the
 * speed's history.
 */
export const beatingWith = ({ match, inference }: Finding): readonly number[] => {
  const { frequencyHz } = match.tone.peak;
  const { prepared, histories, speedTrack } = inference.run;
  const evened = histories.count > 0 ? resampleToEqualAngle(prepared, speedTrack) : prepared;
  const even = withoutIdleRate(evened, NEEDED * frequencyHz);
  const segmentLength = Math.max(...even.pieces.map(({ axes }) => axes[0]?.length ?? 0));
  const { amplitudeMps2, stepHz } = welchAmplitude(even, { segmentLength });
  const at = (bin: number): number => amplitudeMps2[bin] ?? 0;
  const centre = Math.round(frequencyHz / stepHz);
  const reach = Math.floor((NEAR * frequencyHz) / stepHz);
  let top = centre;
  for (let bin = centre - OWN_BINS; bin <= centre + OWN_BINS; bin++) if (at(bin) > at(top)) top = bin;
  const noise = median(Array.from({ length: 2 * NOISE_BINS + 1 }, (_, i) => at(top + i - NOISE_BINS)));
  const least = Math.max(LEAST_SWING * at(top), OVER_NOISE * noise);
  const beating: number[] = [];
  for (let bin = top - reach; bin <= top + reach; bin++) {
    if (Math.abs(bin - top) < OWN_BINS || at(bin) < least) continue;
    if (at(bin) <= at(bin - 1) || at(bin) < at(bin + 1)) continue;
    if (at(2 * top - bin) < LIKE_MIRROR * at(bin)) beating.push(bin * stepHz);
  }
  return beating;
};
