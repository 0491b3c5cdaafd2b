/**
 * How well a track explains a line: the energy that stands in one bin once the track's frequency changes are taken out,
 * in units of the noise. It is a log-likelihood (of a line with a slowly changing amplitude against noise alone), so
 * differences between tracks compare hypotheses.
 */
import type { SpeedTrack } from './equal-angle.ts';
import { steadied, type LineToFollow } from './frames.ts';
import { powerAt, powerScan } from '../peaks/band-power.ts';
import { sliceBand, type Band } from '../peaks/zoom.ts';

/** A line is added up coherently over this long: wheels turn apart by half a turn in a minute, not in this, s. */
const COHERENT_S = 15;

/** Bins of a slice beside the line in which the noise is read. */
const BESIDE_BINS = [-9, -7, -5, 5, 7, 9] as const;

/** Steps of the scan per bin, and half width in bins of the parabola that then finds the top. */
const SCAN_STEPS = 6;
const TOP_BINS = 0.25;

/** Where a parabola through three even points has its top, in steps from the middle one. */
const topOffset = (before: number, middle: number, after: number): number => {
  const bend = 2 * middle - before - after;
  return bend > 0 ? Math.min(1, Math.max(-1, (after - before) / (2 * bend))) : 0;
};

export interface Sharpness {
  readonly logLikelihood: number;
  /** The same in units of the line's stated noise, not of what stands beside it: that reading itself scatters by a tenth. */
  readonly energy: number;
  /** Where the line stands with the track's changes taken out, Hz. */
  readonly frequencyHz: number;
}

/**
 * @param bands the line's bands, one a block, on the clock
 * @param reachHz how far from the line's stated frequency it may stand
 */
export const sharpnessOf = (
  line: LineToFollow,
  bands: readonly Band[],
  track: SpeedTrack,
  reachHz: number,
  rate = 1,
): Sharpness => {
  const axes = Math.sqrt(line.whitener.length);
  const slices: Band[] = [];
  for (const band of bands) {
    const still = steadied(band, line.frequencyHz * rate, track);
    const lengthS = band.envelope.length * band.stepS;
    const sliceS = Math.min(lengthS, COHERENT_S);
    const count = Math.max(1, Math.round((2 * (lengthS - sliceS)) / sliceS) + 1);
    for (let k = 0; k < count; k++) {
      const from = band.startS + (count === 1 ? 0 : (k * (lengthS - sliceS)) / (count - 1));
      slices.push(sliceBand(still, from, from + sliceS));
    }
  }
  const total = bands.reduce((sum, band) => sum + band.envelope.length * band.stepS, 0);
  // Hann slices at half overlap cover the whole one and a half times in energy.
  const covered = slices.reduce((sum, slice) => sum + slice.lengthS, 0);
  const worth = covered > 0 ? Math.min(1, total / covered) : 0;
  const bin = 1 / Math.min(COHERENT_S, Math.max(...slices.map((slice) => slice.lengthS), 1e-3));
  const reach = Math.max(reachHz, bin);
  // A path that leads through a louder part of the spectrum has that part's noise beside it.
  const scans = slices.map((slice) => {
    const widest = Math.max(reach, BESIDE_BINS.at(-1)! / slice.lengthS);
    const power = powerScan(slice, line.whitener, line.frequencyHz - widest, line.frequencyHz + widest);
    const beside = BESIDE_BINS.map((d) => slice.lengthS * power(line.frequencyHz + d / slice.lengthS));
    const noise = Math.max(1, beside.reduce((sum, e) => sum + e, 0) / beside.length / axes);
    return { slice, power, noise, scale: (worth * slice.lengthS) / noise };
  });
  let best = line.frequencyHz;
  let most = -Infinity;
  for (let f = line.frequencyHz - reach; f <= line.frequencyHz + reach; f += bin / SCAN_STEPS) {
    let sum = 0;
    for (const { power, scale } of scans) sum += scale * power(f);
    if (sum > most) [best, most] = [f, sum];
  }
  const energiesAt = (f: number): Omit<Sharpness, 'frequencyHz'> => {
    let logLikelihood = 0;
    let energy = 0;
    for (const { slice, scale, noise } of scans) {
      const own = scale * powerAt(slice, line.whitener, f);
      logLikelihood += own;
      energy += own * noise;
    }
    return { logLikelihood, energy };
  };
  const [before, at, after] = [-1, 0, 1].map((d) => energiesAt(best + d * TOP_BINS * bin).logLikelihood) as [
    number,
    number,
    number,
  ];
  const frequencyHz = best + topOffset(before, at, after) * TOP_BINS * bin;
  return { ...energiesAt(frequencyHz), frequencyHz };
};
