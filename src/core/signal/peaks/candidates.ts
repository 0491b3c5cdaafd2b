/** Bins that stand out of the noise at some segment length, with the probability that noise did it. */
import { slowerBlocks, type Blocks } from '../prepare/blocks.ts';
import { fLogTail } from '../numeric/distributions.ts';
import type { Hermitian } from '../numeric/hermitian.ts';
import { levelLengths, makeLevel, type Level } from '../noise/levels.ts';
import { resonantLogTail } from '../noise/local-floor.ts';
import { loudnessOf } from '../noise/segment-weights.ts';
import { whiten, type Whitened } from '../noise/whiten.ts';

export interface LevelView {
  readonly level: Level;
  readonly whitened: Whitened;
}

export interface Candidate {
  readonly view: LevelView;
  readonly bin: number;
  readonly frequencyHz: number;
  /** ln probabilities over the whole search: that smooth noise, and that a resonance, reaches so high anywhere. */
  readonly logSmooth: number;
  readonly logResonant: number;
  /** ln of the false-alarm probability: the greater of the two. */
  readonly logAlarm: number;
}

/**
 * Places in a spectrum where steep features of the noise (resonances, steps) can give a narrow test its chance. Far
 * fewer than bins: structures have a handful of them, some ten bins each.
 */
const STEEP_PLACES = 20;

/**
 * Above this a line is looked for in short segments only, Hz and s: to stand within a bin of a longer one it would have
 * to keep its frequency to a part in 2000, which no vehicle's speed does.
 */
export const STEADY_HIGHEST_HZ = 250;
const SHORT_S = 8;

/**
 * Spectra at all segment lengths, longest first.
 * @param slow the blocks at a rate that is enough below `STEADY_HIGHEST_HZ`, for the long segments
 * @param most so many of them, the longest
 */
export const makeLevels = (
  blocks: Blocks,
  lowestHz: number,
  highestHz: number,
  slow: Blocks = slowerBlocks(blocks, STEADY_HIGHEST_HZ),
  most = Infinity,
): LevelView[] => {
  const viewsOf = (of: Blocks, lengths: readonly number[], toHz: number): LevelView[] => {
    const loudness = loudnessOf(of);
    return lengths.map((length) => {
      const level = makeLevel(of, loudness, length, toHz);
      const from = Math.max(1, Math.floor((0.7 * lowestHz) / level.stepHz));
      return { level, whitened: whiten(of.axisCount, level, from) };
    });
  };
  if (highestHz <= STEADY_HIGHEST_HZ) return viewsOf(blocks, levelLengths(blocks).slice(0, most), highestHz);
  const isLong = (of: Blocks) => (length: number) => length > SHORT_S * of.samplingRateHz;
  const long = lowestHz < STEADY_HIGHEST_HZ ? levelLengths(slow).filter(isLong(slow)).slice(0, most) : [];
  const short = levelLengths(blocks)
    .filter((length) => !isLong(blocks)(length))
    .slice(0, most - long.length);
  return [
    ...(long.length > 0 ? viewsOf(slow, long, STEADY_HIGHEST_HZ) : []),
    ...(short.length > 0 ? viewsOf(blocks, short, highestHz) : []),
  ];
};

/** ln tail of T against its band: F, since the band's level is itself estimated (by a median, worth half a mean). */
export const smoothLogTail = (axes: number, view: LevelView, bin: number): number => {
  const degrees = 2 * axes * view.whitened.averages;
  const below = Math.max(2, 0.5 * degrees * view.whitened.bandSamples[bin]!);
  return fLogTail(view.whitened.t[bin]!, degrees, below);
};

/** Local maxima over all levels, with the probability of smooth noise alone at most `falseAlarm`. */
export const smoothCandidates = (
  axes: number,
  views: readonly LevelView[],
  lowestHz: number,
  highestHz: number,
  falseAlarm: number,
): Candidate[] => {
  const ranges = views.map(({ level }) => ({
    from: Math.max(3, Math.ceil(lowestHz / level.stepHz)),
    to: Math.min(level.bins - 4, Math.floor(highestHz / level.stepHz)),
  }));
  // Bonferroni over every bin of every level.
  const tests = Math.log(
    Math.max(
      1,
      ranges.reduce((sum, { from, to }) => sum + Math.max(0, to - from + 1), 0),
    ),
  );
  const found: Candidate[] = [];
  views.forEach((view, v) => {
    const { t } = view.whitened;
    const { from, to } = ranges[v]!;
    let band = 0;
    let low = 0;
    for (let k = from; k <= to; k++) {
      if (view.whitened.bandSamples[k] !== band) [band, low] = [view.whitened.bandSamples[k]!, 0];
      // What is no higher than a bin of the same band that failed fails too: spares nearly all tails.
      if (!(t[k]! > low && t[k]! > t[k - 1]! && t[k]! >= t[k + 1]!)) continue;
      const logSmooth = smoothLogTail(axes, view, k) + tests;
      if (logSmooth > Math.log(falseAlarm)) {
        low = t[k]!;
        continue;
      }
      found.push({
        view,
        bin: k,
        frequencyHz: k * view.level.stepHz,
        logSmooth,
        logResonant: 0,
        logAlarm: 0,
      });
    }
  });
  return found;
};

/** The candidate with the probability that a resonance did it filled in. */
export const againstResonance = (axes: number, candidate: Candidate, taken: Uint8Array): Candidate => {
  const { level, whitened } = candidate.view;
  const logTail = resonantLogTail(axes, level, whitened, candidate.bin, taken);
  const logResonant = logTail + Math.log(STEEP_PLACES);
  return { ...candidate, logResonant, logAlarm: Math.min(0, Math.max(candidate.logSmooth, logResonant)) };
};

/** Inverse noise density about a candidate, in the scale of the analytic signal (four times a two-sided density). */
export const noiseWeights = ({ view: { level, whitened }, bin }: Candidate): Hermitian =>
  whitened.whitenerAt(bin).map((w) => (w * level.samplingRateHz) / 4);
