/** Short-time powers over noise for lines whose frequency rises or falls evenly within each row. */
import { complexArray, powerOfTwoAtLeast, realSpectrumPair } from '../../signal/spectra/fft.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { median, runningMedian } from '../../signal/numeric/statistics.ts';
import { floorHalfBins, heldToUsual, usualFloor } from './usual-floor.ts';
import { HIGHEST_HZ, WORK_RATE_HZ } from './work-signal.ts';

/** `excess[(row * slopes + slope) * bins + bin]` is the sum over axes of power over noise. */
export interface ChirpMap {
  /** Centre of each row on the recording's clock, s. */
  readonly timeS: Float64Array;
  /** d(ln frequency)/dt of each slope, 1/s; the middle one is 0. */
  readonly ratesPerS: Float64Array;
  readonly stepHz: number;
  readonly bins: number;
  readonly axes: number;
  readonly excess: Float32Array;
}

export interface ChirpOptions {
  readonly segmentS: number;
  readonly hopS: number;
  readonly ratesPerS: Float64Array;
}

/** Mean of ln of an exponential variable of mean 1 is −γ. */
const EULER = 0.5772156649;

interface Row {
  readonly piece: number;
  /** Of the row's centre, in samples of the piece. */
  readonly centre: number;
}

const rowsOf = (prepared: Prepared, segmentS: number, hopS: number): readonly Row[] =>
  prepared.pieces.flatMap(({ axes }, piece) => {
    const n = axes[0]?.length ?? 0;
    const length = segmentS * prepared.samplingRateHz;
    const hop = hopS * prepared.samplingRateHz;
    const count = n < length ? 0 : Math.floor((n - length) / hop) + 1;
    return Array.from({ length: count }, (_, i) => ({ piece, centre: i * hop + (length - 1) / 2 }));
  });

/** Where, in samples from the row's centre, a line rising at `ratePerS` has turned through even steps of angle. */
const warpedPositions = (count: number, spacing: number, ratePerSample: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => {
    const u = (i - (count - 1) / 2) * spacing;
    // Angle θ = u + c·u²/2; the sample with angle θ lies at u = θ − c·θ²/2 + c²·θ³/2.
    return u - (ratePerSample * u * u) / 2 + (ratePerSample * ratePerSample * u * u * u) / 2;
  });

/** Cubic (four-point Lagrange) interpolation, windowed. */
const readInto = (
  out: Float64Array,
  samples: Float64Array,
  centre: number,
  positions: Float64Array,
  window: Float64Array,
): void => {
  const last = samples.length - 3;
  for (let i = 0; i < positions.length; i++) {
    const p = centre + positions[i]!;
    const k = Math.min(last, Math.max(1, Math.floor(p)));
    const d = p - k;
    const a = samples[k - 1]!;
    const b = samples[k]!;
    const c = samples[k + 1]!;
    const e = samples[k + 2]!;
    const cubic = (b - c) / 2 + (e - a) / 6;
    out[i] = (b + d * (c - a / 3 - b / 2 - e / 6 + d * ((a + c) / 2 - b + d * cubic))) * window[i]!;
  }
};

/** 1/noise at each bin: a running median over frequency of the mean over rows, no more than is usual. */
const inverseFloor = (powers: Float32Array, rows: number, bins: number, stepHz: number): Float64Array => {
  const mean = new Float64Array(bins);
  for (let r = 0; r < rows; r++) for (let k = 0; k < bins; k++) mean[k]! += powers[r * bins + k]! / rows;
  const usual = usualFloor(powers, rows, bins, stepHz);
  return runningMedian(mean, floorHalfBins(stepHz)).map(
    (floor, k) => 1 / Math.max(heldToUsual(floor, usual[k]!), 1e-300),
  );
};

/** How loud a row's noise is over the floor: a geometric mean, which lines hardly move. */
const loudnessOf = (powers: Float32Array, row: number, inverse: Float64Array): number => {
  const bins = inverse.length;
  let sum = 0;
  for (let k = 0; k < bins; k++) sum += Math.log(powers[row * bins + k]! * inverse[k]! + 1e-30);
  return Math.exp(sum / bins + EULER);
};

/** @param prepared low-passed for the work rate, see `workSignal` */
export const chirpMap = (prepared: Prepared, { segmentS, hopS, ratesPerS }: ChirpOptions): ChirpMap | null => {
  const rate = prepared.samplingRateHz;
  const rowRate = rate > 1.05 * WORK_RATE_HZ ? WORK_RATE_HZ : rate;
  const length = Math.round(segmentS * rowRate);
  const size = powerOfTwoAtLeast(length);
  const stepHz = rowRate / size;
  const bins = Math.min(size / 2 + 1, Math.ceil(HIGHEST_HZ / stepHz) + 2);
  const axes = prepared.pieces[0]?.axes.length ?? 0;
  const places = rowsOf(prepared, segmentS, hopS);
  const rows = places.length;
  const slopes = ratesPerS.length;
  if (rows < 3 || axes === 0 || bins < 16) return null;
  const window = Float64Array.from({ length }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / length));
  const warps = Array.from(ratesPerS, (r) => warpedPositions(length, rate / rowRate, r / rate));
  const excess = new Float32Array(rows * slopes * bins);
  const powers = Array.from({ length: slopes }, () => new Float32Array(rows * bins));
  const buffers = [new Float64Array(length), new Float64Array(length)] as const;
  const outs = [complexArray(size / 2 + 1), complexArray(size / 2 + 1)] as const;
  for (let axis = 0; axis < axes; axis++) {
    for (let c = 0; c < slopes; c++) {
      for (let r = 0; r < rows; r += 2) {
        for (let which = 0; which < 2; which++) {
          const { piece, centre } = places[Math.min(rows - 1, r + which)]!;
          readInto(buffers[which]!, prepared.pieces[piece]!.axes[axis]!, centre, warps[c]!, window);
        }
        realSpectrumPair(buffers[0], buffers[1], size, outs[0], outs[1]);
        for (let which = 0; which < 2 && r + which < rows; which++) {
          const { re, im } = outs[which]!;
          const base = (r + which) * bins;
          for (let k = 0; k < bins; k++) powers[c]![base + k] = re[k]! * re[k]! + im[k]! * im[k]!;
        }
      }
    }
    const flat = powers[slopes >> 1]!;
    const inverse = inverseFloor(flat, rows, bins, stepHz);
    for (let r = 0; r < rows; r++) {
      const loud = 1 / loudnessOf(flat, r, inverse);
      for (let c = 0; c < slopes; c++) {
        const base = (r * slopes + c) * bins;
        for (let k = 0; k < bins; k++) excess[base + k]! += powers[c]![r * bins + k]! * inverse[k]! * loud;
      }
    }
  }
  const timeS = Float64Array.from(places, ({ piece, centre }) => prepared.pieces[piece]!.startS + centre / rate);
  return { timeS, ratesPerS, stepHz, bins, axes, excess };
};

/**
 * The same with what stays at one frequency all the time taken for noise: hums, resonances, humps of the road. A line that
 * sweeps has soon moved on.
 */
export const againstItsMiddle = (map: ChirpMap): ChirpMap => {
  const { bins, ratesPerS, axes } = map;
  const rows = map.timeS.length;
  const slopes = ratesPerS.length;
  // The median of a gamma variable of that shape (its usual approximation).
  const usual = axes - 1 / 3;
  const excess = map.excess.slice();
  const column = new Float64Array(rows);
  for (let k = 0; k < bins; k++) {
    for (let r = 0; r < rows; r++) column[r] = map.excess[(r * slopes + (slopes >> 1)) * bins + k]!;
    const scale = usual / Math.max(usual, median(column));
    if (scale < 1) for (let row = 0; row < rows * slopes; row++) excess[row * bins + k]! *= scale;
  }
  return { ...map, excess };
};
