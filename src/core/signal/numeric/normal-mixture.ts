/** A weighted mixture of normal distributions. */
import { normalTail } from './distributions.ts';

export interface NormalPart {
  /** Weights add up to 1. */
  readonly weight: number;
  readonly mean: number;
  readonly sd: number;
}

/** x that the mixture stays below with the given probability, by halving; 0 < probability < 1. */
export function mixtureQuantile(parts: readonly NormalPart[], probability: number): number {
  const reach = 40;
  let low = Math.min(...parts.map(({ mean, sd }) => mean - reach * sd));
  let high = Math.max(...parts.map(({ mean, sd }) => mean + reach * sd));
  const below = (x: number): number =>
    parts.reduce((sum, { weight, mean, sd }) => sum + weight * normalTail((mean - x) / sd), 0);
  for (let i = 0; i < 100 && high - low > 1e-12 * (Math.abs(low) + Math.abs(high)); i += 1) {
    const middle = (low + high) / 2;
    if (below(middle) < probability) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
