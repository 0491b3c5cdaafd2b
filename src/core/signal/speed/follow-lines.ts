/**
 * The speed track that lines follow together: frame by frame the common relative shift at which they stand highest, the
 * smoothest likely path through the frames, then again with longer frames on what is left.
 */
import { powersAt } from '../peaks/band-power.ts';
import { bestPath } from '../numeric/best-path.ts';
import type { Blocks } from '../prepare/blocks.ts';
import { relativeSpeedAt, type SpeedTrack } from './equal-angle.ts';
import { followPhase } from './follow-phase.ts';
import { frameLengthS, frameTimes, RATE_PER_S, steadied, type Frames, type LineToFollow } from './frames.ts';
import { smoothPath, type Reading } from '../numeric/smooth-path.ts';
import { sliceBand, type Band, type Zoom } from '../peaks/zoom.ts';

/** Greatest shift looked for, relative. */
export const MOST_SHIFT = 0.045;
/** States per Hann bin of the highest line. */
const STATES_PER_BIN = 5;
/** Roughness of the speed at the usual rate, per s³, from steady cruise to a foot on the pedal. */
const ROUGHNESSES = [1e-9, 1e-8, 1e-7, 1e-6, 1e-5];

/**
 * Evidence of each shift at each frame: whitened power of all lines there, counted once per independent frame.
 * @param shifts evenly spaced, two or more
 */
const shiftEvidence = (
  lines: readonly LineToFollow[],
  bands: readonly (readonly Band[])[],
  frames: Frames,
  lengthOf: (frequencyHz: number) => number,
  shifts: Float64Array,
): Float64Array => {
  const evidence = new Float64Array(frames.timeS.length * shifts.length);
  const step = shifts[1]! - shifts[0]!;
  lines.forEach((line, l) => {
    const length = lengthOf(line.frequencyHz);
    // Overlapped frames repeat each other: a Hann frame is worth about two thirds of its length.
    const worth = Math.min(1, frames.hopS / (0.66 * length));
    frames.timeS.forEach((t, k) => {
      const slice = sliceBand(bands[l]![frames.block[k]!]!, t - length / 2, t + length / 2);
      if (!(slice.lengthS > 0.3 * length)) return;
      const firstHz = line.frequencyHz * (1 + shifts[0]!);
      const powers = powersAt(slice, line.whitener, firstHz, line.frequencyHz * step, shifts.length);
      powers.forEach((power, s) => (evidence[k * shifts.length + s]! += worth * slice.lengthS * power));
    });
  });
  return evidence;
};

/** Reading of the shift at a frame: top of the parabola through three states, its variance from the curvature. */
const readingAt = (evidence: Float64Array, states: number, k: number, state: number, shifts: Float64Array): Reading => {
  const s = Math.min(states - 2, Math.max(1, state));
  const [a, b, c] = [-1, 0, 1].map((d) => evidence[k * states + s + d]!) as [number, number, number];
  const step = shifts[1]! - shifts[0]!;
  const curvature = (2 * b - a - c) / (step * step);
  // A frame without a line has no top there, or a blunt one.
  if (!(curvature > 0)) return { timeS: 0, component: 1, value: 0, variance: Infinity };
  const off = Math.min(1, Math.max(-1, (0.5 * (c - a)) / (2 * b - a - c)));
  return { timeS: 0, component: 1, value: shifts[s]! + off * step, variance: 1 / curvature + 0.1 * step * step };
};

/**
 * Refines a track. `mostShift` is how far the present one may be off, `ratePerS` by how much that changes in a second.
 * @returns a track on the frames' times, mean relative speed as the given one's
 */
export const followLines = (
  zoom: Zoom,
  blocks: Blocks,
  lines: readonly LineToFollow[],
  start: SpeedTrack,
  mostShift = MOST_SHIFT,
  ratePerS = RATE_PER_S,
): SpeedTrack => {
  const roughnesses = ROUGHNESSES.map((roughness) => roughness * (ratePerS / RATE_PER_S) ** 2);
  const highest = Math.max(...lines.map((line) => line.frequencyHz));
  const raw = lines.map((line) =>
    Array.from({ length: zoom.blocks }, (_, b) =>
      zoom.band(
        b,
        line.frequencyHz,
        (line.frequencyHz * mostShift + 2 / frameLengthS(line.frequencyHz, ratePerS)) / 0.75,
      ),
    ),
  );
  let track = start;
  let reach = mostShift;
  for (const stretch of [1, 2, 4]) {
    const lengthOf = (hz: number): number => frameLengthS(hz, ratePerS) * stretch;
    const shortest = lengthOf(highest);
    const frames = frameTimes(blocks, shortest / 2);
    const step = 1 / (STATES_PER_BIN * shortest * highest);
    const half = Math.max(4, Math.ceil(reach / step));
    const shifts = Float64Array.from({ length: 2 * half + 1 }, (_, i) => (i - half) * step);
    const bands = lines.map((line, l) => raw[l]!.map((band) => steadied(band, line.frequencyHz, track)));
    const evidence = shiftEvidence(lines, bands, frames, lengthOf, shifts);
    // Cost of a move: Gaussian steps of the rate per second.
    const perState = step / (ratePerS * frames.hopS * 1.5);
    const moves = Float64Array.from({ length: Math.min(2 * half + 1, 16) }, (_, d) => 0.5 * (d * perState) ** 2);
    const path = bestPath(evidence, shifts.length, moves);
    const readings = Array.from(frames.timeS, (timeS, k) => ({
      ...readingAt(evidence, shifts.length, k, path.states[k]!, shifts),
      timeS,
    }));
    const smooth = smoothPath(readings, roughnesses, [0, reach, 2 * ratePerS]);
    const before = track;
    track = {
      timeS: frames.timeS,
      relative: Float64Array.from(frames.timeS, (t, k) => relativeSpeedAt(before, t) + smooth.value[k]!),
    };
    reach = Math.min(reach, 3 / (shortest * highest));
  }
  const frames = frameTimes(blocks, frameLengthS(highest, ratePerS) / 2);
  return followPhase(lines, raw, frames, track, ratePerS);
};
