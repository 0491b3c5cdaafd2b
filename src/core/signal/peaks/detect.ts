/** Peaks of a recording's spectrum, over all axes together, by their false-alarm probability. */
import { slowerBlocks, toBlocks } from '../prepare/blocks.ts';
import {
  againstResonance,
  makeLevels,
  noiseWeights,
  smoothCandidates,
  STEADY_HIGHEST_HZ,
  type Candidate,
  type LevelView,
} from './candidates.ts';
import { trace } from '../numeric/hermitian.ts';
import { measureFaintLine, measureSteadyLine, type MeasuredLine } from './measure-line.ts';
import type { Peak } from './peak.ts';
import { keptAmongLevels } from './one-line-each.ts';
import type { Prepared } from '../spectra/spectrum.ts';
import { makeZoom, type Zoom } from './zoom.ts';
import { verticalShare } from './vertical-share.ts';
import { lobeWidthBins } from '../spectra/windows.ts';
import { lineProbabilityOf } from '../numeric/line-probability.ts';

export interface DetectOptions {
  /** Lowest and highest frequency searched, Hz; default 2 Hz, and 800 Hz or 0.98 of half the rate. */
  readonly lowestHz?: number;
  readonly highestHz?: number;
  /** Greatest false-alarm probability over the whole search; default 0.01. */
  readonly falseAlarm?: number;
  /** False where no resonance can stand narrow: on the clock of a speed that swept far. Default true. */
  readonly resonances?: boolean;
}

/** Above this a vehicle's turning parts shake nobody; searching there costs time and chances of false alarm. */
export const HIGHEST_SHAKE_HZ = 800;
/** Nor is it looked above this share of half the rate, where lines and images meet. */
export const HALF_RATE_SHARE = 0.98;
const LOWEST_HZ = 2;
const DEFAULT_FALSE_ALARM = 0.01;
const SHORTEST_SAMPLES = 64;

/**
 * Peaks in order of frequency.
 *
 * Every local maximum of the whitened spectrum at several segment lengths is tried against two kinds of noise: smooth
 * noise over the whole search, and resonances (see local-floor.ts). Its false-alarm probability is the greater of the
 * two. A line that several segment lengths show is kept once, at the finest that holds all of its power.
 */
export const findPeaks = (prepared: Prepared, options: DetectOptions = {}): Peak[] => {
  const half = HALF_RATE_SHARE * (prepared.samplingRateHz / 2);
  const highestHz = Math.min(options.highestHz ?? HIGHEST_SHAKE_HZ, half);
  const lowestHz = options.lowestHz ?? LOWEST_HZ;
  // Two ways to be wrong share the allowance.
  const allowed = (options.falseAlarm ?? DEFAULT_FALSE_ALARM) / 2;
  const blocks = toBlocks(prepared, highestHz);
  if (blocks.longest < SHORTEST_SAMPLES || !(highestHz > lowestHz)) return [];
  const slowBlocks = slowerBlocks(blocks, STEADY_HIGHEST_HZ);
  const views = makeLevels(blocks, lowestHz, highestHz, slowBlocks);
  const candidates = smoothCandidates(blocks.axisCount, views, lowestHz, highestHz, allowed);
  const lines = keptAmongLevels(views, candidates, (candidate, taken) => {
    const tried =
      options.resonances === false
        ? { ...candidate, logResonant: candidate.logSmooth, logAlarm: Math.min(0, candidate.logSmooth) }
        : againstResonance(blocks.axisCount, candidate, taken);
    return tried.logAlarm <= Math.log(allowed) ? tried : null;
  });
  if (lines.length === 0) return [];
  // Most lines lie low: they are measured at a rate that is enough for them.
  const slow = makeZoom(slowBlocks);
  const isLow = (line: Candidate): boolean => line.frequencyHz < 0.95 * STEADY_HIGHEST_HZ;
  const fast = lines.every(isLow) ? slow : makeZoom(blocks);
  return lines
    .map((line) => peakOf(line, lines, views, isLow(line) ? slow : fast, prepared.up))
    .sort((a, b) => a.frequencyHz - b.frequencyHz);
};

const peakOf = (
  line: Candidate,
  lines: readonly Candidate[],
  views: readonly LevelView[],
  zoom: Zoom,
  up: readonly number[] | null,
): Peak => {
  const axes = zoom.axisCount;
  const { level, whitened } = line.view;
  const steady = line.view === views[0];
  const near = lines
    .filter((other) => other !== line && Math.abs(other.frequencyHz - line.frequencyHz) < 0.5)
    .map((other) => other.frequencyHz);
  const weights = noiseWeights(line);
  const measured: MeasuredLine = steady
    ? measureSteadyLine(zoom, line.frequencyHz, near, weights)
    : measureFaintLine(zoom, line.frequencyHz, level.lengthS, near, weights);
  const total = Math.max(trace(axes, measured.power), 1e-30);
  return {
    frequencyHz: measured.frequencyHz,
    frequencySdHz: measured.frequencySdHz,
    amplitudeMps2: Math.sqrt(total),
    amplitudeSdMps2: measured.amplitudeSdMps2,
    axisAmplitudeMps2: Array.from({ length: axes }, (_, a) => Math.sqrt(Math.max(0, measured.power[a]!))),
    verticalShare: up && up.length >= axes ? verticalShare(axes, measured.power, measured.noise, up) : null,
    widthHz: widthAt(line),
    limitWidthHz: lobeWidthBins('hann') / level.lengthS,
    ...(measured.wanderHz !== undefined && { wanderHz: measured.wanderHz }),
    overFloorDb: 10 * Math.log10(whitened.t[line.bin]!),
    falseAlarmProbability: Math.min(1, Math.exp(line.logAlarm)),
    smoothAlarmProbability: Math.min(1, Math.exp(line.logSmooth)),
    lineProbability: lineProbabilityOf(line.logResonant),
  };
};

/** Full width at half height over the floor, Hz, by straight lines between bins. */
const widthAt = ({ view, bin }: Candidate): number => {
  const { t } = view.whitened;
  const level = 1 + 0.5 * (t[bin]! - 1);
  const edge = (sign: number): number => {
    let d = 0;
    while (bin + sign * (d + 1) > 0 && bin + sign * (d + 1) < t.length && t[bin + sign * (d + 1)]! > level) d++;
    const inside = t[bin + sign * d]!;
    const outside = t[bin + sign * (d + 1)] ?? 0;
    return d + (inside - level) / Math.max(inside - outside, 1e-12);
  };
  return (edge(-1) + edge(1)) * view.level.stepHz;
};
