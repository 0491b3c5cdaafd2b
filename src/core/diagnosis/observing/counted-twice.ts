/**
 * Whether of two tones side by side, found on two histories, one is but what the other left on a wrong one: a line that
 * lingers on its way stands there nearly as high as on its own history. Two lines beat, and hold the power of both.
 */
import type { Peak } from '../../signal/peaks/peak.ts';
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { orderLevel } from '../../signal/speed/order-level.ts';
import { BLOCK_S } from '../../signal/speed/order-readings.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';

/** Of what the second tone would add to the blocks of the first, this share must be there. Judgment. */
const LEAST_SHARE = 0.5;

/** Power that a Hann window leaves of a tone so many bins beside, |x| < 2 (F. J. Harris, Proc. IEEE 66(1), 1978). */
const hannPower = (bins: number): number => {
  const x = Math.abs(bins);
  if (x < 1e-6) return 1;
  return Math.abs(x - 1) < 1e-6 ? 0.25 : (Math.sin(Math.PI * x) / (Math.PI * x * (1 - x * x))) ** 2;
};

/**
 * True where the blocks along the first tone's history hold no more than that one. Further apart than a bin of a block
 * they do not tell.
 */
export const isCountedTwice = (second: Peak, first: Peak, prepared: Prepared, history: SpeedTrack): boolean => {
  const bins = Math.abs(second.frequencyHz - first.frequencyHz) * BLOCK_S;
  if (bins > 1) return false;
  const level = orderLevel(prepared, first.frequencyHz, history);
  if (!level) return false;
  const more = level.power - first.amplitudeMps2 ** 2;
  return more < LEAST_SHARE * hannPower(bins) * second.amplitudeMps2 ** 2;
};
