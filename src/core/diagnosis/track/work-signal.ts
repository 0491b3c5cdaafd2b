/** The recording as the search for the speed works on it: no higher rate than the lines it follows need. */
import { filteredEvery } from '../../signal/prepare/decimate.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';

/** Rate of the rows, Hz; a recording slower than this is taken as it is. */
export const WORK_RATE_HZ = 400;
/** Lines above this are not needed to follow the speed by all lines together. */
export const HIGHEST_HZ = 172;
/** Above this a line is not looked at to judge how well the speed has been followed; a slower recording holds less. */
const HIGHEST_JUDGED_HZ = 220;
/** Share of a rate up to which the low-pass leaves lines as they are, and where it has none. */
const FILTERED_SHARE = 0.44;
const UNFILTERED_SHARE = 0.49;

/** Highest line that the work signal of such a rate holds whole, Hz. */
export const highestJudgedHz = (workRateHz: number): number =>
  workRateHz < WORK_RATE_HZ
    ? Math.min(HIGHEST_HZ, UNFILTERED_SHARE * workRateHz)
    : Math.min(HIGHEST_JUDGED_HZ, FILTERED_SHARE * workRateHz);
const TAPS = 31;

/** Windowed-sinc low-pass (Hann window), so that rows may be read at the work rate without folding. */
const lowPass = (samplingRateHz: number, workRateHz: number): Float64Array => {
  const half = Math.round((TAPS * samplingRateHz) / 1000);
  const cutoff = (2 * (highestJudgedHz(workRateHz) + 12)) / samplingRateHz;
  return Float64Array.from({ length: half + 1 }, (_, k) => {
    const sinc = k === 0 ? cutoff : Math.sin(Math.PI * cutoff * k) / (Math.PI * k);
    return sinc * (0.5 + 0.5 * Math.cos((Math.PI * k) / (half + 1)));
  });
};

export const workSignal = (prepared: Prepared): Prepared => {
  const rate = prepared.samplingRateHz;
  if (rate <= 1.05 * WORK_RATE_HZ) return prepared;
  const factor = Math.max(1, Math.floor(rate / WORK_RATE_HZ));
  const taps = lowPass(rate, rate / factor);
  const pieces = prepared.pieces.map((piece) => ({
    ...piece,
    axes: piece.axes.map((axis) => filteredEvery(axis, taps, factor)),
  }));
  return { ...prepared, samplingRateHz: rate / factor, pieces };
};
