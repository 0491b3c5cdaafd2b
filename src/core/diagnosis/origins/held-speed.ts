/**
 * Where no history of the speed was found, the tones' widths still tell of it: an order is as wide as the speed's wander
 * makes it. A sharp tone is an order only if the speed was held that well, which is rare, and then all orders are sharp
 * alike: so this is asked once for the run, not tone by tone.
 */
import type { Peak } from '../../signal/peaks/peak.ts';
import type { Tone } from './tone.ts';
import { ownBelow, vehicleBelow } from './wander.ts';

/** How far the speed wandered: root mean square of its ln, between these. */
export interface SpeedHeld {
  readonly from: number;
  readonly to: number;
}

/** Up to this many times the least width a tone counts as sharp. */
const SHARP = 1.3;
/**
 * A sharp tone may have been spread by this share of the least width all the same: a slow wander leaves the half height of
 * a line as it is until it is near that (its power goes into the skirts). Judgment.
 */
const HIDDEN = 1;
/**
 * Phases are not asked for less than this, as a share of the frequency: rollers, and cruise control on a flat empty road,
 * hold a speed as well, and a tone alone at the very place of an order is more often one of these. Judgment.
 */
const LEAST_WANDER = 3e-4;
/** Full width at half height over standard deviation of a bell curve: 2·√(2·ln 2). */
const FULL_WIDTH = 2.355;
/** So small a wander of its phases, as a share of the least width, makes no tone wider. Judgment. */
const STEADY_PHASES = 0.3;
/** A width says how far the speed moved only within this factor. */
const ROUGHLY = 2;
/** Tones that may set the limit: surely there, surely lines. */
const SURE_LINE = 0.9;
const SURE_THERE = 1e-4;
/** Share of tones that are wider than their wander makes them: level pulsing, a beat, two tones in one. Judgment. */
const SPOILT_WIDE = 0.1;
/** Narrower hardly ever: only where what moved was heard for a short, steady part of the recording. Judgment. */
const SPOILT_SHARP = 3e-5;
/** Of tones hardly above the noise: they are found where noise gathers them in one place. Judgment. */
const WEAK_SHARP = 0.3;

/** Its phases may tell a tone as steady as a sharp one: then what widens it is its level, which comes and goes. */
const isSharp = ({ widthHz, limitWidthHz, wanderHz = Infinity }: Peak): boolean =>
  widthHz < SHARP * limitWidthHz || FULL_WIDTH * wanderHz < STEADY_PHASES * limitWidthHz;

/**
 * The width that the wander of a sharp tone would make, were it shown as one: what its half height may hide, or its phases
 * where they leave less.
 */
const hiddenWidth = ({ wanderHz = Infinity, widthHz, limitWidthHz }: Peak, leastHz: number): number =>
  Math.min(
    Math.hypot(spreadOf(widthHz, limitWidthHz), HIDDEN * limitWidthHz),
    FULL_WIDTH * Math.max(wanderHz, leastHz),
  );

const spreadOf = (widthHz: number, limitWidthHz: number): number =>
  Math.sqrt(Math.max(0, widthHz ** 2 - limitWidthHz ** 2));

/** The wander (ln) that a tone's width tells of, if it moves by `slopeHz` per unit of ln speed: less, or more than this. */
const wanderAt = (peak: Peak, slopeHz: number): number => {
  const told = isSharp(peak)
    ? hiddenWidth(peak, LEAST_WANDER * peak.frequencyHz)
    : spreadOf(peak.widthHz, peak.limitWidthHz) / ROUGHLY;
  return told / (FULL_WIDTH * Math.max(1e-9, Math.abs(slopeHz)));
};

/** How closely (share of its frequency, at most) a sharp tone held its frequency; null of one that is not sharp. */
export const heldWithin = (peak: Peak): number | null => (isSharp(peak) ? wanderAt(peak, peak.frequencyHz) : null);

/** How closely (share of its frequency, at most) a tone stayed while others moved: all that its phases tell counts then. */
export const stayedWithin = (peak: Peak): number =>
  (isSharp(peak) ? hiddenWidth(peak, 0) / FULL_WIDTH : peak.limitWidthHz / 2) / peak.frequencyHz;

/** Wanders are told apart at these multiples of the one from which on the sharpest sure tone would spread. */
const EDGES = [0, 1, 3, 10, Infinity] as const;

/** The cases of the run, the first one of a speed that no order could spread by; none where no tone is sharp. */
export const heldCases = (tones: readonly Tone[]): readonly { readonly held: SpeedHeld; readonly prior: number }[] => {
  const limits = tones
    .filter(({ peak }) => isSharp(peak) && peak.lineProbability > SURE_LINE && peak.falseAlarmProbability < SURE_THERE)
    .map(({ peak }) => wanderAt(peak, peak.frequencyHz));
  if (limits.length === 0) return [];
  const within = Math.min(...limits);
  return EDGES.slice(1).map((edge, k) => {
    const held = { from: EDGES[k]! * within, to: edge * within };
    return { held, prior: vehicleBelow(held.to) - vehicleBelow(held.from) };
  });
};

/** Likelihood (1 at most) of an order's width, given how the speed was held. */
export const orderWidthWeight = (peak: Peak, slopeHz: number, { from, to }: SpeedHeld): number => {
  const wander = Math.min(to, Math.max(from, wanderAt(peak, slopeHz)));
  const share = vehicleBelow(to) - vehicleBelow(from) || 1;
  // Given the case, how often the wander is less than what the tone's width tells.
  const less = (vehicleBelow(wander) - vehicleBelow(from)) / share;
  if (!isSharp(peak)) return Math.max(SPOILT_WIDE, 1 - less);
  return Math.max(peak.smoothAlarmProbability < SURE_THERE ? SPOILT_SHARP : WEAK_SHARP, less);
};

/** The same of a tone that has a rate of its own. */
export const ownWidthWeight = (peak: Peak): number => {
  const less = ownBelow(wanderAt(peak, peak.frequencyHz));
  return isSharp(peak) ? less : Math.max(SPOILT_WIDE, 1 - less);
};
