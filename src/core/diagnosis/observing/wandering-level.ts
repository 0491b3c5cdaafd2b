/**
 * The level of a line whose own frequency wanders about its history: over the whole run its phase turns, so that it does
 * not add up, the less the higher it is; block by block it is as strong as it was.
 */
import { withNoiseUnder } from '../../signal/speed/noise-under-order.ts';
import { blockScatter, levelOf } from '../../signal/speed/order-level.ts';
import { BLOCK_S, orderReadings } from '../../signal/speed/order-readings.ts';
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import type { Peak } from '../../signal/peaks/peak.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';

/**
 * Wander over least width from which a line has lost 2 % or more, where the line stands clear over the floor; in a weaker
 * one that much is its phase's noise, but hardly so much as its least width. Judgment.
 */
const WANDERS_FROM = [
  { clearDb: 20, wander: 0.25 },
  { clearDb: 12, wander: 1 },
] as const;
/** Standard uncertainties, of noise alone, by which the blocks must hold more than the lines. */
const SURELY = 3;
/** How the level follows the speed, which hardly changes here: as unbalance does, or less or more. Judgment. */
const LAWS = [{ weight: 1, exponent: 2, exponentSd: 3 }];
/** Half width of a block's Hann main lobe, Hz: lines within it add up in a block. */
const LOBE_HZ = 2 / BLOCK_S;

/**
 * The peak with what the blocks hold beyond all lines there, where it is the strongest of these; the same peak elsewhere.
 * @param prepared in which the line stands but for its wander when moved back along the track
 * @param near all lines found so, itself too
 */
export const withWanderingLevel = (peak: Peak, near: readonly Peak[], prepared: Prepared, track: SpeedTrack): Peak => {
  // One that was read in slices wanders too far for its phases to be followed.
  const { frequencyHz, amplitudeMps2, wanderHz = Infinity, limitWidthHz, overFloorDb } = peak;
  const wanders = WANDERS_FROM.some(
    ({ clearDb, wander }) => overFloorDb >= clearDb && wanderHz >= wander * limitWidthHz,
  );
  if (!wanders) return peak;
  const sharing = near.filter((other) => Math.abs(other.frequencyHz - frequencyHz) < LOBE_HZ);
  if (sharing.some((other) => other.amplitudeMps2 > amplitudeMps2)) return peak;
  const readings = orderReadings(prepared, frequencyHz, track, BLOCK_S, true);
  if (!readings) return peak;
  // On a resonance that the road shakes the blocks hold more noise than is seen beside the line.
  const level = withNoiseUnder(levelOf(readings), LAWS);
  // Blocks overlap by half: so many stand alone.
  const powerSd = Math.hypot(Math.sqrt((2 * blockScatter(level)) / level.blocks), level.noisePowerSd);
  const excess = level.power - sharing.reduce((sum, other) => sum + other.amplitudeMps2 ** 2, 0);
  if (excess <= SURELY * powerSd) return peak;
  const factor = Math.sqrt(1 + excess / amplitudeMps2 ** 2);
  return {
    ...peak,
    amplitudeMps2: amplitudeMps2 * factor,
    amplitudeSdMps2: Math.max(peak.amplitudeSdMps2, powerSd / (2 * amplitudeMps2 * factor)),
    axisAmplitudeMps2: peak.axisAmplitudeMps2.map((amplitude) => amplitude * factor),
  };
};
