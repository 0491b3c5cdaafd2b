/**
 * How strongly each origin would produce a tone like the one seen: densities per Hz, per unit of ln(level) and per Hz of
 * slope. Tones are taken as a marked point process; an origin adds its density to the total at the tone.
 */
import { seenProbability, type DetectionLimit } from './absence.ts';
import { FIXED_TONE, ROAD_RESONANCE, shareDensity, UNLISTED_TONE, type LevelPrior } from './levels.ts';
import { targetsOf, type Origin, type Target } from './origin.ts';
import { steadyDensity, type SteadyTone } from './steady-tones.ts';
import type { Slope, Tone } from './tone.ts';
import { scaleAt, type ScaleAxis } from './scale-prior.ts';

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
/** Share of tones whose slope is spoilt (level pulsing, a beat, a wrong track), and its spread over frequency. */
const SPOILT_SLOPE = 0.03;
const SPOILT_SPREAD = 1.5;
/** A slope is not trusted closer than this share of the frequency it is about. */
const SLOPE_FLOOR = 0.04;

const normalDensity = (x: number, sd: number): number => Math.exp(-0.5 * (x / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));

/** Likelihood of the measured slope where the origin would move by `expectedHz`; 1 where no slope was measured. */
const slopeDensity = (slope: Slope | null, expectedHz: number, frequencyHz: number): number => {
  if (!slope) return 1;
  const sd = Math.hypot(slope.sdHz, SLOPE_FLOOR * Math.max(frequencyHz, Math.abs(expectedHz)));
  const spoilt = normalDensity(slope.hz, Math.hypot(sd, SPOILT_SPREAD * frequencyHz));
  return (1 - SPOILT_SLOPE) * normalDensity(slope.hz - expectedHz, sd) + SPOILT_SLOPE * spoilt;
};

const slopeFor = (origin: Origin, tone: Tone, engineTied: boolean): Slope | null =>
  origin.group === 'engine' && !engineTied ? tone.engineSlope : tone.roadSlope;

const levelDensity = (levels: LevelPrior, tone: Tone): number => {
  const { amplitudeMps2, amplitudeSdMps2 } = tone.peak;
  const relativeSd = Math.min(1, amplitudeSdMps2 / amplitudeMps2);
  return shareDensity(levels.normal, amplitudeMps2, relativeSd) + shareDensity(levels.fault, amplitudeMps2, relativeSd);
};

/** Probability that the tone is a line, kept off 0 and 1: a shape alone never settles it. */
const lineShare = (tone: Tone): number => Math.min(0.995, Math.max(0.003, tone.peak.lineProbability));

/** Density of fixed tones, unknown lines, road-shaken resonances and noise at a tone. */
export const backgroundAt = (tone: Tone, samplingRateHz: number, steady: readonly SteadyTone[]): Background => {
  const { frequencyHz, amplitudeMps2, falseAlarmProbability } = tone.peak;
  // Spread evenly over ln(f) from 3 Hz to half the rate.
  const perHz = 1 / (frequencyHz * Math.max(1, Math.log(samplingRateHz / 2 / 3)));
  const line = lineShare(tone);
  const still = slopeDensity(tone.roadSlope, 0, frequencyHz);
  const anyhow = 0.5 * still + 0.5 * slopeDensity(tone.roadSlope, frequencyHz, frequencyHz);
  return {
    fixed: (perHz * shareDensity(FIXED_TONE, amplitudeMps2) + steadyDensity(tone, steady)) * line * still,
    unlisted: perHz * shareDensity(UNLISTED_TONE, amplitudeMps2) * line * anyhow,
    resonance: perHz * shareDensity(ROAD_RESONANCE, amplitudeMps2) * (1 - line) * still,
    noise: 2 * perHz * Math.min(1, falseAlarmProbability) * anyhow,
  };
};

const supportOf = (origin: Origin, target: Target, tone: Tone, axis: ScaleAxis, strength: number): Support | null => {
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
    values[i - first] = strength * density;
  }
  return { origin, image: target.image, first, values };
};

/** All origins of one group that could have made the tone, with their densities over the group's scale. */
export const supportsOf = (
  origins: readonly Origin[],
  tone: Tone,
  axis: ScaleAxis,
  limit: DetectionLimit,
  engineTied: boolean,
): readonly Support[] => {
  const { samplingRateHz } = limit;
  const targets = targetsOf(tone.peak.frequencyHz, samplingRateHz);
  const supports: Support[] = [];
  for (const origin of origins) {
    const missed = 1 - seenProbability(origin, tone.peak.frequencyHz, limit);
    const level = (levelDensity(origin.levels, tone) * lineShare(tone)) / missed;
    for (const target of targets) {
      const expectedSlope = target.direction * target.trueHz;
      const slope = slopeDensity(slopeFor(origin, tone, engineTied), expectedSlope, tone.peak.frequencyHz);
      const strength = level * slope * (target.image ? IMAGE_PRESENCE : 1);
      const support = supportOf(origin, target, tone, axis, strength);
      if (support) supports.push(support);
    }
  }
  return supports;
};
