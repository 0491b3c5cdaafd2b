/**
 * A logged speed that changes fast: its lag and its steps, harmless on a cruise, are then worth many percent. It is drawn
 * as smoothly as its own values ask for, and its lag is the one at which the recording's strongest line stands out most.
 */
import type { Span } from '../../reading/cut-recording.ts';
import type { Track } from '../../reading/recording.ts';
import { withUnitMean } from '../../signal/speed/combine-tracks.ts';
import { concentration } from '../../signal/spectra/concentration.ts';
import { relativeSpeedAt, resampleToEqualAngle, type SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { smoothPath, type Reading } from '../../signal/numeric/smooth-path.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';

export interface AlignedLog {
  /** Mean 1 over the recording, on its clock. */
  readonly track: SpeedTrack;
  /** Mean over the recording, in the log's unit. */
  readonly mean: number;
  /** Its relative standard uncertainty, by what is not known of the lag. */
  readonly meanSd: number;
  /** How late the log is, s; null where nothing in the recording tells. */
  readonly lagS: number | null;
}

/** From this change a second on, relative, a second's lag is worth more than the search about a log allows for. */
const STEEP_PER_S = 0.03;
/** A change is read over this long at least: steps of a whole km/h are none. */
const READ_OVER_S = 2;
/** Slower than this the vehicle as good as stood, m/s: no share is taken of it. */
const LEAST_MPS = 1;
/** Least speed that a track divides by, m/s. */
const LEAST_TRACK_MPS = 0.3;

/** True where a log changes so fast that its lag counts. @param log road or wheel speed, m/s */
export const isSteep = ({ timeS, value }: Track): boolean => {
  let before = 0;
  for (let i = 1; i < timeS.length; i++) {
    while (before + 1 < i && timeS[i]! - timeS[before + 1]! >= READ_OVER_S) before++;
    const apartS = timeS[i]! - timeS[before]!;
    const meanMps = Math.max(LEAST_MPS, (value[i]! + value[before]!) / 2);
    if (apartS >= READ_OVER_S && Math.abs(value[i]! - value[before]!) > STEEP_PER_S * apartS * meanMps) return true;
  }
  return false;
};

/** A longer recording is no launch; drawing and shifting its log would only cost time, s. */
const LONGEST_S = 150;
/** A log is read so far beyond both ends of the recording, s. */
const AROUND_S = 4;
/** A log must cover this share of the recording to be shifted against it. */
const COVERED = 0.8;
/** Knots of the drawn speed, s. */
const KNOT_S = 0.25;
/**
 * Spread of a logged value about the truth beside its rounding, m/s (GPS Doppler speed, one sigma). An engine's speed in
 * revolutions a second has numbers of the same size: it is read and drawn with the same ones.
 */
const READING_SD_MPS = 0.1;
/** Loggers write whole km/h or mph at the coarsest: in a fast change the least step seen is more. m/s. */
const COARSEST_STEP_MPS = 0.447;
/** Step densities of the acceleration, m²/s⁵: from a lifted foot to a launch. The log decides. */
const ROUGHNESSES = [0.003, 0.03, 0.3, 3, 30];
const START_SD = [1, 50, 3] as const;

/** The log drawn smoothly at knots; the values are its own. */
const drawn = ({ timeS, value, step }: Track): SpeedTrack => {
  const variance = READING_SD_MPS ** 2 + Math.min(step, COARSEST_STEP_MPS) ** 2 / 12;
  const readings: Reading[] = Array.from(timeS, (t, i) => ({ timeS: t, component: 1, value: value[i]!, variance }));
  const start = timeS[0]!;
  const knots = Math.floor((timeS[timeS.length - 1]! - start) / KNOT_S) + 1;
  // A knot is a reading of nothing.
  for (let k = 0; k < knots; k++)
    readings.push({ timeS: start + k * KNOT_S, component: 1, value: 0, variance: Infinity });
  readings.sort((a, b) => a.timeS - b.timeS);
  const path = smoothPath(readings, ROUGHNESSES, START_SD);
  return { timeS: path.timeS, relative: path.value.map((v) => Math.max(LEAST_TRACK_MPS, v)) };
};

const extentOf = ({ pieces, samplingRateHz }: Prepared): Span => {
  const last = pieces[pieces.length - 1];
  const fromS = pieces[0]?.startS ?? 0;
  return { fromS, toS: last ? last.startS + (last.axes[0]?.length ?? 0) / samplingRateHz : fromS };
};

/** What of a log counts for a recording, late as it may be. */
const about = (log: Track, { fromS, toS }: Span): Track => {
  const near = (_: number, i: number): boolean => log.timeS[i]! >= fromS - AROUND_S && log.timeS[i]! <= toS + AROUND_S;
  return { ...log, timeS: log.timeS.filter(near), value: log.value.filter(near) };
};

/** A path that much earlier, as far as the recording goes. */
const earlier = ({ timeS, relative }: SpeedTrack, lagS: number, { fromS, toS }: Span): SpeedTrack => {
  const inside = (_: number, i: number): boolean =>
    timeS[i]! - lagS >= fromS - KNOT_S && timeS[i]! - lagS <= toS + KNOT_S;
  return { timeS: timeS.filter(inside).map((t) => t - lagS), relative: relative.filter(inside) };
};

/** Lags tried, s: a logger writes up to a second and more late; then closer about the best. */
const LAGS_S = Array.from({ length: 8 }, (_, i) => 0.2 * i);
const CLOSER_S = [-0.1, -0.05, 0.05, 0.1];
/** A lag found so is good to this, s. Judgment, by launches made up with known lags. */
const LAG_SD_S = 0.15;
/** Lag of a logger where no line tells, and how far it may be off, s. Judgment. */
const USUAL_LAG_S = 0.4;
const USUAL_LAG_SD_S = 0.3;
/** A strongest line that stands out less, in ln of power, may be noise. */
const CLEAR = 4;

/** Share of half the rate up to which lines are looked at. */
const LOOKED_SHARE = 0.9;

interface Shifted {
  readonly lagS: number;
  readonly track: SpeedTrack;
  readonly mean: number;
  /** Height of the line that stands out most, ln of power, with what its place is worth. */
  readonly score: number;
}

/** A line stands where it is expected within this (ln): tire, slip, and what is left of the lag. Judgment. */
const AT_PLACE = 0.025;
/** That is worth so much (ln of power): a wrong lag has the lines stand sharp, if by chance, at some other place. Judgment. */
const PLACE_WORTH = 1.5;

const worthAt =
  (linesHz: readonly number[]) =>
  (frequencyHz: number): number =>
    linesHz.some((hz) => Math.abs(Math.log(frequencyHz / hz)) < AT_PLACE) ? PLACE_WORTH : 0;

/**
 * How far the strongest line stands out with a track's motion taken out, ln of power.
 * @param linesHz expected lines, where one that stands there counts for more
 */
export const concentrationOn = (prepared: Prepared, track: SpeedTrack, linesHz: readonly number[] = []): number => {
  const fastest = track.relative.reduce((most, r) => Math.max(most, r), 1);
  const highestHz = (LOOKED_SHARE * prepared.samplingRateHz) / 2 / fastest;
  return concentration(resampleToEqualAngle(prepared, track, 0.92), highestHz, worthAt(linesHz));
};

/**
 * Draws a log that changes fast through its steps, and shifts it by its lag.
 *
 * @param wholeLog road or wheel speed, m/s, or engine speed, revolutions a second; may begin before the recording and end after it
 * @param linesPerUnit expected lines, Hz per unit of the log
 * @returns null where the log has too few values to follow, or covers too little of the recording, and of a long drive
 */
export const alignLog = (
  prepared: Prepared,
  wholeLog: Track,
  linesPerUnit: readonly number[] = [],
): AlignedLog | null => {
  const extent = extentOf(prepared);
  const lengthS = extent.toS - extent.fromS;
  const log = about(wholeLog, extent);
  const coveredS = (log.timeS.at(-1) ?? 0) - (log.timeS[0] ?? 0);
  const isLaunch = lengthS > 0 && lengthS <= LONGEST_S;
  if (!isLaunch || log.timeS.length < 4 || coveredS < COVERED * lengthS) return null;
  const path = drawn(log);
  const at = (lagS: number): Shifted => {
    const shifted = earlier(path, lagS, extent);
    const track = withUnitMean(shifted, prepared);
    const mean = relativeSpeedAt(shifted, extent.fromS) / relativeSpeedAt(track, extent.fromS);
    const linesHz = linesPerUnit.map((hz) => hz * mean);
    return { lagS, track, mean, score: concentrationOn(prepared, track, linesHz) };
  };
  const better = (a: Shifted, b: Shifted): Shifted => (b.score > a.score ? b : a);
  const coarse = LAGS_S.map(at).reduce(better);
  const finest = CLOSER_S.map((by) => at(Math.max(0, coarse.lagS + by))).reduce(better, coarse);
  // A tone that keeps to the clock stands out most where the log smears it least: that is no lag.
  const onClock = concentration(prepared, (LOOKED_SHARE * prepared.samplingRateHz) / 2);
  const told = concentrationOn(prepared, finest.track) > Math.max(CLEAR, onClock);
  const { track, lagS, mean } = told ? finest : at(USUAL_LAG_S);
  const slopePerS = (track.relative[track.relative.length - 1]! - track.relative[0]!) / lengthS;
  const meanSd = (told ? LAG_SD_S : USUAL_LAG_SD_S) * Math.abs(slopePerS);
  return { track, mean, meanSd, lagS: told ? lagS : null };
};
