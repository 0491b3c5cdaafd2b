/** Sums of a tie times values, for every point of one axis over all points of the other. */
import { complexArray, complexSpectrum, inverseComplexSpectrum, powerOfTwoAtLeast } from '../../signal/spectra/fft.ts';

/** Weight of a pair (road point r, engine point e): `weight[e − first − r]`, nothing where that is not an index. */
export interface Tie {
  readonly first: number;
  readonly weight: Float64Array;
}

export interface TiedSums {
  /** At each road point: Σ over the engine points of value·tie, of two sets of values. */
  readonly overEngine: (a: Float64Array, b: Float64Array) => readonly [Float64Array, Float64Array];
  /** At each engine point: Σ over the road points of value·tie, of two sets of values. */
  readonly overRoad: (a: Float64Array, b: Float64Array) => readonly [Float64Array, Float64Array];
}

/** Term by term: exact to rounding of each sum by itself, road points × tie points of work. */
export const tiedOneByOne = ({ first, weight }: Tie, roadCount: number, engineCount: number): TiedSums => {
  const forEach = (visit: (r: number, from: number, to: number, shift: number) => void): void => {
    for (let r = 0; r < roadCount; r++) {
      const shift = first + r;
      visit(r, Math.max(0, shift), Math.min(engineCount, shift + weight.length), shift);
    }
  };
  const overEngine = (values: Float64Array): Float64Array => {
    const out = new Float64Array(roadCount);
    forEach((r, from, to, shift) => {
      let sum = 0;
      for (let e = from; e < to; e++) sum += values[e]! * weight[e - shift]!;
      out[r] = sum;
    });
    return out;
  };
  const overRoad = (values: Float64Array): Float64Array => {
    const out = new Float64Array(engineCount);
    forEach((r, from, to, shift) => {
      const value = values[r]!;
      if (value > 0) for (let e = from; e < to; e++) out[e]! += value * weight[e - shift]!;
    });
    return out;
  };
  return {
    overEngine: (a, b) => [overEngine(a), overEngine(b)],
    overRoad: (a, b) => [overRoad(a), overRoad(b)],
  };
};

/** By transforms, both sets of values in one: each sum is exact only to rounding of the greatest. */
export const tiedByTransform = ({ first, weight }: Tie, roadCount: number, engineCount: number): TiedSums => {
  const size = powerOfTwoAtLeast(Math.max(roadCount, engineCount) + weight.length);
  const padded = complexArray(size);
  padded.re.set(weight);
  const tie = complexSpectrum(padded);
  /** Convolution with the tie (sign +1) or correlation (−1), at indices from `at` on. */
  const summed = (
    a: Float64Array,
    b: Float64Array,
    sign: 1 | -1,
    at: number,
    count: number,
  ): readonly [Float64Array, Float64Array] => {
    const both = complexArray(size);
    both.re.set(a);
    both.im.set(b);
    const spectrum = complexSpectrum(both);
    for (let k = 0; k < size; k++) {
      const re = spectrum.re[k]!;
      const im = spectrum.im[k]!;
      const c = tie.re[k]!;
      const s = sign * tie.im[k]!;
      spectrum.re[k] = re * c - im * s;
      spectrum.im[k] = re * s + im * c;
    }
    const out = inverseComplexSpectrum(spectrum);
    const lowest = sign === 1 ? 0 : 1 - weight.length;
    const highest = sign === 1 ? a.length + weight.length - 2 : a.length - 1;
    const pick = (values: Float64Array): Float64Array =>
      Float64Array.from({ length: count }, (_, i) => {
        const n = at + i;
        return n < lowest || n > highest ? 0 : Math.max(0, values[n < 0 ? n + size : n]!);
      });
    return [pick(out.re), pick(out.im)];
  };
  return {
    overEngine: (a, b) => summed(a, b, -1, first, roadCount),
    overRoad: (a, b) => summed(a, b, 1, -first, engineCount),
  };
};

/** Without a tie every pair is as good: each sum is the sum of all. */
export const untied = (roadCount: number, engineCount: number): TiedSums => {
  const total = (values: Float64Array): number => values.reduce((sum, v) => sum + v, 0);
  const everywhere = (count: number, values: Float64Array): Float64Array => new Float64Array(count).fill(total(values));
  return {
    overEngine: (a, b) => [everywhere(roadCount, a), everywhere(roadCount, b)],
    overRoad: (a, b) => [everywhere(engineCount, a), everywhere(engineCount, b)],
  };
};
