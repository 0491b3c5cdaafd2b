/**
 * The last step of tracking: once a track keeps lines within a bin, their phases tell what is left of its error far
 * better than their frequencies do. All lines share one error of reference time, ψ(t); line i shows it as 2π·f_i·ψ.
 */
import { amplitudeAt, whitenedPower } from '../peaks/band-power.ts';
import { relativeSpeedAt, type SpeedTrack } from './equal-angle.ts';
import { frameLengthS, RATE_PER_S, steadied, type Frames, type LineToFollow } from './frames.ts';
import { loudestDirection, outer, packedLength, type ComplexVector, type Hermitian } from '../numeric/hermitian.ts';
import { smoothPath, type Reading } from '../numeric/smooth-path.ts';
import { sliceBand, type Band } from '../peaks/zoom.ts';

/** Phase a line may wander by itself, rad: wheels turn a little apart in a bend, mounts have their own phase. */
const OWN_PHASE_SD = 0.15;
/** A frame whose energy is under this many times the noise tells no phase. */
const LEAST_ENERGY = 4;
const ROUGHNESSES = [1e-10, 1e-9, 1e-8, 1e-7, 1e-6, 1e-5];
const PASSES = 3;

interface PhaseReading {
  readonly frame: number;
  readonly phase: number;
  readonly energy: number;
}

/** Phase and energy of one line in each frame, along the direction in which it shakes. */
const phasesOf = (line: LineToFollow, bands: readonly Band[], frames: Frames, ratePerS: number): PhaseReading[] => {
  const axes = Math.sqrt(line.whitener.length);
  const length = frameLengthS(line.frequencyHz, ratePerS);
  const found: { frame: number; a: ComplexVector; lengthS: number }[] = [];
  const sum: Hermitian = new Float64Array(packedLength(axes));
  frames.timeS.forEach((t, frame) => {
    const slice = sliceBand(bands[frames.block[frame]!]!, t - length / 2, t + length / 2);
    if (!(slice.lengthS > 0.3 * length)) return;
    const a = amplitudeAt(slice, line.frequencyHz);
    found.push({ frame, a, lengthS: slice.lengthS });
    const own = outer(axes, a);
    for (let q = 0; q < sum.length; q++) sum[q]! += own[q]!;
  });
  const direction = loudestDirection(axes, line.whitener, sum);
  // Any column of v·vᴴ is v up to a factor; the column of its greatest entry loses no digits.
  let column = 0;
  for (let i = 1; i < axes; i++) if (direction[i]! > direction[column]!) column = i;
  const entry = (i: number): [number, number] => {
    if (i === column) return [direction[i]!, 0];
    const [low, high] = i < column ? [i, column] : [column, i];
    const q = axes + 2 * (low * axes - (low * (low + 1)) / 2 + (high - low - 1));
    return [direction[q]!, (i < column ? 1 : -1) * direction[q + 1]!];
  };
  return found.map(({ frame, a, lengthS }) => {
    let re = 0;
    let im = 0;
    for (let i = 0; i < axes; i++) {
      const [vr, vi] = entry(i);
      re += vr * a.re[i]! + vi * a.im[i]!;
      im += vr * a.im[i]! - vi * a.re[i]!;
    }
    return { frame, phase: Math.atan2(im, re), energy: whitenedPower(a, direction) * lengthS };
  });
};

/**
 * Refines a track by phase. Lines must already be within a fraction of a frame's bin.
 * @param bands the lines' bands per block, on the clock (not steadied)
 */
export const followPhase = (
  lines: readonly LineToFollow[],
  bands: readonly (readonly Band[])[],
  frames: Frames,
  start: SpeedTrack,
  ratePerS = RATE_PER_S,
): SpeedTrack => {
  const pace = ratePerS / RATE_PER_S;
  const roughnesses = ROUGHNESSES.map((roughness) => roughness * pace ** 2);
  let track = start;
  for (let pass = 0; pass < PASSES; pass++) {
    const before = track;
    const read = lines.map((line, l) =>
      phasesOf(
        line,
        bands[l]!.map((band) => steadied(band, line.frequencyHz, before)),
        frames,
        ratePerS,
      ),
    );
    // The strongest line sets ψ = 0 at its strongest frame; the others' own phases are learned from a first smoothing.
    const total = read.map((phases) => phases.reduce((sum, { energy }) => sum + energy, 0));
    const order = lines.map((_, l) => l).sort((a, b) => total[b]! - total[a]!);
    const offsets = new Map<number, number>();
    let smooth = null;
    for (const l of order) {
      const w = 2 * Math.PI * lines[l]!.frequencyHz;
      if (smooth === null) {
        offsets.set(l, read[l]!.reduce((best, r) => (r.energy > best.energy ? r : best), read[l]![0]!).phase);
      } else {
        let re = 0;
        let im = 0;
        for (const { frame, phase, energy } of read[l]!) {
          const k = smooth.timeS.indexOf(frames.timeS[frame]!);
          if (k < 0) continue;
          const off = phase - w * smooth.integral[k]!;
          re += energy * Math.cos(off);
          im += energy * Math.sin(off);
        }
        offsets.set(l, Math.atan2(im, re));
      }
      const readings: Reading[] = [];
      frames.timeS.forEach((timeS, frame) => {
        for (const [m, offset] of offsets) {
          const one = read[m]!.find((r) => r.frame === frame);
          if (!one) continue;
          const wm = 2 * Math.PI * lines[m]!.frequencyHz;
          // Overlapped frames repeat each other, hence the factor; phase variance of a line of energy E is 1/(2E).
          const variance = one.energy < LEAST_ENERGY ? Infinity : (1 / one.energy + OWN_PHASE_SD ** 2) / wm ** 2;
          readings.push({
            timeS,
            component: 0,
            value: (one.phase - offset) / wm,
            variance,
            period: (2 * Math.PI) / wm,
          });
        }
      });
      smooth = smoothPath(readings, roughnesses, [1 / w, 0.002 * pace, 0.002 * pace]);
    }
    if (smooth === null) return track;
    const path = smooth;
    track = {
      timeS: path.timeS,
      relative: Float64Array.from(path.timeS, (t, k) => relativeSpeedAt(before, t) + path.value[k]!),
    };
  }
  return track;
};
