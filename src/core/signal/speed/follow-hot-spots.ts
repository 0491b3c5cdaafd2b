/** Lines found where energy stands out of the spectrum, each tried as the one that shows how the speed moved. */
import { toBlocks, type Blocks } from '../prepare/blocks.ts';
import { makeLevels, noiseWeights, smoothCandidates, type Candidate } from '../peaks/candidates.ts';
import { STEADY, type SpeedTrack } from './equal-angle.ts';
import { followLines } from './follow-lines.ts';
import { RATE_PER_S, type LineToFollow } from './frames.ts';
import { sharpnessOf, type Sharpness } from './sharpness.ts';
import type { Prepared } from '../spectra/spectrum.ts';
import { makeZoom, type Band, type Zoom } from '../peaks/zoom.ts';

/** Hot spots tried as lines to follow: the strongest, and those that stand out most from what is beside them. */
const MOST_STRONG = 4;
const MOST_SPOTS = 8;
/** What is beside a spot: this far from it, relative. A cruise moves a line less, a hump of the road is wider. */
const BESIDE_FROM = 0.025;
const BESIDE_TO = 0.06;
const LEAST_BESIDE_BINS = 3;
/** Each spot is followed within this share of the greatest shift first: a weak line is lost where it may go far. */
const REACHES = [1 / 3, 1];
const MOST_FOLLOWED = 6;
/** A followed line must gain this share of its likelihood, or be as steady as before. */
const LEAST_SHARE = 0.05;

interface Spot extends LineToFollow {
  readonly bands: readonly Band[];
  readonly steady: Sharpness;
}

const reachOf = (shift: number, hz: number): number => hz * shift + 0.1;

/** Mean height to both sides of a candidate, where a line that moves with the speed would not reach. */
const besideOf = ({ view: { whitened }, bin }: Candidate): number => {
  const near = Math.max(2, Math.round(BESIDE_FROM * bin));
  const far = Math.max(near + LEAST_BESIDE_BINS, Math.round(BESIDE_TO * bin));
  let sum = 0;
  let count = 0;
  for (let d = near; d <= far; d++) {
    for (const k of [bin - d, bin + d]) {
      const height = whitened.t[k] ?? 0;
      if (height > 0) [sum, count] = [sum + height, count + 1];
    }
  }
  return count > 0 ? sum / count : 1;
};

/** Places in the clock's spectrum where energy stands out of the noise, or of what is beside it, most first. */
const hotSpots = (blocks: Blocks, zoom: Zoom, lowestHz: number, highestHz: number, shift: number): Spot[] => {
  const views = makeLevels(blocks, lowestHz, highestHz);
  const found = smoothCandidates(blocks.axisCount, views, lowestHz, highestHz, 0.01).map((candidate) => {
    const { t, averages } = candidate.view.whitened;
    const over = (floor: number): number => (t[candidate.bin]! / floor - 1) * averages * blocks.axisCount;
    return { candidate, strength: over(1), contrast: over(Math.max(1, besideOf(candidate))) };
  });
  const spots: Spot[] = [];
  const take = (candidates: typeof found, most: number): void => {
    for (const { candidate } of candidates) {
      if (spots.length >= most) return;
      const hz = candidate.frequencyHz;
      if (spots.some((spot) => Math.abs(spot.frequencyHz - hz) < Math.max(0.4, (shift + 0.01) * hz))) continue;
      const whitener = noiseWeights(candidate);
      const bands = Array.from({ length: zoom.blocks }, (_, b) => zoom.band(b, hz, (hz * shift + 1) / 0.75));
      const line = { frequencyHz: hz, whitener };
      spots.push({ ...line, bands, steady: sharpnessOf(line, bands, STEADY, reachOf(shift, hz)) });
    }
  };
  take(
    found.toSorted((a, b) => b.strength - a.strength),
    MOST_STRONG,
  );
  take(
    found.toSorted((a, b) => b.contrast - a.contrast),
    MOST_SPOTS,
  );
  return spots;
};

export interface Followed {
  readonly track: SpeedTrack;
  readonly gain: number;
  readonly lines: readonly LineToFollow[];
}

/** How much the lines gain that a track makes sharper; those it blurs stand still and do not count. */
const judge = (spots: readonly Spot[], track: SpeedTrack, shift: number): Followed => {
  let gain = 0;
  const lines: LineToFollow[] = [];
  for (const spot of spots) {
    const { logLikelihood, energy, frequencyHz } = sharpnessOf(
      spot,
      spot.bands,
      track,
      reachOf(shift / 3, spot.frequencyHz),
    );
    // Both ways: a steady line gains nothing by another reading of the noise beside it.
    const own = Math.min(logLikelihood - spot.steady.logLikelihood, energy - spot.steady.energy);
    if (own > 2 + LEAST_SHARE * spot.steady.logLikelihood) {
      gain += own;
      lines.push({ frequencyHz, whitener: spot.whitener });
    }
  }
  return { track, gain, lines };
};

/** True where the path has run away from what it may be off by. */
const strayed = (track: SpeedTrack, shift: number): boolean =>
  track.relative.some((r) => Math.abs(r - 1) > 1.3 * shift);

/** A line this much sharper with the start's own movement put back stands still on the clock. */
const STANDS_STILL = 1.5;

/**
 * The best track that starts from a steady one and is off by at most `shift`.
 * @param undone the track that would bring back the clock, where the recording has been made even by a first track
 */
export const followHotSpots = (
  prepared: Prepared,
  lowestHz: number,
  highestHz: number,
  shift: number,
  undone: SpeedTrack | null,
  ratePerS = RATE_PER_S,
): Followed => {
  const blocks = toBlocks(prepared, highestHz);
  const none: Followed = { track: STEADY, gain: 0, lines: [] };
  if (blocks.longest / blocks.samplingRateHz < 4) return none;
  const zoom = makeZoom(blocks);
  const spots = hotSpots(blocks, zoom, lowestHz, highestHz, shift).filter((spot) => {
    if (!undone) return true;
    const still = sharpnessOf(spot, spot.bands, undone, reachOf(shift, spot.frequencyHz));
    return still.logLikelihood < STANDS_STILL * spot.steady.logLikelihood;
  });
  let best = none;
  for (const spot of spots) {
    for (const share of REACHES) {
      const track = followLines(zoom, blocks, [spot], STEADY, share * shift, ratePerS);
      if (strayed(track, shift)) continue;
      const judged = judge(spots, track, shift);
      if (judged.gain > best.gain) best = judged;
    }
  }
  // What moved along is followed together, which steadies the weaker lines.
  for (let round = 0; round < 2 && best.lines.length > 1; round++) {
    const lines = best.lines.slice(0, MOST_FOLLOWED);
    const track = followLines(zoom, blocks, lines, best.track, shift / 3, ratePerS);
    const judged = judge(spots, track, shift);
    if (strayed(track, shift) || judged.gain <= best.gain) break;
    best = judged;
  }
  return best;
};
