/** The log-normal distribution in the forms diagnosis needs: density per unit of ln(x), and upper tail. */
import { normalTail } from '../../signal/numeric/distributions.ts';

/**
 * Density of ln(x), per unit of ln: a normal about ln(median).
 * @param spread standard deviation of ln(x)
 */
export const logNormalDensity = (x: number, median: number, spread: number): number => {
  if (x <= 0) return 0;
  const z = Math.log(x / median) / spread;
  return Math.exp(-0.5 * z * z) / (spread * Math.sqrt(2 * Math.PI));
};

/** Probability that x is exceeded. */
export const logNormalExceedance = (x: number, median: number, spread: number): number =>
  x <= 0 ? 1 : normalTail(Math.log(x / median) / spread);
