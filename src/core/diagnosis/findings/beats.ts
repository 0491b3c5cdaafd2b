/** Whether a finding's level pulsates slowly: a second tone stands so near to it that the two beat. */
import { besideLine, type BesideLine } from '../../signal/peaks/beside-line.ts';
import { resampleToEqualAngle, STEADY } from '../../signal/speed/equal-angle.ts';
import { median } from '../../signal/numeric/statistics.ts';
import type { Finding } from './finding.ts';
import { toneHistory } from './tone-history.ts';

/** Two wheels, two fans, a pulley and its belt stand no further apart than this, relative. Judgment. */
const NEAR = 0.015;
/** The weaker one makes the level swing by this share at least. Judgment. */
const LEAST_SWING = 0.25;
/** Nearer than this, in bins of the whole recording, it is the line's own main lobe (Hann: two bins to each side). */
const OWN_BINS = 3;
/** A second tone is this much above what lies about it. */
const OVER_NOISE = 4;
const NOISE_BINS = 40;
/** Speed that still wanders puts a like tone on both sides; a second wheel stands on one. */
const LIKE_MIRROR = 0.6;

/**
 * Frequencies of the tones that beat with the finding's, Hz; read in the spectrum of the whole recording, evened by the
 * speed's history.
 */
export const beatingWith = (finding: Finding): readonly number[] => {
  const { frequencyHz } = finding.match.tone.peak;
  const { prepared } = finding.inference.run;
  const history = toneHistory(finding.inference, finding.chosen, finding.trueHz, frequencyHz);
  const even = history === STEADY ? prepared : resampleToEqualAngle(prepared, history);
  const beside = besideLine(even, frequencyHz, NEAR * frequencyHz, OWN_BINS + NOISE_BINS);
  return beside ? beatingIn(beside, frequencyHz) : [];
};

/** Frequencies of the tones, Hz, that beat with the one at `frequencyHz` in the middle of its surroundings. */
export const beatingIn = ({ amplitudeMps2, binHz, centreHz }: BesideLine, frequencyHz: number): readonly number[] => {
  const reach = Math.floor((NEAR * frequencyHz) / binHz);
  const middle = (amplitudeMps2.length - 1) / 2;
  const at = (bin: number): number => amplitudeMps2[bin] ?? 0;
  let top = middle;
  for (let bin = middle - OWN_BINS; bin <= middle + OWN_BINS; bin++) if (at(bin) > at(top)) top = bin;
  const noise = median(Array.from({ length: 2 * NOISE_BINS + 1 }, (_, i) => at(top + i - NOISE_BINS)));
  const least = Math.max(LEAST_SWING * at(top), OVER_NOISE * noise);
  const beating: number[] = [];
  for (let bin = top - reach; bin <= top + reach; bin++) {
    if (Math.abs(bin - top) < OWN_BINS || at(bin) < least) continue;
    if (at(bin) <= at(bin - 1) || at(bin) < at(bin + 1)) continue;
    if (at(2 * top - bin) < LIKE_MIRROR * at(bin)) beating.push(centreHz + (bin - middle) * binHz);
  }
  return beating;
};
