/**
 * Side tones of a strong one: a level that pulses puts a pair of weak tones beside it, equally far above and below
 * (amplitude modulation). They are no lines of their own, though an order may well be expected where one of them stands.
 */
import type { Peak } from '../../signal/peaks/peak.ts';

/** Of a level that pulses by a fifth at most; what pulses more is two tones that beat. Judgment. */
const MOST_SHARE = 0.1;
/** Gusts, bends and wheels that turn a little apart pulse no faster than this, Hz. Judgment. */
const FASTEST_HZ = 1;

type Place = Pick<Peak, 'frequencyHz' | 'amplitudeMps2' | 'limitWidthHz'>;

/** @param peaks all of the run */
export const isSideTone = (peak: Place, peaks: readonly Place[]): boolean =>
  peaks.some((strong) => {
    const apartHz = peak.frequencyHz - strong.frequencyHz;
    const isWeak = ({ amplitudeMps2 }: Place): boolean => amplitudeMps2 < MOST_SHARE * strong.amplitudeMps2;
    if (Math.abs(apartHz) > FASTEST_HZ || !isWeak(peak)) return false;
    const mirroredHz = strong.frequencyHz - apartHz;
    return peaks.some((other) => isWeak(other) && Math.abs(other.frequencyHz - mirroredHz) < strong.limitWidthHz);
  });
