/**
 * How steadily a line kept its frequency, by its phases over eight parts of a block. A width tells of a wander only once
 * it is near the analysis limit; the phase of a strong line tells of one twenty times less.
 */
import { amplitudeAt } from './band-power.ts';
import type { ComplexVector } from '../numeric/hermitian.ts';
import { sliceBand, type Band } from './zoom.ts';

const PARTS = 8;
/**
 * A slow wander of σ (Hz, rms) leaves 2π·σ·SHARE·T of phase (rad, rms) about the best straight line over T seconds: found
 * by trial with wanders of 4 to 12 s memory over 30 to 90 s, median of each between 0.05 and 0.08.
 */
const SHARE = 0.06;

/** A line in one part of a block. */
export interface PartAmplitude {
  readonly centreS: number;
  readonly lengthS: number;
  readonly amplitude: ComplexVector;
}

/** The line in half-overlapped Hann parts; the outermost start at the block's ends. */
export const partAmplitudes = (band: Band, frequencyHz: number): readonly PartAmplitude[] => {
  const endS = band.startS + band.envelope.length * band.stepS;
  const partS = (endS - band.startS) / PARTS;
  return Array.from({ length: PARTS }, (_, p) => {
    const from = band.startS + (p * (endS - band.startS - 2 * partS)) / (PARTS - 1);
    const part = sliceBand(band, from, from + 2 * partS);
    return { centreS: from + partS, lengthS: part.lengthS, amplitude: amplitudeAt(part, frequencyHz) };
  }).filter(({ lengthS }) => lengthS > 0);
};

/** Phase of a against b, all axes together, rad. */
const phaseOf = (a: ComplexVector, b: ComplexVector): number => {
  let re = 0;
  let im = 0;
  for (let i = 0; i < a.re.length; i++) {
    re += a.re[i]! * b.re[i]! + a.im[i]! * b.im[i]!;
    im += a.im[i]! * b.re[i]! - a.re[i]! * b.im[i]!;
  }
  return Math.atan2(im, re);
};

/** Mean square about the least-squares line, two parameters taken off. */
const meanSquareAboutLine = (x: readonly number[], y: readonly number[]): number => {
  const n = x.length;
  const mx = x.reduce((a, b) => a + b, 0) / n;
  const my = y.reduce((a, b) => a + b, 0) / n;
  const sxx = x.reduce((sum, v) => sum + (v - mx) ** 2, 0);
  const sxy = x.reduce((sum, v, i) => sum + (v - mx) * (y[i]! - my), 0);
  return y.reduce((sum, v, i) => sum + (v - my - (sxy / sxx) * (x[i]! - mx)) ** 2, 0) / (n - 2);
};

/**
 * The wander of a line's frequency that its phases leave room for, Hz (rms): what they show, and no less than their noise.
 * @param whole the line's amplitude over the whole block
 * @param energyPerS the line's energy in units of the noise, per second
 * @returns null where there are too few parts
 */
export const frequencyWander = (
  parts: readonly PartAmplitude[],
  whole: ComplexVector,
  energyPerS: number,
  lengthS: number,
): number | null => {
  if (parts.length < 4) return null;
  const phases: number[] = [];
  for (const { amplitude } of parts) {
    const phase = phaseOf(amplitude, whole);
    const before = phases.at(-1) ?? 0;
    phases.push(phase + 2 * Math.PI * Math.round((before - phase) / (2 * Math.PI)));
  }
  // The phase of a line of energy E has the variance 1/(2E); as much again for a projection that does not whiten.
  const noise = parts.reduce((sum, part) => sum + 1 / (energyPerS * part.lengthS), 0) / parts.length;
  const times = parts.map(({ centreS }) => centreS);
  return Math.sqrt(Math.max(noise, meanSquareAboutLine(times, phases))) / (2 * Math.PI * SHARE * lengthS);
};
