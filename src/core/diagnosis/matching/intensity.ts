/**
 * How strongly each origin would produce a tone like the one seen: densities per Hz and per unit of ln(level), times
 * the likelihood of how the tone moved. Tones are taken as a marked point process; an origin adds its density to the total at the tone.
 */
import { seenProbability, type DetectionLimit } from '../origins/absence.ts';
import { FIXED_TONE, ROAD_RESONANCE, shareDensity, UNLISTED_TONE, type LevelPrior } from '../origins/levels.ts';
import { targetsOf, type Origin, type Target } from '../origins/origin.ts';
import { foldWeight, keptOf, unlistedFoldWeight } from './fold-weights.ts';
import { steadyDensity, type SteadyTone } from './steady-tones.ts';
import { isOnTrack, type Histories } from '../origins/motion-model.ts';
import {
  anyWeight,
  backgroundWeight,
  movingWeight,
  ownWeight,
  resonanceWeight,
  type Following,
} from './motion-weights.ts';
import type { Tone } from '../origins/tone.ts';
import { amongTwins } from './twins.ts';
import { scaleAt, type ScaleAxis } from '../origins/scale-prior.ts';

/** Density of one origin at one tone over a stretch of the scale axis. */
export interface Support {
  readonly origin: Origin;
  readonly image: boolean;
  readonly first: number;
  readonly values: Float64Array;
}

/** Densities at one tone of the origins that move with neither scale. */
export interface Background {
  /** A tone from something that turns or hums at a rate of its own: fan, pump, exhaust note. */
  readonly fixed: number;
  /** A line of something that moves with the speed and is not in the list. */
  readonly unlisted: number;
  /** A resonance that the road shakes. */
  readonly resonance: number;
  /** No tone at all: noise that happens to peak here. */
  readonly noise: number;
}

export const totalBackground = (b: Background): number => b.fixed + b.unlisted + b.resonance + b.noise;

/** Image of an order through a sensor or logger without (or with) an anti-alias filter: how often it gets through. */
const IMAGE_PRESENCE = 0.5;
/** ln of the number of places a peak search looks at, some ten thousand. */
const NOISE_LOG_TESTS = 9;
const normalDensity = (x: number, sd: number): number => Math.exp(-0.5 * (x / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));

/** @param kept share of the line's level that shows */
const levelDensity = (levels: LevelPrior, { peak }: Tone, kept: number): number => {
  const relativeSd = Math.min(1, peak.amplitudeSdMps2 / peak.amplitudeMps2);
  const amplitudeMps2 = peak.amplitudeMps2 / kept;
  return shareDensity(levels.normal, amplitudeMps2, relativeSd) + shareDensity(levels.fault, amplitudeMps2, relativeSd);
};

/** Probability that the tone is a line, kept off 0 and 1: a shape alone never settles it. */
const lineShare = (tone: Tone): number => Math.min(0.995, Math.max(0.003, tone.peak.lineProbability));

/** What a track of nothing gathers looks like a line because that was looked for: its odds are so much less. Judgment. */
const GATHERED_ODDS = 0.1;

const lineShareIf = (tone: Tone, isGathered: boolean): number => {
  const share = lineShare(tone);
  if (!isGathered) return share;
  const odds = (GATHERED_ODDS * share) / (1 - share);
  return odds / (1 + odds);
};

/**
 * Density of fixed tones, unlisted lines, road-shaken resonances and noise at a tone.
 * @param tones all of the run's
 */
export const backgroundAt = (
  tone: Tone,
  tones: readonly Tone[],
  samplingRateHz: number,
  histories: Histories,
  steady: readonly SteadyTone[],
  { factor, held, ofNothing }: Pick<Following, 'factor' | 'held' | 'ofNothing'>,
): Background => {
  const { frequencyHz, amplitudeMps2, smoothAlarmProbability } = tone.peak;
  // Spread evenly over ln(f) from 3 Hz to half the rate.
  const perHz =
    backgroundWeight(tone, tones, histories, factor) / (frequencyHz * Math.max(1, Math.log(samplingRateHz / 2 / 3)));
  const line = lineShareIf(tone, ofNothing && isOnTrack(tone, histories));
  const own = ownWeight(tone, tones, histories);
  const anyhow = anyWeight(tone, histories, held);
  const folded = unlistedFoldWeight(tone);
  // Expected number of noise peaks as high as this, and its density per unit of ln(level): ln(tests/number) twice over.
  // Of smooth noise: what resonances make is weighed by itself.
  const chance = -Math.log1p(-Math.min(0.999, smoothAlarmProbability));
  const noise = chance * 2 * (NOISE_LOG_TESTS - Math.log(Math.max(chance, 1e-12)));
  return {
    fixed: (perHz * shareDensity(FIXED_TONE, amplitudeMps2) + steadyDensity(tone, steady)) * line * own * folded,
    unlisted: perHz * shareDensity(UNLISTED_TONE, amplitudeMps2) * line * anyhow * folded,
    resonance:
      perHz *
      shareDensity(ROAD_RESONANCE, amplitudeMps2) *
      (1 - line) *
      resonanceWeight(tone, histories) *
      foldWeight(tone, 0),
    noise: perHz * noise * anyhow,
  };
};

const isOfOneWheel = ({ line }: Origin): boolean => line.part === 'tire' || line.part === 'half-shaft';

const supportOf = (origin: Origin, target: Target, tone: Tone, axis: ScaleAxis): Support | null => {
  const { frequencySdHz } = tone.peak;
  const centre = Math.log(target.trueHz / origin.trueHz);
  const reach = Math.max(
    ...origin.place.map((p) => Math.abs(p.mean) + 5 * Math.hypot(p.sd, frequencySdHz / target.trueHz)),
  );
  const size = axis.logPrior.length;
  const first = Math.max(0, Math.ceil((centre - reach - axis.start) / axis.step));
  const last = Math.min(size - 1, Math.floor((centre + reach - axis.start) / axis.step));
  if (last < first) return null;
  // A scale known to a single point stands for a neighbourhood as wide as the grid's step.
  const values = new Float64Array(last - first + 1);
  for (let i = first; i <= last; i++) {
    const expectedHz = origin.trueHz * Math.exp(scaleAt(axis, i));
    let density = 0;
    for (const share of origin.place) {
      const sd = Math.hypot(share.sd * expectedHz, frequencySdHz, (axis.step * expectedHz) / 2);
      density += share.weight * normalDensity(target.trueHz - expectedHz * (1 + share.mean), sd);
    }
    values[i - first] = density;
  }
  return { origin, image: target.image, first, values };
};

/**
 * All origins of one group that could have made the tone, with their densities over the group's scale.
 * @param twins for each origin those that turn in the same ratio, see twins.ts
 */
export const supportsOf = (
  origins: readonly Origin[],
  tone: Tone,
  axis: ScaleAxis,
  limit: DetectionLimit,
  histories: Histories,
  following: Following,
  twins: ReadonlyMap<Origin, readonly Origin[]>,
): readonly Support[] => {
  const { samplingRateHz } = limit;
  const targets = targetsOf(tone.peak.frequencyHz, samplingRateHz);
  const supports: Support[] = [];
  const share = lineShare(tone);
  for (const origin of origins) {
    for (const target of targets) {
      const support = supportOf(origin, target, tone, axis);
      if (!support) continue;
      const levelOf = (one: Origin): number =>
        (levelDensity(one.levels, tone, keptOf(tone, target.fold)) * share) /
        (1 - seenProbability(one, target.trueHz, limit));
      const level = amongTwins(levelOf(origin), (twins.get(origin) ?? []).map(levelOf));
      const moving = movingWeight(tone, histories, following, target.direction * target.trueHz, isOfOneWheel(origin));
      const strength = level * moving * foldWeight(tone, target.fold) * (target.image ? IMAGE_PRESENCE : 1);
      supports.push({ ...support, values: support.values.map((density) => strength * density) });
    }
  }
  return supports;
};
