/** Resampling to equal angle: what turns with the speed then turns evenly. */
import { interpolateEven } from '../../signal/interpolate.ts';
import type { Prepared } from '../../signal/spectrum.ts';
import { logSpeedAt, type SpeedTrack } from './speed-track.ts';

/** The angle is summed and inverted on this grid, s. */
const STEP_S = 0.02;

/** How the warped clock runs: warped time at real times, both in s from the piece's start. */
interface Clock {
  readonly warpedS: Float64Array;
  readonly lengthS: number;
}

const clockOf = (track: SpeedTrack, startS: number, lengthS: number): Clock => {
  const steps = Math.max(2, Math.ceil(lengthS / STEP_S));
  const warpedS = new Float64Array(steps + 1);
  let before = Math.exp(logSpeedAt(track, startS));
  for (let i = 1; i <= steps; i++) {
    const now = Math.exp(logSpeedAt(track, startS + i * STEP_S));
    warpedS[i] = warpedS[i - 1]! + ((before + now) / 2) * STEP_S;
    before = now;
  }
  return { warpedS, lengthS };
};

/** Real times (in samples) of even steps of warped time. */
const positionsOf = ({ warpedS, lengthS }: Clock, rate: number): Float64Array => {
  const positions: number[] = [];
  let k = 0;
  for (let i = 0; ; i++) {
    const wanted = i / rate;
    while (k < warpedS.length - 2 && warpedS[k + 1]! < wanted) k++;
    const share = (wanted - warpedS[k]!) / (warpedS[k + 1]! - warpedS[k]!);
    const t = (k + share) * STEP_S;
    if (t > lengthS) break;
    positions.push(t * rate);
  }
  return Float64Array.from(positions);
};

/** Warped time at a real time, s on the recording's clock; pieces keep their starts. */
export const warpedPieces = (prepared: Prepared, track: SpeedTrack): Prepared => {
  const rate = prepared.samplingRateHz;
  const pieces = prepared.pieces.map(({ startS, axes }) => {
    const lengthS = ((axes[0]?.length ?? 1) - 1) / rate;
    const positions = positionsOf(clockOf(track, startS, lengthS), rate);
    return { startS, axes: axes.map((axis) => interpolateEven(axis, positions)) };
  });
  const samples = pieces.reduce((sum, piece) => sum + (piece.axes[0]?.length ?? 0), 0);
  return { ...prepared, durationS: samples / rate, pieces };
};

/** Real time of a warped time of a piece, for tracks found on warped pieces. */
export const realTimes = (track: SpeedTrack, startS: number, lengthS: number, warped: Float64Array): Float64Array => {
  const { warpedS } = clockOf(track, startS, lengthS);
  let k = 0;
  return warped.map((w) => {
    while (k < warpedS.length - 2 && warpedS[k + 1]! < w) k++;
    const share = (w - warpedS[k]!) / (warpedS[k + 1]! - warpedS[k]!);
    return startS + (k + share) * STEP_S;
  });
};

/** Times at even steps over all pieces, on the recording's clock. */
export const timesOf = (prepared: Prepared, stepS: number): Float64Array => {
  const times: number[] = [];
  for (const { startS, axes } of prepared.pieces) {
    const length = (axes[0]?.length ?? 0) / prepared.samplingRateHz;
    for (let t = 0; t <= length; t += stepS) times.push(startS + t);
  }
  return Float64Array.from(times);
};
