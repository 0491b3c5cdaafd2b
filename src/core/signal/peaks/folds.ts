/**
 * Which frequency a tone truly has, by uneven samples: at even instants a tone and those that differ from it by the
 * sampling rate give the same samples, at uneven ones they do not. The true one adds up best when turned back at the
 * instants themselves.
 */
import { logBesselI0 } from '../numeric/special-functions.ts';
import { mean } from '../numeric/statistics.ts';
import { complexArray, type ComplexArray } from '../spectra/fft.ts';
import type { Instants } from './instants.ts';

/** A tone seen as one that stands `fold` sampling rates from where it shows: 0 itself, −1 the rate less its true frequency. */
export interface Fold {
  readonly fold: number;
  /** ln of the likelihood, 0 of the likeliest. */
  readonly logLikelihood: number;
}

/** Blocks are short against the wander of a tone, and half overlapped. */
const BLOCK_S = 2;
/** Independent blocks to each of those half overlapped, under a Hann window (P. D. Welch 1967). */
const INDEPENDENT = 0.53;
/** Bins of 1/BLOCK_S beside a place at which its noise is read: clear of the main lobe. */
const BESIDE_BINS = [-4, -3, 3, 4] as const;

interface Block {
  readonly middleS: number;
  /** From the middle, s. */
  readonly timeS: Float64Array;
  /** Hann weights, adding up to 2: a sine of amplitude A gives a sum of size A. */
  readonly weights: Float64Array;
  readonly axes: readonly Float64Array[];
}

/** A mean would, under uneven instants, leak into all frequencies. */
const withoutMean = (axis: Float64Array, weights: Float64Array): Float64Array => {
  const mean = weights.reduce((sum, w, i) => sum + (w / 2) * axis[i]!, 0);
  return axis.map((v) => v - mean);
};

const blocksOf = ({ pieces }: Instants): readonly Block[] =>
  pieces.flatMap(({ timeS, axes }) => {
    const blocks: Block[] = [];
    const lastS = timeS[timeS.length - 1]!;
    let from = 0;
    for (let startS = timeS[0]!; startS + BLOCK_S <= lastS; startS += BLOCK_S / 2) {
      while (timeS[from]! < startS) from++;
      let to = from;
      while (timeS[to]! < startS + BLOCK_S) to++;
      const own = timeS.slice(from, to);
      const shape = own.map((t) => 1 - Math.cos((2 * Math.PI * (t - startS)) / BLOCK_S));
      const sum = shape.reduce((all, w) => all + w, 0);
      if (!(sum > 0)) continue;
      const weights = shape.map((w) => (2 * w) / sum);
      const middleS = startS + BLOCK_S / 2;
      blocks.push({
        middleS,
        timeS: own.map((t) => t - middleS),
        weights,
        axes: axes.map((axis) => withoutMean(axis.slice(from, to), weights)),
      });
    }
    return blocks;
  });

/** e^(−j2πft) at the instants of a block. */
const turning = ({ timeS }: Block, hz: number): ComplexArray => {
  const turn = complexArray(timeS.length);
  for (let i = 0; i < timeS.length; i++) {
    const angle = 2 * Math.PI * hz * timeS[i]!;
    turn.re[i] = Math.cos(angle);
    turn.im[i] = -Math.sin(angle);
  }
  return turn;
};

const product = (a: ComplexArray, b: ComplexArray): ComplexArray => {
  const both = complexArray(a.re.length);
  for (let i = 0; i < a.re.length; i++) {
    both.re[i] = a.re[i]! * b.re[i]! - a.im[i]! * b.im[i]!;
    both.im[i] = a.re[i]! * b.im[i]! + a.im[i]! * b.re[i]!;
  }
  return both;
};

/** Squared 0-to-peak amplitude of an axis turned so, (m/s²)². */
const powerOf = (axis: Float64Array, { re, im }: ComplexArray): number => {
  let sumRe = 0;
  let sumIm = 0;
  for (let i = 0; i < axis.length; i++) {
    sumRe += axis[i]! * re[i]!;
    sumIm += axis[i]! * im[i]!;
  }
  return sumRe * sumRe + sumIm * sumIm;
};

/** Power of one axis in each block at a place, and the mean of what is beside it, (m/s²)². */
interface Place {
  readonly powers: readonly number[];
  readonly noise: number;
}

/**
 * ln of the likelihood of each place for a line of the one level that the likeliest of them shows, phase unknown from
 * block to block: Σ ln I₀(2√(s·p)) − s, p the power and s the line's, in units of the noise (S. O. Rice, Bell System
 * Technical Journal 24, 1945). Uneven instants scatter what else shakes over all frequencies, so that noise which is low
 * where the tone shows may be high where it would truly stand: all places are taken for as noisy as the noisiest, and a
 * tone that is covered there says nothing.
 */
const logLikelihoods = (places: readonly Place[]): readonly number[] => {
  const noise = Math.max(...places.map((place) => place.noise));
  if (!(noise > 0)) return places.map(() => 0);
  const overNoise = places.map((place) => place.powers.map((power) => (power + noise - place.noise) / noise));
  const strength = Math.max(0, ...overNoise.map((powers) => mean(powers) - 1));
  return overNoise.map((powers) =>
    powers.reduce((sum, power) => sum + logBesselI0(2 * Math.sqrt(strength * power)) - strength, 0),
  );
};

/**
 * How likely folds are for tones of a recording with uneven instants.
 * @returns for a tone, given where it shows at each time, Hz, and the folds asked about, 0 among them: each of these; none
 *   where the recording is too short
 */
export const foldsBy = (
  instants: Instants,
): ((shownHzAt: (atS: number) => number, folds: readonly number[]) => readonly Fold[]) => {
  const rate = instants.samplingRateHz;
  const blocks = blocksOf(instants);
  if (blocks.length === 0) return () => [];
  const axisCount = blocks[0]!.axes.length;
  return (shownHzAt, folds) => {
    const readings = blocks.map((block) => {
      const { re, im } = turning(block, shownHzAt(block.middleS));
      const shown = { re: re.map((v, i) => v * block.weights[i]!), im: im.map((v, i) => v * block.weights[i]!) };
      const besides = BESIDE_BINS.map((bin) => turning(block, bin / BLOCK_S));
      return folds.map((fold) => {
        const turned = fold === 0 ? shown : product(shown, turning(block, fold * rate));
        const beside = besides.map((further) => product(turned, further));
        return block.axes.map((axis) => ({
          power: powerOf(axis, turned),
          noise: mean(beside.map((one) => powerOf(axis, one))),
        }));
      });
    });
    /** @param k which of the folds asked about */
    const placeOf = (k: number, axis: number): Place => ({
      powers: readings.map((block) => block[k]![axis]!.power),
      noise: mean(readings.map((block) => block[k]![axis]!.noise)),
    });
    const byAxis = Array.from({ length: axisCount }, (_, axis) =>
      logLikelihoods(folds.map((_fold, k) => placeOf(k, axis))),
    );
    const logs = folds.map((_, k) => byAxis.reduce((sum, axis) => sum + axis[k]!, 0));
    const most = Math.max(...logs);
    return folds.map((fold, k) => ({ fold, logLikelihood: INDEPENDENT * (logs[k]! - most) }));
  };
};
