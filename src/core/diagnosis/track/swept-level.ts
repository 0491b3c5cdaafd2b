/**
 * The level of an order that swept through the resonances of a vehicle: at each its phase turns, so that the whole sweep
 * does not add up to one line, while block by block it is as strong as it was.
 */
import { blockScatter, orderLevel, type OrderLevel } from '../../signal/speed/order-level.ts';
import type { Peak } from '../../signal/peaks/peak.ts';
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';

/** Fastest over slowest from which a track leads an order through resonances. */
const SWEEP = 1.1;
/** Standard uncertainties, of noise alone, by which the blocks' mean power must exceed the line's. */
const SURELY = 3;
/** The strongest blocks, this share of them, do not count: a tone that keeps to the clock is crossed there. */
const CROSSED = 0.05;

/** True for a pull-up or coast-down, false for a cruise however it drifts. */
export const isSweep = ({ relative }: SpeedTrack): boolean => {
  const fastest = relative.reduce((most, r) => Math.max(most, r), 0);
  const slowest = relative.reduce((least, r) => Math.min(least, r), Infinity);
  return fastest > SWEEP * slowest;
};

/** Mean power of the blocks but the strongest, noise taken out, (m/s²)². */
const uncrossedPower = ({ blockPowers, noisePower }: OrderLevel): number => {
  const kept = blockPowers.toSorted((a, b) => a - b).slice(0, -Math.ceil(CROSSED * blockPowers.length));
  return kept.reduce((sum, power) => sum + power, 0) / Math.max(1, kept.length) - noisePower;
};

/**
 * A peak found along a sweep, with the level of the blocks where that is surely greater than the one line's; the same
 * peak elsewhere.
 * @param prepared the recording on its own clock
 */
export const withSweptLevel = (peak: Peak, prepared: Prepared, track: SpeedTrack): Peak => {
  if (!isSweep(track)) return peak;
  const level = orderLevel(prepared, peak.frequencyHz, track);
  if (!level) return peak;
  // Blocks overlap by half: so many stand alone.
  const powerSd = Math.sqrt((2 * blockScatter(level)) / level.blocks);
  const power = uncrossedPower(level);
  if (power - SURELY * powerSd <= peak.amplitudeMps2 ** 2) return peak;
  const amplitudeMps2 = Math.sqrt(power);
  const factor = amplitudeMps2 / peak.amplitudeMps2;
  return {
    ...peak,
    amplitudeMps2,
    amplitudeSdMps2: powerSd / (2 * amplitudeMps2),
    axisAmplitudeMps2: peak.axisAmplitudeMps2.map((amplitude) => amplitude * factor),
  };
};
