/**
 * How much of a vibration a seated person feels: frequency weightings of ISO 2631-1:1997, Annex A (parameters also in
 * ISO 8041), as transfer functions. Test values: Table 3 of the standard.
 */

/** Centre of the range of perception thresholds, m/s² peak, Wk-weighted: half of alert people feel it
 * (ISO 2631-1:1997, Annex C: 0.01 … 0.02; figure from memory). Felt level 1 is this. */
export const PERCEPTION_THRESHOLD_MPS2 = 0.015;

interface Weighting {
  /** Corner frequencies, Hz, and resonance of the acceleration-velocity step; f3 = f4 in the standard. */
  readonly cornerHz: number;
  readonly cornerQ: number;
  /** Upward step, or null where the weighting has none. */
  readonly step: {
    readonly lowHz: number;
    readonly lowQ: number;
    readonly highHz: number;
    readonly highQ: number;
  } | null;
}

const VERTICAL: Weighting = {
  cornerHz: 12.5,
  cornerQ: 0.63,
  step: { lowHz: 2.37, lowQ: 0.91, highHz: 3.35, highQ: 0.91 },
};
const HORIZONTAL: Weighting = { cornerHz: 2, cornerQ: 0.63, step: null };
/** Band limits common to both: second-order Butterworth at 0.4 and 100 Hz. */
const BAND_HZ = { low: 0.4, high: 100 };

/** |1 + (1/Q)·jr − r²|, r = f/f0: the quadratic that every factor of the weighting is made of. */
const quadratic = (ratio: number, q: number): number => Math.hypot(1 - ratio * ratio, ratio / q);

const weight = (frequencyHz: number, { cornerHz, cornerQ, step }: Weighting): number => {
  const f = frequencyHz;
  if (!(f > 0)) return 0;
  const highPass = (f / BAND_HZ.low) ** 2 / quadratic(f / BAND_HZ.low, Math.SQRT1_2);
  const lowPass = 1 / quadratic(f / BAND_HZ.high, Math.SQRT1_2);
  const transition = Math.hypot(1, f / cornerHz) / quadratic(f / cornerHz, cornerQ);
  const upward = step
    ? (quadratic(f / step.lowHz, step.lowQ) / quadratic(f / step.highHz, step.highQ)) * (step.lowHz / step.highHz) ** 2
    : 1;
  return highPass * lowPass * transition * upward;
};

/** Wk: vertical at the seat. Dimensionless. 12.5 Hz → 0.902. */
export const weightingVertical = (frequencyHz: number): number => weight(frequencyHz, VERTICAL);

/** Wd: horizontal at the seat. Dimensionless. 12.5 Hz → 0.161. */
export const weightingHorizontal = (frequencyHz: number): number => weight(frequencyHz, HORIZONTAL);

/**
 * Felt level: weighted peak amplitude over the threshold of perception, so that 1 is just felt by half of people.
 * With the direction of gravity known the vertical part is weighted by Wk and the horizontal by Wd, and the two are
 * joined by root-sum-square; unknown, all is weighted by Wk, which above 2.5 Hz is the greater: it errs to the safe side.
 * The recording is taken as if on the seat surface; a sensor on the floor or rail has not passed the seat.
 * @param amplitudeMps2 0-to-peak amplitude over all axes together, m/s²
 * @param verticalShare share of the power along gravity, 0..1, or null where unknown
 */
export const feltLevel = (frequencyHz: number, amplitudeMps2: number, verticalShare: number | null): number => {
  const up = verticalShare ?? 1;
  const vertical = up * weightingVertical(frequencyHz) ** 2;
  const horizontal = (1 - up) * weightingHorizontal(frequencyHz) ** 2;
  return (amplitudeMps2 * Math.sqrt(vertical + horizontal)) / PERCEPTION_THRESHOLD_MPS2;
};
