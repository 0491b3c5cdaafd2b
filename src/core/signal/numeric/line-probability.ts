/** From the probability of a resonance doing it to the probability that it is a line. */

/** Even odds before the test: peaks that pass for lines are lines or resonances about as often. Judgment. */
const PRIOR_LINE = 0.5;

/**
 * A p-value p speaks against its hypothesis by at most the factor −e·p·ln p (T. Sellke, M. J. Bayarri & J. O. Berger,
 * Calibration of p values, The American Statistician 55(1), 2001).
 * @param logResonant ln of the probability that a resonance reaches so high anywhere
 */
export const lineProbabilityOf = (logResonant: number): number => {
  const logP = Math.min(logResonant, -1);
  const against = Math.exp(1 + logP) * -logP;
  return PRIOR_LINE / (PRIOR_LINE + (1 - PRIOR_LINE) * against);
};
