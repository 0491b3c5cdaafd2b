/** What a repair that took a shake away says of the part that shook, where several share its frequency. */

/** One of the orders that a shake may be. */
export interface Suspect {
  /** That it is this order, before the repair, 0..1. */
  readonly probability: number;
  /** That, if it is, the causes put right made it, 0..1. */
  readonly repairedShare: number;
}

/** A shake whose cause was put right goes this often; another goes with what else was moved at the work. Judgment. */
const GONE_IF_IT = 0.95;
const GONE_IF_NOT = 0.05;

/**
 * Probability of the first order once the shake is gone, by Bayes' rule. What is left of the probabilities is of
 * something that was not put right.
 * @returns 0..1, of all that the shake may be
 */
export const probabilityOnceGone = (suspects: readonly Suspect[]): number => {
  const weights = suspects.map(
    ({ probability, repairedShare }) => probability * (repairedShare * GONE_IF_IT + (1 - repairedShare) * GONE_IF_NOT),
  );
  const rest = Math.max(0, 1 - suspects.reduce((sum, { probability }) => sum + probability, 0)) * GONE_IF_NOT;
  const total = weights.reduce((sum, weight) => sum + weight, rest);
  return total > 0 ? weights[0]! / total : 0;
};
