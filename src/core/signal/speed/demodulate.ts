/**
 * A signal turned back by the phase of an order, and summed in short groups. What is read beside the order afterwards
 * varies slowly within a group, so the sum and its first two moments about the group's middle stand for its samples.
 */
import type { Prepared } from '../spectra/spectrum.ts';
import type { SpeedTrack } from './equal-angle.ts';

/** Groups in a step, at the most: what Hann bins up to 6 lose with three moments then stays 66 dB down. */
const MOST_GROUPS = 64;

/** Three complex numbers for each group, in order of time: the terms of a series about the group's middle. */
export interface GroupTerms {
  readonly re: readonly [Float64Array, Float64Array, Float64Array];
  readonly im: readonly [Float64Array, Float64Array, Float64Array];
}

/** @param groups for so many, all 0 */
export const groupTerms = (groups: number): GroupTerms => {
  const zeros = (): Float64Array => new Float64Array(groups);
  return { re: [zeros(), zeros(), zeros()], im: [zeros(), zeros(), zeros()] };
};

export interface Demodulated {
  readonly stepLength: number;
  /** Whole steps in the piece; what remains after the last is left out. */
  readonly steps: number;
  /** First sample of each group of a step, counted from the step's own, and after the last the step's length. */
  readonly groupStarts: readonly number[];
  /** Of each axis Σ x·e^(−jφ)·rᵐ, m/s², m = 0..2, r in samples from the group's middle. */
  readonly axes: readonly GroupTerms[];
}

/** Linear interpolation in a track, held at its ends; calls must ask for ascending times. */
export const interpolator = ({ timeS, relative }: SpeedTrack): ((atS: number) => number) => {
  if (timeS.length < 2) return () => relative[0] ?? 1;
  let k = 0;
  return (atS) => {
    while (k < timeS.length - 2 && timeS[k + 1]! <= atS) k += 1;
    const share = Math.min(1, Math.max(0, (atS - timeS[k]!) / (timeS[k + 1]! - timeS[k]!)));
    return relative[k]! + share * (relative[k + 1]! - relative[k]!);
  };
};

const startsOf = (stepLength: number): number[] => {
  const groups = Math.min(MOST_GROUPS, stepLength);
  return Array.from({ length: groups + 1 }, (_, g) => Math.floor((g * stepLength) / groups));
};

/**
 * e^(−jφ) into `re` and `im` for `length` samples, by turning on: the order's speed changes evenly within a group.
 * @param phase of the first sample, rad
 * @param turn from the first to the second sample were the speed steady, rad; it grows by `gain` a sample, rad
 */
const carrierInto = (
  re: Float64Array,
  im: Float64Array,
  length: number,
  [phase, turn, gain]: readonly [number, number, number],
): void => {
  let [c, s] = [Math.cos(phase), -Math.sin(phase)];
  let [wc, ws] = [Math.cos(turn + gain / 2), -Math.sin(turn + gain / 2)];
  const [uc, us] = [Math.cos(gain), -Math.sin(gain)];
  for (let i = 0; i < length; i += 1) {
    re[i] = c;
    im[i] = s;
    [c, s] = [c * wc - s * ws, c * ws + s * wc];
    [wc, ws] = [wc * uc - ws * us, wc * us + ws * uc];
  }
};

/**
 * @param frequencyHz of the order where relative speed is 1; its phase is the running sum along the track
 * @param stepLength samples a step is long
 */
export function demodulate(
  piece: Prepared['pieces'][number],
  samplingRateHz: number,
  frequencyHz: number,
  speed: SpeedTrack,
  stepLength: number,
): Demodulated {
  const groupStarts = startsOf(stepLength);
  const groups = groupStarts.length - 1;
  const steps = Math.floor((piece.axes[0]?.length ?? 0) / stepLength);
  const axes = piece.axes.map(() => groupTerms(steps * groups));
  const longest = Math.ceil(stepLength / groups);
  const [re, im] = [new Float64Array(longest), new Float64Array(longest)];
  const relativeAt = interpolator(speed);
  const radiansASample = (2 * Math.PI * frequencyHz) / samplingRateHz;
  let phase = 0;
  let now = relativeAt(piece.startS);
  for (let group = 0; group < steps * groups; group += 1) {
    const [step, within] = [Math.floor(group / groups), group % groups];
    const from = step * stepLength + groupStarts[within]!;
    const length = groupStarts[within + 1]! - groupStarts[within]!;
    const next = relativeAt(piece.startS + (from + length) / samplingRateHz);
    carrierInto(re, im, length, [phase, radiansASample * now, (radiansASample * (next - now)) / length]);
    piece.axes.forEach((samples, axis) => {
      momentsInto(axes[axis]!, group, samples, from, re, im, length);
    });
    phase = (phase + (radiansASample * length * (now + next)) / 2) % (2 * Math.PI);
    now = next;
  }
  return { stepLength, steps, groupStarts, axes };
}

function momentsInto(
  { re, im }: GroupTerms,
  group: number,
  samples: Float64Array,
  from: number,
  carrierRe: Float64Array,
  carrierIm: Float64Array,
  length: number,
): void {
  const middle = (length - 1) / 2;
  let [re0, re1, re2, im0, im1, im2] = [0, 0, 0, 0, 0, 0];
  for (let i = 0; i < length; i += 1) {
    const value = samples[from + i]!;
    const r = i - middle;
    const a = value * carrierRe[i]!;
    const b = value * carrierIm[i]!;
    re0 += a;
    im0 += b;
    re1 += r * a;
    im1 += r * b;
    re2 += r * r * a;
    im2 += r * r * b;
  }
  re[0][group] = re0;
  re[1][group] = re1;
  re[2][group] = re2;
  im[0][group] = im0;
  im[1][group] = im1;
  im[2][group] = im2;
}
