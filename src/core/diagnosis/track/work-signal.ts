/** The recording as the search for the speed works on it: no higher rate than the lines it follows need. */
import type { Prepared } from '../../signal/spectrum.ts';

/** Rate of the rows, Hz; a recording slower than this is taken as it is. */
export const WORK_RATE_HZ = 400;
/** Lines above this are not needed to follow the speed. */
export const HIGHEST_HZ = 172;
const TAPS = 31;

/** Windowed-sinc low-pass (Hann window), so that rows may be read at the work rate without folding. */
const lowPassed = (samples: Float64Array, samplingRateHz: number): Float64Array => {
  const half = Math.round((TAPS * samplingRateHz) / 1000);
  const cutoff = (2 * (HIGHEST_HZ + 12)) / samplingRateHz;
  const taps = Float64Array.from({ length: 2 * half + 1 }, (_, i) => {
    const k = i - half;
    const sinc = k === 0 ? cutoff : Math.sin(Math.PI * cutoff * k) / (Math.PI * k);
    return sinc * (0.5 + 0.5 * Math.cos((Math.PI * k) / (half + 1)));
  });
  const out = new Float64Array(samples.length);
  const last = samples.length - 1;
  for (let i = 0; i <= last; i++) {
    let sum = 0;
    if (i >= half && i + half <= last) for (let k = -half; k <= half; k++) sum += taps[k + half]! * samples[i + k]!;
    else for (let k = -half; k <= half; k++) sum += taps[k + half]! * samples[Math.min(last, Math.max(0, i + k))]!;
    out[i] = sum;
  }
  return out;
};

export const workSignal = (prepared: Prepared): Prepared =>
  prepared.samplingRateHz <= 1.05 * WORK_RATE_HZ
    ? prepared
    : {
        ...prepared,
        pieces: prepared.pieces.map((piece) => ({
          ...piece,
          axes: piece.axes.map((axis) => lowPassed(axis, prepared.samplingRateHz)),
        })),
      };
