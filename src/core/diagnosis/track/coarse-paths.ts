/** Coarse histories along the expected lines taken together, and along the strongest smeared tones by themselves. */
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { againstItsMiddle } from './chirp-map.ts';
import type { ChirpPath } from './chirp-path.ts';
import type { TrackSearch } from './track-search.ts';
import { cappedEvidence, growingEvidence } from './line-evidence.ts';
import { trackOfPath } from './path-track.ts';
import type { Band } from './sharpness.ts';
import { CRUISE, follow, lookAt, lookWith, RAMP, SLOW_RAMP, WEAK_RAMP, type Stage } from './stages.ts';

/** Tones followed by themselves, and the power over noise they need. */
const MOST_TONES = 3;
const LEAST_TONE = 40;
/** A tone with more than this share of its power beside its top is smeared. */
const SMEARED = 0.05;
/** A tone's own speed may wander this far (ln). */
const TONE_STAGE: Stage = { ...CRUISE, search: { ...CRUISE.search, from: -0.035, to: 0.035 } };
/** The image of an order above half the rate moves by the order's hertz: many percent of its own. */
const IMAGE_STAGE: Stage = {
  ...RAMP,
  slopes: 10,
  steepestPerS: 0.064,
  search: { ...RAMP.search, from: -0.3, to: 0.3, slopeSd: 0.025, slopeChangeSd: 8e-3 },
};
/** Spread (ln) of a ramp's speeds about the stated one. */
const RAMP_SPREAD = 0.3;

/** True of the strongest of a hump's bands. */
const isTop = (bands: readonly Band[], at: number): boolean =>
  [at - 1, at + 1].every((beside) => (bands[beside]?.excess ?? 0) <= bands[at]!.excess);

/** Strong tones that do not stand sharply: each may show how its part's speed ran. */
const smearedTones = (bands: readonly Band[]): readonly number[] =>
  bands
    .filter(({ excess, spread }, i) => excess > LEAST_TONE && spread > SMEARED * excess && isTop(bands, i))
    .sort((a, b) => b.excess - a.excess)
    .slice(0, MOST_TONES)
    .map((band) => band.frequencyHz);

const ofRamp = (logScale: number): number => -0.5 * (logScale / RAMP_SPREAD) ** 2;

/** None of a recording too short for them. */
export const coarsePaths = (
  prepared: Prepared,
  { baseHz, multiples, tiedMultiples, logPrior }: TrackSearch,
  steady: readonly Band[],
): readonly SpeedTrack[] => {
  const map = lookAt(prepared, CRUISE);
  if (!map) return [];
  const cruise = lookWith(map, cappedEvidence);
  const rate = prepared.samplingRateHz;
  const linesOf = (ratios: readonly number[] | null): readonly number[] =>
    baseHz === null ? [] : (ratios ?? []).map((multiple) => multiple * baseHz);
  const linesHz = linesOf(multiples);
  const tiedHz = linesOf(tiedMultiples);
  const paths: ChirpPath[] = [];
  if (linesHz.length > 0) {
    paths.push(follow(cruise, CRUISE, linesHz, rate, logPrior));
    const wide = lookAt(prepared, RAMP);
    if (tiedHz.length > 0) paths.push(follow(cruise, CRUISE, tiedHz, rate, logPrior));
    if (wide) paths.push(follow(lookWith(wide, cappedEvidence), RAMP, linesHz, rate, ofRamp));
    paths.push(follow(cruise, SLOW_RAMP, linesHz, rate, ofRamp));
  }
  const tones = smearedTones(steady);
  if (tones.length > 0) {
    const growing = lookWith(map, growingEvidence);
    for (const hz of tones) paths.push(follow(growing, TONE_STAGE, [hz], rate, () => 0));
  }
  return paths.map((path) => trackOfPath(path, prepared));
};

/** Sweeps along one expected line each: a weak fault is the only line to be seen, and all the others add but noise to it. */
export const singleSweeps = (prepared: Prepared, { baseHz, multiples }: TrackSearch): readonly SpeedTrack[] => {
  const rate = prepared.samplingRateHz;
  const along = (stage: Stage): readonly ChirpPath[] => {
    const map = baseHz === null ? null : lookAt(prepared, stage);
    if (baseHz === null || !map) return [];
    const look = lookWith(againstItsMiddle(map), cappedEvidence);
    return multiples.map((multiple) => follow(look, stage, [multiple * baseHz], rate, ofRamp));
  };
  return [...along(SLOW_RAMP), ...along(WEAK_RAMP)].map((path) => trackOfPath(path, prepared));
};

/** Paths of tones that may be images of lines above half the rate. */
export const imagePaths = (
  prepared: Prepared,
  { imageFactors }: TrackSearch,
  steady: readonly Band[],
): readonly SpeedTrack[] => {
  const tones = smearedTones(steady);
  const wide = imageFactors(tones).length > 0 ? lookAt(prepared, IMAGE_STAGE) : null;
  if (!wide) return [];
  const growing = lookWith(wide, growingEvidence);
  return tones.map((hz) =>
    trackOfPath(
      follow(growing, IMAGE_STAGE, [hz], prepared.samplingRateHz, () => 0),
      prepared,
    ),
  );
};
