/** A drive whose speed varies: turning lines that keep their phase to the wheels, over noise. For tests of tracking. */
import type { Prepared } from '../../src/core/signal/spectra/spectrum.ts';
import { noiseRecording, type NoiseColour } from './noise.ts';
import type { Random } from './random.ts';

export interface DrivenLine {
  /** Frequency at relative speed 1, Hz. */
  readonly frequencyHz: number;
  readonly amplitude: readonly number[];
  /** 1 follows the speed, 0 stays fixed. */
  readonly follows?: 0 | 1;
}

export interface Drive {
  readonly prepared: Prepared;
  /** True relative speed, mean 1 over the drive, on the samples. */
  readonly relative: Float64Array;
}

/** Smooth unit-variance wander: white noise through two equal low-passes. */
const wander = (n: number, rate: number, timeS: number, random: Random): Float64Array => {
  const a = Math.exp(-1 / (timeS * rate));
  const lead = Math.round(6 * timeS * rate);
  const out = new Float64Array(n);
  let first = 0;
  let second = 0;
  for (let i = -lead; i < n; i++) {
    first = a * first + (1 - a) * random.normal();
    second = a * second + (1 - a) * first;
    if (i >= 0) out[i] = second;
  }
  const sd = Math.sqrt((1 - a) / 4);
  return out.map((v) => v / sd);
};

export type SpeedShape =
  | { readonly kind: 'steady' }
  | { readonly kind: 'wander'; readonly sd: number; readonly timeS: number }
  | { readonly kind: 'drift'; readonly from: number; readonly to: number }
  | { readonly kind: 'ease'; readonly from: number; readonly to: number };

const relativeSpeed = (shape: SpeedShape, n: number, rate: number, random: Random): Float64Array => {
  let r = new Float64Array(n).fill(1);
  if (shape.kind === 'wander') r = Float64Array.from(wander(n, rate, shape.timeS, random), (w) => 1 + shape.sd * w);
  if (shape.kind === 'drift') r = r.map((_, i) => shape.from + ((shape.to - shape.from) * i) / n);
  if (shape.kind === 'ease') {
    r = r.map((_, i) => shape.from + (shape.to - shape.from) * (i / n) ** 2 * (3 - (2 * i) / n));
  }
  const mean = r.reduce((sum, v) => sum + v, 0) / n;
  return r.map((v) => v / mean);
};

export const drive = (
  shape: SpeedShape,
  lines: readonly DrivenLine[],
  colour: NoiseColour,
  durationS: number,
  rate: number,
  axes: number,
  random: Random,
  noiseGain = 0.1,
): Drive => {
  const made = noiseRecording(colour, durationS, rate, axes, random);
  const noise: Prepared = {
    ...made,
    pieces: made.pieces.map((piece) => ({ ...piece, axes: piece.axes.map((axis) => axis.map((v) => noiseGain * v)) })),
  };
  const n = noise.pieces[0]!.axes[0]!.length;
  const relative = relativeSpeed(shape, n, rate, random);
  const turned = new Float64Array(n);
  for (let i = 1; i < n; i++) turned[i] = turned[i - 1]! + (0.5 * (relative[i]! + relative[i - 1]!)) / rate;
  const phases = lines.map(() => 2 * Math.PI * random.uniform());
  const pieces = noise.pieces.map(({ startS, axes: channels }) => ({
    startS,
    axes: channels.map((channel, a) =>
      channel.map((v, i) => {
        let sum = v;
        lines.forEach((line, l) => {
          const t = line.follows === 0 ? i / rate : turned[i]!;
          sum += (line.amplitude[a] ?? 0) * Math.cos(2 * Math.PI * line.frequencyHz * t + phases[l]!);
        });
        return sum;
      }),
    ),
  }));
  return { prepared: { ...noise, pieces }, relative };
};
