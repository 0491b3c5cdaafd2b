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
  /**
   * Log density of (engine scale − road scale); null where the two are independent.
   * The tie says how surely the gears join them, and how far a converter or clutch may slip.
   */
  readonly tie: ((gap: number) => number) | null;
}

/** Fine enough that a strong line's uncertainty (some 1e-4 of its frequency) spans a grid step. */
export const SCALE_STEP = 1e-4;

export const scaleAt = (axis: ScaleAxis, index: number): number => axis.start + index * axis.step;

/** An axis of one point: the group is not there, or nothing is known that could be scaled. */
export const SINGLE_POINT: ScaleAxis = { start: 0, step: SCALE_STEP, logPrior: new Float64Array(1) };

/** Builds an axis from a log density over [from, to]. */
export const axisFrom = (from: number, to: number, logDensity: (scale: number) => number): ScaleAxis => {
  const size = Math.max(1, Math.round((to - from) / SCALE_STEP) + 1);
  const logPrior = Float64Array.from({ length: size }, (_, i) => logDensity(from + i * SCALE_STEP));
  return { start: from, step: SCALE_STEP, logPrior };
};

/** A normal prior out to five standard deviations. */
export const normalAxis = (sd: number): ScaleAxis => {
  const width = Math.max(5 * sd, 20 * SCALE_STEP);
  return axisFrom(-width, width, (s) => -0.5 * (s / sd) ** 2);
};

const CONVERTER_LOCKED = 0.75;
const LOCKED_SD = 1e-3;
const MEAN_SLIP = 0.025;
/** Some other gear than stated, or a clutch not closed: anything goes. Keeps a wrong entry from deciding. */
const TIE_BROKEN = 0.02;
const BROKEN_RANGE = 0.5;

/**
 * Log density of the engine's scale over the road's when the engine speed was computed through the gear: locked (gears
 * join them exactly) or slipping one way only, the engine faster. Values are judgement.
 */
export const gearTie =
  (converter: boolean) =>
  (gap: number): number => {
    const lockedShare = converter ? CONVERTER_LOCKED : 0.97;
    const locked = Math.exp(-0.5 * (gap / LOCKED_SD) ** 2) / (LOCKED_SD * Math.sqrt(2 * Math.PI));
    const slipping = gap > 0 ? Math.exp(-gap / MEAN_SLIP) / MEAN_SLIP : 0;
    const either = lockedShare * locked + (1 - lockedShare) * slipping;
    return Math.log((1 - TIE_BROKEN) * either + TIE_BROKEN / BROKEN_RANGE);
  };
