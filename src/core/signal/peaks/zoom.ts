/**
 * A narrow band about one frequency as slow complex samples: where lines are measured. The band is cut out of the
 * transform of the whole block (ends faded over a fraction of a second, so that what lies outside leaves no click).
 */
import type { Blocks } from '../prepare/blocks.ts';
import {
  complexArray,
  inverseComplexSpectrum,
  powerOfTwoAtLeast,
  realSpectrum,
  type ComplexArray,
} from '../spectra/fft.ts';

/** Ends are faded in and out over this long, s, and no more than this share of the block. */
const FADE_S = 0.2;
const FADE_SHARE = 0.02;
/** Share of the band that is kept flat; beyond, it falls to nothing at the band's edge. */
export const FLAT_BAND = 0.75;

/**
 * Complex samples of the analytic signal moved down by `centreHz`: a tone A·cos(2πft + φ) appears as
 * A·e^{j(2π(f − centreHz)t + φ)}, t on the recording's clock.
 */
export interface Band {
  readonly centreHz: number;
  /** Half width of the flat part, Hz. */
  readonly flatHz: number;
  readonly stepS: number;
  /** Time of sample 0, s, on the recording's clock. */
  readonly startS: number;
  /** Shape in time of a steady tone after fade and filter: 1 within, falling at the ends. */
  readonly envelope: Float64Array;
  /** Weight each sample is summed with: the envelope itself over a whole block, a Hann window over a slice of it. */
  readonly weight: Float64Array;
  /** Σ envelope·weight: what a steady tone of amplitude 1 adds up to. */
  readonly norm: number;
  /** Length the weighted sum is worth, (∫ envelope·weight)² / ∫ weight², s. A line's bin is 1/lengthS or a little more. */
  readonly lengthS: number;
  readonly axes: readonly ComplexArray[];
}

export interface Zoom {
  readonly blocks: number;
  readonly longestS: number;
  readonly axisCount: number;
  readonly band: (block: number, centreHz: number, halfWidthHz: number) => Band;
}

const faded = (samples: Float64Array, fade: number): Float64Array => {
  const out = samples.slice();
  for (let i = 0; i < fade; i++) {
    const w = 0.5 - 0.5 * Math.cos((Math.PI * (i + 0.5)) / fade);
    out[i]! *= w;
    out[out.length - 1 - i]! *= w;
  }
  return out;
};

/** Prepares the whole-block transforms; bands are then cheap. */
export const makeZoom = (blocks: Blocks): Zoom => {
  const rate = blocks.samplingRateHz;
  const transforms = blocks.blocks.map(({ startS, axes }) => {
    const n = axes[0]?.length ?? 0;
    const fade = Math.max(1, Math.round(Math.min(FADE_S * rate, FADE_SHARE * n)));
    const size = powerOfTwoAtLeast(n);
    const spectra = axes.map((axis) => realSpectrum(faded(axis, fade), size));
    return { startS, n, size, spectra, ends: realSpectrum(faded(new Float64Array(n).fill(1), fade), size) };
  });
  const band = (block: number, centreHz: number, halfWidthHz: number): Band => {
    const { startS, n, size, spectra, ends } = transforms[block]!;
    const centre = Math.round((centreHz * size) / rate);
    const reach = Math.max(4, Math.round((halfWidthHz * size) / rate));
    const count = powerOfTwoAtLeast(2 * reach + 2);
    const every = size / count;
    const kept = Math.floor((n - 1) / every) + 1;
    const centreAt = (centre * rate) / size;
    // 1/size undoes the forward transform, count the inverse's own scaling.
    const slowly = (at: (q: number) => { re: number; im: number } | null, factor: number): ComplexArray => {
      const slow = complexArray(count);
      for (let q = -reach; q <= reach; q++) {
        const value = at(q);
        if (!value) continue;
        const beyond = (Math.abs(q) / reach - FLAT_BAND) / (1 - FLAT_BAND);
        const weight = (beyond <= 0 ? 1 : 0.5 + 0.5 * Math.cos(Math.PI * Math.min(1, beyond))) * factor;
        slow.re[(q + count) % count] = value.re * weight;
        slow.im[(q + count) % count] = value.im * weight;
      }
      const { re, im } = inverseComplexSpectrum(slow);
      return { re: re.subarray(0, kept), im: im.subarray(0, kept) };
    };
    const envelope = slowly((q) => {
      const k = Math.abs(q);
      return k > size / 2 ? null : { re: ends.re[k]!, im: Math.sign(q) * ends.im[k]! };
    }, count / size).re;
    // The block's samples begin at its own start: turn the phase back to the recording's clock.
    const turn = -2 * Math.PI * centreAt * startS;
    const c = Math.cos(turn);
    const s = Math.sin(turn);
    const axes = spectra.map(({ re, im }) =>
      slowly(
        (q) => {
          const k = centre + q;
          if (k <= 0 || k >= size / 2) return null;
          return { re: re[k]! * c - im[k]! * s, im: re[k]! * s + im[k]! * c };
        },
        (2 * count) / size,
      ),
    );
    return {
      centreHz: centreAt,
      flatHz: (FLAT_BAND * reach * rate) / size,
      stepS: every / rate,
      startS,
      envelope,
      weight: envelope,
      ...worthOf(envelope, envelope, every / rate),
      axes,
    };
  };
  return {
    blocks: transforms.length,
    longestS: blocks.longest / rate,
    axisCount: blocks.axisCount,
    band,
  };
};

const worthOf = (envelope: Float64Array, weight: Float64Array, stepS: number): Pick<Band, 'norm' | 'lengthS'> => {
  let sum = 0;
  let squares = 0;
  for (let i = 0; i < weight.length; i++) {
    sum += envelope[i]! * weight[i]!;
    squares += weight[i]! * weight[i]!;
  }
  return { norm: sum, lengthS: squares > 0 ? (sum * sum * stepS) / squares : 0 };
};

/** A stretch of a band under a Hann window. Shares the samples with the band it is cut from. */
export const sliceBand = (band: Band, fromS: number, toS: number): Band => {
  const first = Math.max(0, Math.ceil((fromS - band.startS) / band.stepS));
  const last = Math.min(band.envelope.length - 1, Math.floor((toS - band.startS) / band.stepS));
  const count = Math.max(0, last - first + 1);
  const envelope = band.envelope.subarray(first, first + count);
  const weight = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const u = (band.startS + (first + i) * band.stepS - fromS) / (toS - fromS);
    weight[i] = envelope[i]! * (0.5 - 0.5 * Math.cos(2 * Math.PI * u));
  }
  return {
    ...band,
    startS: band.startS + first * band.stepS,
    envelope,
    weight,
    ...worthOf(envelope, weight, band.stepS),
    axes: band.axes.map(({ re, im }) => ({
      re: re.subarray(first, first + count),
      im: im.subarray(first, first + count),
    })),
  };
};
