/**
 * How sharply lines stand in the spectrum over the whole length: each narrow band by its highest bin over the rest. A
 * line that wanders is spread over many bins; on the right track it is gathered into one.
 */
import { complexArray, powerOfTwoAtLeast, realSpectrum } from '../../signal/spectra/fft.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { runningMedian } from '../../signal/numeric/statistics.ts';
import { growingEvidence } from './line-evidence.ts';
import { floorHalfBins, heldToUsual, usualFloor } from './usual-floor.ts';
import { highestJudgedHz } from './work-signal.ts';

export interface Band {
  /** Of its highest bin, Hz. */
  readonly frequencyHz: number;
  /** Evidence beyond what chance gives somewhere in the spectrum; 0 where there is none. */
  readonly evidence: number;
  /** Power over noise, all of the band together. */
  readonly excess: number;
  /** The part of that outside the main lobe of the highest bin, beyond what chance puts there. */
  readonly spread: number;
}

const LOWEST_HZ = 4;
/** A line that wanders by a percent stays within its band. */
const RELATIVE_WIDTH = 0.016;
const LEAST_WIDTH_HZ = 0.5;
/** Short stretches in which the usual noise is read, s. */
const SHORT_S = 2.56;
/** Noise alone reaches this much (in ln) somewhere in a spectrum of some thousand bins. */
const CHANCE = 13;
/** A longer recording is looked at in blocks of this length, s, a few of them. */
const BLOCK_S = 96;
const MOST_BLOCKS = 4;

/** The surroundings that a band's highest bin must stand out of, to each side, in bands; Hann's main lobe in bins. */
const AROUND = 0.75;
const LOBE_BINS = 2;
/** What a Hann window loses between two bins, ln of power (1.42 dB; Harris, 1978). */
const MOST_SCALLOPING = 0.327;
/** Chance adds up to this many standard deviations of noise outside the lobe. */
const CHANCE_SDS = 4;

interface Block {
  readonly piece: number;
  readonly from: number;
  readonly length: number;
}

const blocksOf = (prepared: Prepared): readonly Block[] => {
  const rate = prepared.samplingRateHz;
  const blocks: Block[] = [];
  prepared.pieces.forEach(({ axes }, piece) => {
    const n = axes[0]?.length ?? 0;
    const count = Math.max(1, Math.ceil(n / (BLOCK_S * rate)));
    const length = Math.floor(n / count);
    for (let b = 0; b < count; b++) blocks.push({ piece, from: b * length, length });
  });
  const step = Math.max(1, Math.floor(blocks.length / MOST_BLOCKS));
  return blocks.filter((_, i) => i % step === 0).slice(0, MOST_BLOCKS);
};

/** Powers of even, Hann windowed stretches of one axis. */
const shortPowers = (axis: Float64Array, { from, length }: Block, short: number, bins: number): Float64Array => {
  const size = powerOfTwoAtLeast(short);
  const rows = Math.floor(length / short);
  const out = new Float64Array(rows * bins);
  const spectrum = complexArray(size / 2 + 1);
  const input = new Float64Array(short);
  for (let r = 0; r < rows; r++) {
    const start = from + r * short;
    for (let i = 0; i < short; i++) input[i] = axis[start + i]! * hann(i, short);
    realSpectrum(input, size, spectrum);
    for (let k = 0; k < bins; k++) out[r * bins + k] = spectrum.re[k]! ** 2 + spectrum.im[k]! ** 2;
  }
  return out;
};

const hann = (i: number, length: number): number => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length);

const excessOf = (prepared: Prepared, block: Block, size: number, bins: number): Float64Array => {
  const stepHz = prepared.samplingRateHz / size;
  const short = Math.min(block.length, Math.round(SHORT_S * prepared.samplingRateHz));
  const shortSize = powerOfTwoAtLeast(short);
  const shortBins = Math.min(shortSize / 2 + 1, Math.ceil((bins * shortSize) / size) + 2);
  const rows = Math.floor(block.length / short);
  const sum = new Float64Array(bins);
  const out = complexArray(size / 2 + 1);
  const input = new Float64Array(block.length);
  for (const axis of prepared.pieces[block.piece]!.axes) {
    const usual = usualFloor(
      shortPowers(axis, block, short, shortBins),
      rows,
      shortBins,
      prepared.samplingRateHz / shortSize,
    );
    for (let i = 0; i < block.length; i++) input[i] = axis[block.from + i]! * hann(i, block.length);
    realSpectrum(input, size, out);
    const power = Float64Array.from({ length: bins }, (_, k) => out.re[k]! ** 2 + out.im[k]! ** 2);
    const floor = runningMedian(power, floorHalfBins(stepHz));
    for (let k = 0; k < bins; k++) {
      // A window's noise power grows with its length. The running median is ln 2 times the mean.
      const usualMedian = (Math.LN2 * usual[Math.round((k * shortSize) / size)]! * block.length) / short;
      sum[k]! += (Math.LN2 * power[k]!) / Math.max(heldToUsual(floor[k]!, usualMedian), 1e-300);
    }
  }
  return sum;
};

/**
 * Height of the top between the bins: a parabola through the logarithms of three bins, within 0.1 dB for a Hann window.
 * Without it a line would gain up to 1.4 dB by falling on a bin.
 */
const topOf = (excess: Float64Array, at: number): number => {
  const b = Math.log(excess[at]! + 1e-30);
  const a = Math.log((excess[at - 1] ?? 0) + 1e-30);
  const c = Math.log((excess[at + 1] ?? 0) + 1e-30);
  // At the edge of a band the highest bin may be another line's slope.
  if (!(b > a && b > c)) return excess[at]!;
  return Math.exp(b + Math.min(MOST_SCALLOPING, (a - c) ** 2 / (8 * (2 * b - a - c))));
};

/** Mean around a bin, its own main lobe left out: noise, or what a wandering line has spread there. */
const restOf = (excess: Float64Array, at: number, reach: number, lobe: number): number => {
  let sum = 0;
  let count = 0;
  for (let k = Math.max(0, at - reach); k <= Math.min(excess.length - 1, at + reach); k++) {
    if (Math.abs(k - at) <= lobe) continue;
    sum += excess[k]!;
    count++;
  }
  return count > 0 ? sum / count : 0;
};

/**
 * The bands from 4 Hz up, in order of frequency.
 * @param originalRateHz rate of the recording that this was made from: the bands are the same for all made from one
 */
export const sharpness = (prepared: Prepared, originalRateHz: number): readonly Band[] => {
  const rate = prepared.samplingRateHz;
  const axes = prepared.pieces[0]?.axes.length ?? 0;
  const evidenceOf = growingEvidence(axes);
  const highest = highestJudgedHz(originalRateHz);
  const edges = [LOWEST_HZ];
  for (let f = LOWEST_HZ; f < highest; edges.push(f)) f += Math.max(LEAST_WIDTH_HZ, RELATIVE_WIDTH * f);
  const bands = edges
    .slice(0, -1)
    .map((fromHz) => ({ frequencyHz: fromHz, evidence: 0, excess: 0, spread: 0, top: 0 }));
  const blocks = blocksOf(prepared);
  for (const block of blocks) {
    const size = powerOfTwoAtLeast(block.length);
    const step = rate / size;
    const bins = Math.min(size / 2 + 1, Math.ceil(edges.at(-1)! / step) + 1);
    const excess = excessOf(prepared, block, size, bins);
    bands.forEach((band, b) => {
      const from = Math.ceil(edges[b]! / step);
      const to = Math.min(bins, Math.ceil(edges[b + 1]! / step));
      let at = from;
      for (let k = from; k < to; k++) if (excess[k]! > excess[at]!) at = k;
      const lobe = Math.ceil(LOBE_BINS * (size / block.length));
      const rest = restOf(excess, at, Math.round((to - from) * AROUND), lobe);
      const top = (axes * topOf(excess, at)) / Math.max(axes, rest);
      band.evidence += Math.max(0, evidenceOf(top) - CHANCE) / blocks.length;
      let own = 0;
      let outside = -CHANCE_SDS * Math.sqrt(axes * (to - from));
      for (let k = from; k < to; k++) {
        own += excess[k]! - axes;
        if (Math.abs(k - at) > lobe) outside += excess[k]! - axes;
      }
      band.excess += own / blocks.length;
      band.spread += Math.max(0, outside) / blocks.length;
      if (top > band.top) {
        band.top = top;
        band.frequencyHz = at * step;
      }
    });
  }
  return bands;
};

/**
 * What the bands gain by a track: evidence where it is sharper than anything that stood within reach without it. (A
 * wrong track smears a fixed tone over its neighbours; they have gained nothing.)
 * @param reach greatest |ln of relative speed| of the track
 */
export const gainOver = (without: readonly Band[], along: readonly Band[], reach: number): number => {
  const width = Math.ceil(reach / RELATIVE_WIDTH) + 1;
  return along.reduce((sum, band, i) => {
    if (band.evidence === 0) return sum;
    let before = 0;
    for (let j = Math.max(0, i - width); j <= Math.min(without.length - 1, i + width); j++) {
      before = Math.max(before, without[j]!.evidence);
    }
    return sum + Math.max(0, band.evidence - before);
  }, 0);
};

/** What stands spread out on every one of the given bands, at its worst place. */
export const leastSpread = (
  several: readonly (readonly Band[])[],
  spreadOf = ({ spread }: Band): number => spread,
): number =>
  several[0]!.reduce((most, _, i) => Math.max(most, Math.min(...several.map((bands) => spreadOf(bands[i]!)))), 0);
