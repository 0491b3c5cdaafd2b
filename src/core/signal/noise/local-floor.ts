/**
 * The test that a peak is narrower than any resonance can be.
 *
 * The power density of a resonance with damping ratio ζ falls off its top as 1/(1 + (Δf/ζf)²). So what a sum of
 * resonances with damping ζ or more adds to the smooth floor at a place cannot exceed what it adds at ±Δf by more than
 * the factor 1 + (Δf/ζf)². From the neighbours follows a distribution of how strong a resonance could stand here (prior
 * flat in its logarithm, as becomes a scale); averaged over it, the probability that noise reaches the peak's height.
 * For a strong resonance this is the F test, for none the plain χ² test, and it passes smoothly between them.
 *
 * Neighbours are read in the direction in which the peak stands out: a resonance shakes that way beside its top too.
 * Where each side has enough neighbours of its own the sides are also weighed apart and the worse taken, so that a step
 * of the noise does not look like a peak ("greatest of" detector of radar practice, V. G. Hansen & J. H. Sawyers, IEEE
 * Trans. AES-16(1), 1980).
 */
import { gammaLogTail } from '../numeric/distributions.ts';
import { loudestDirection, traceOfProduct } from '../numeric/hermitian.ts';
import type { Level } from './levels.ts';
import type { Whitened } from './whiten.ts';

/** Least damping ratio that a structure shaken by the road is taken to have (rubber, joints and people damp it). */
export const LEAST_DAMPING = 0.008;
/** Natural bins about the top that a line's own Hann lobe fills. */
const GUARD_BINS = 2;
/** Natural bins to each side, at least and at most. */
const LEAST_REACH = 6;
const MOST_REACH = 40;
/** Independent powers wanted on each side. */
const WANTED_SAMPLES = 8;
/** Grid of ln(1 + R), R the resonance's height over the smooth floor. */
const GRID_STEP = 0.25;
const GRID_END = 24;
/** A product of means, each of 1 to 10¹², that may be multiplied on. */
const LARGE = 1e200;
/** Terms of a sum that are less by this, in ln, do not count. */
const NEGLIGIBLE = 40;
/** Prior probability that no resonance stands at a place where smooth noise has been ruled out. */
const PRIOR_SMOOTH = 0.9;

/**
 * The noise beside a peak may stand over the smooth floor without a resonance at the peak: on the flank of a broad hump
 * the floor, a median over a wider band, comes out too low. Probabilities: judgment.
 */
const FLOORS = [
  { times: 1, probability: 0.7 },
  { times: 2, probability: 0.15 },
  { times: 4, probability: 0.1 },
  { times: 8, probability: 0.05 },
] as const;

interface Neighbour {
  /** Power in the peak's direction over the smooth floor. */
  readonly power: number;
  /** Share of a resonance's height that is left there. */
  readonly share: number;
}

/**
 * ln P(noise ≥ height): the χ² tail for each strength of resonance and each level of the noise beside the peak, weighed
 * by how well they explain the neighbours.
 */
const predictiveLogTail = (
  neighbours: readonly Neighbour[],
  perNeighbour: number,
  averages: number,
  height: number,
  shape: number,
): number => {
  const levels: { readonly log: number; readonly times: number }[] = [];
  for (const { times, probability } of FLOORS) {
    for (let g = 0; g <= GRID_END; g += GRID_STEP) {
      const r = Math.expm1(g);
      let log = 0;
      // Logarithms are dear: the means are multiplied, and the product's taken before it could overflow.
      let product = 1;
      for (const { power, share } of neighbours) {
        const mean = times * (1 + r * share);
        log -= power / mean;
        product *= mean;
        if (product > LARGE) {
          log -= Math.log(product);
          product = 1;
        }
      }
      log -= Math.log(product);
      // Flat in ln(1 + R), one e-fold of eight each, where a resonance is at all.
      const prior = g === 0 ? PRIOR_SMOOTH : ((1 - PRIOR_SMOOTH) * GRID_STEP) / 8;
      levels.push({ log: Math.log(probability * prior) + log * averages * perNeighbour, times: times * (1 + r) });
    }
  }
  const most = levels.reduce((greatest, { log }) => Math.max(greatest, log), -Infinity);
  const total = levels.reduce((sum, { log }) => sum + Math.exp(log - most), 0);
  // The sum is taken in logarithms: the answer may be 1e-300. A tail is 1 at most, so many need not be worked out.
  const terms: number[] = [];
  let top = -Infinity;
  for (const { log, times } of levels) {
    if (log - most < top - NEGLIGIBLE) continue;
    const term = log - most + gammaLogTail(height / times, shape);
    terms.push(term);
    top = Math.max(top, term);
  }
  return top + Math.log(terms.reduce((sum, term) => sum + Math.exp(term - top), 0)) - Math.log(total);
};

/**
 * ln of the probability that noise, smooth or resonant, reaches as high as it does at this one bin.
 * @param taken 1 for bins that belong to lines already found; they do not count as neighbours
 */
export const resonantLogTail = (
  axes: number,
  level: Level,
  whitened: Whitened,
  bin: number,
  taken: Uint8Array,
): number => {
  const { t } = whitened;
  const halfWidth = Math.max(1e-9, LEAST_DAMPING * bin);
  const wanted = GUARD_BINS + (WANTED_SAMPLES * level.binCorrelation) / level.pad / whitened.averages;
  const reach = Math.min(MOST_REACH, Math.max(LEAST_REACH, (3 * halfWidth) / level.pad, wanted));
  const first = Math.ceil(GUARD_BINS * level.pad + 0.5);
  const last = Math.round(reach * level.pad);
  const whitener = whitened.whitenerAt(bin);
  const packedAt = (k: number): Float64Array => Float64Array.from(level.matrix, (entries) => entries[k]!);
  const direction = loudestDirection(axes, whitener, packedAt(bin));
  const perNeighbour = 1 / level.binCorrelation;
  const sides: Neighbour[][] = [-1, 1].map((sign) => {
    const side: Neighbour[] = [];
    for (let d = first; d <= last; d++) {
      const k = bin + sign * d;
      if (k < 1 || k >= level.bins || taken[k] || t[k] === 0) continue;
      side.push({
        power: traceOfProduct(axes, direction, packedAt(k)),
        share: 1 / (1 + (d / halfWidth) ** 2),
      });
    }
    return side;
  });
  const height = t[bin]! * axes * whitened.averages;
  const shape = axes * whitened.averages;
  const tail = (side: readonly Neighbour[]): number =>
    predictiveLogTail(side, perNeighbour, whitened.averages, height, shape);
  const enough = sides.filter((side) => side.length * perNeighbour * whitened.averages >= WANTED_SAMPLES);
  return Math.max(tail(sides.flat()), ...enough.map(tail));
};
