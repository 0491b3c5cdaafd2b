/** What stands at and beside an order, in Hann-windowed blocks of some steps, out of the moments of its groups. */
import type { ComplexVector } from '../numeric/hermitian.ts';
import { groupTerms, type Demodulated, type GroupTerms } from './demodulate.ts';

/** A Hann window is one exponential less half of each neighbour: so are its derivatives, of exponentials turning evenly. */
const HANN_PARTS = [
  [0, 1],
  [-1, -0.5],
  [1, -0.5],
] as const;

/**
 * Window times e^(−j·2π·bin·i/length) at the middle of each group, and its first two derivatives by the sample; scaled so
 * that a sine of amplitude A gives a result of size A.
 */
const kernelOf = (bin: number, middles: readonly number[], length: number): GroupTerms => {
  const kernel = groupTerms(middles.length);
  for (const [beside, share] of HANN_PARTS) {
    const turn = (-2 * Math.PI * (bin + beside)) / length;
    middles.forEach((at, g) => {
      const re = ((2 * share) / length) * Math.cos(turn * at);
      const im = ((2 * share) / length) * Math.sin(turn * at);
      kernel.re[0][g]! += re;
      kernel.im[0][g]! += im;
      kernel.re[1][g]! -= turn * im;
      kernel.im[1][g]! += turn * re;
      kernel.re[2][g]! -= turn * turn * re;
      kernel.im[2][g]! -= turn * turn * im;
    });
  }
  return kernel;
};

/** Σ x·e^(−jφ)·kernel over one block, re and im, the kernel taken as its first three Taylor terms within each group. */
const phasorOf = (moments: GroupTerms, first: number, kernel: GroupTerms): readonly [number, number] => {
  let [re, im] = [0, 0];
  for (let term = 0; term < 3; term += 1) {
    const scale = term === 2 ? 0.5 : 1;
    const [kernelRe, kernelIm] = [kernel.re[term]!, kernel.im[term]!];
    const [momentRe, momentIm] = [moments.re[term]!, moments.im[term]!];
    for (let g = 0; g < kernelRe.length; g += 1) {
      const [a, b] = [momentRe[first + g]!, momentIm[first + g]!];
      re += scale * (a * kernelRe[g]! - b * kernelIm[g]!);
      im += scale * (a * kernelIm[g]! + b * kernelRe[g]!);
    }
  }
  return [re, im];
};

/**
 * @param bins beside the order, in steps of one over the block's length; within ±5
 * @param steps that a block is long, two or more
 * @returns for the block that begins with a step: for each bin, the 0-to-peak phasor of every axis, m/s²
 */
export const hannBins = (
  { stepLength, groupStarts, axes }: Demodulated,
  bins: readonly number[],
  steps: number,
): ((step: number) => ComplexVector[]) => {
  const groups = groupStarts.length - 1;
  const middleIn = (g: number): number => (groupStarts[g]! + groupStarts[g + 1]! - 1) / 2;
  const middles = Array.from(
    { length: steps * groups },
    (_, g) => middleIn(g % groups) + Math.floor(g / groups) * stepLength,
  );
  const kernels = bins.map((bin) => kernelOf(bin, middles, steps * stepLength));
  return (step) =>
    kernels.map((kernel) => {
      const phasors = axes.map((moments) => phasorOf(moments, step * groups, kernel));
      return { re: phasors.map(([re]) => re), im: phasors.map(([, im]) => im) };
    });
};
