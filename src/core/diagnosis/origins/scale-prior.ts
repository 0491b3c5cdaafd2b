/** What is known of the two speed scales before the recording is looked at, on a grid of log scale. */

/** An even grid of ln(scale) with the log prior density at each point (up to a constant). */
export interface ScaleAxis {
  readonly start: number;
  readonly step: number;
  readonly logPrior: Float64Array;
}

/** The two scales and what ties them. */
export interface ScalePrior {
  readonly road: ScaleAxis;
  readonly engine: ScaleAxis;
  /** What ties the engine's scale to the road's; null where the two are independent. */
  readonly tie: ScaleTie | null;
}

/**
 * How surely the gears join engine and road, and how far a converter or clutch may slip: the log density of
 * (engine scale − road scale) where it lies within [from, to]; beyond that it is impossible.
 */
export interface ScaleTie {
  readonly from: number;
  readonly to: number;
  readonly logDensity: (gap: number) => number;
  /** The same given that it slips, or that both were seen to move together; absent where nothing can slip. */
  readonly slipping?: ScaleTie;
  readonly together?: ScaleTie;
}

/** Fine enough that a strong line's uncertainty (some 1e-4 of its frequency) spans a grid step. */
const SCALE_STEP = 1e-4;

export const scaleAt = (axis: ScaleAxis, index: number): number => axis.start + index * axis.step;

/** An axis of one point: the group is not there, or nothing is known that could be scaled. */
export const SINGLE_POINT: ScaleAxis = { start: 0, step: SCALE_STEP, logPrior: new Float64Array(1) };

/** Builds an axis from a log density over [from, to]. */
export const axisFrom = (from: number, to: number, logDensity: (scale: number) => number): ScaleAxis => {
  const size = Math.max(1, Math.round((to - from) / SCALE_STEP) + 1);
  const logPrior = Float64Array.from({ length: size }, (_, i) => logDensity(from + i * SCALE_STEP));
  return { start: from, step: SCALE_STEP, logPrior };
};

/** Mean and standard deviation of ln(scale). */
export interface Moments {
  readonly mean: number;
  readonly sd: number;
}

/** @param weight of each point of the axis; adds up to 1 */
export const momentsOf = (axis: ScaleAxis, weight: Float64Array): Moments => {
  let mean = 0;
  for (let i = 0; i < weight.length; i++) mean += weight[i]! * scaleAt(axis, i);
  let variance = 0;
  for (let i = 0; i < weight.length; i++) variance += weight[i]! * (scaleAt(axis, i) - mean) ** 2;
  return { mean, sd: Math.sqrt(variance + axis.step ** 2 / 12) };
};

/** The same before the recording is looked at. */
export const priorMomentsOf = (axis: ScaleAxis): Moments => {
  const density = axis.logPrior.map(Math.exp);
  const total = density.reduce((sum, one) => sum + one, 0);
  return momentsOf(
    axis,
    density.map((one) => one / total),
  );
};

const CONVERTER_LOCKED = 0.75;
/** A slipping converter lets the engine's speed wander by itself: moving together, they are most likely locked. */
const TOGETHER_LOCKED = 0.95;
/** Nothing slips: what is left is the two groups' own wander within a recording. */
const LOCKED_SD = 5e-4;
const MEAN_SLIP = 0.02;
/** Slips beyond this do not happen in a vehicle that drives. */
const MOST_SLIP = 0.12;

const slipDensity = (gap: number): number => (gap > 0 ? Math.exp(-gap / MEAN_SLIP) / MEAN_SLIP : 1e-6);

const tieOf = (lockedShare: number, to: number): ScaleTie => ({
  from: -5 * LOCKED_SD,
  to,
  logDensity: (gap) => {
    const lockedDensity = Math.exp(-0.5 * (gap / LOCKED_SD) ** 2) / (LOCKED_SD * Math.sqrt(2 * Math.PI));
    return Math.log(lockedShare * lockedDensity + (1 - lockedShare) * slipDensity(gap));
  },
});

/**
 * The engine's scale over the road's when the engine speed was computed through the gear: locked (gears join them
 * exactly) or slipping one way only, the engine faster. Values are judgment.
 */
export const gearTie = (converter: boolean): ScaleTie =>
  converter
    ? {
        ...tieOf(CONVERTER_LOCKED, MOST_SLIP),
        slipping: { from: 0, to: MOST_SLIP, logDensity: (gap) => Math.log(slipDensity(gap)) },
        together: tieOf(TOGETHER_LOCKED, MOST_SLIP),
      }
    : tieOf(0.99, 5 * LOCKED_SD);

const withTie = (prior: ScalePrior, tie: ScaleTie | undefined): ScalePrior => (tie ? { ...prior, tie } : prior);

/** The prior where engine and road were seen to move apart: something slips. */
export const unlocked = (prior: ScalePrior): ScalePrior => withTie(prior, prior.tie?.slipping);

/** The prior where engine and road were seen to move together. */
export const locked = (prior: ScalePrior): ScalePrior => withTie(prior, prior.tie?.together);
