/** Lines to follow, the frames they are read in, and bands with a track's movement taken out. */
import type { Blocks } from '../prepare/blocks.ts';
import { referenceClock, type SpeedTrack } from './equal-angle.ts';
import { complexArray } from '../spectra/fft.ts';
import type { Hermitian } from '../numeric/hermitian.ts';
import type { Band } from '../peaks/zoom.ts';

/** A line to follow, with the noise about it. */
export interface LineToFollow {
  /** At relative speed 1, Hz. */
  readonly frequencyHz: number;
  /** Inverse noise density of the analytic signal, packed. */
  readonly whitener: Hermitian;
}

/** A drive's speed changes by about this share per second; frames are as long as that lets a line stay in one bin. */
export const RATE_PER_S = 0.005;
const SHORTEST_FRAME_S = 0.8;
const LONGEST_FRAME_S = 4;
export const frameLengthS = (frequencyHz: number, ratePerS = RATE_PER_S): number =>
  Math.min(LONGEST_FRAME_S, Math.max(SHORTEST_FRAME_S, 1 / Math.sqrt(ratePerS * frequencyHz)));

/** A band with the track's frequency changes taken out: a line that follows it becomes steady. */
export const steadied = (band: Band, frequencyHz: number, track: SpeedTrack): Band => {
  const clock = referenceClock(track);
  const n = band.envelope.length;
  const c = new Float64Array(n);
  const s = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const t = band.startS + i * band.stepS;
    const phase = -2 * Math.PI * frequencyHz * (clock.fromClock(t) - t);
    c[i] = Math.cos(phase);
    s[i] = Math.sin(phase);
  }
  const axes = band.axes.map(({ re, im }) => {
    const out = complexArray(n);
    for (let i = 0; i < n; i++) {
      out.re[i] = re[i]! * c[i]! - im[i]! * s[i]!;
      out.im[i] = re[i]! * s[i]! + im[i]! * c[i]!;
    }
    return out;
  });
  return { ...band, axes };
};

export interface Frames {
  readonly timeS: Float64Array;
  readonly block: Int32Array;
  readonly hopS: number;
}

/** Frame centres over all blocks, `hopS` apart. */
export const frameTimes = (blocks: Blocks, hopS: number): Frames => {
  const times: number[] = [];
  const block: number[] = [];
  blocks.blocks.forEach(({ startS, axes }, b) => {
    const length = axes[0]!.length / blocks.samplingRateHz;
    const count = Math.max(1, Math.round(length / hopS));
    for (let k = 0; k < count; k++) {
      times.push(startS + ((k + 0.5) * length) / count);
      block.push(b);
    }
  });
  return { timeS: Float64Array.from(times), block: Int32Array.from(block), hopS };
};
