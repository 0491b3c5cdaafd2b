/** Entropy of a set of possibilities, and how much of it a two-outcome check is expected to remove. Bits. */

/** Σ −p·log2 p, with 0·log 0 = 0. The probabilities must add up to 1. */
export const entropyBits = (probabilities: readonly number[]): number =>
  probabilities.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);

/**
 * Expected fall of the entropy by one check, by exact enumeration of its two outcomes: H − Σ P(outcome)·H(posterior).
 * Never negative (it is the mutual information of outcome and possibility).
 *
 * @param probabilities of the possibilities, adding up to 1
 * @param wrong P(the check finds something wrong | possibility), same length
 * @example expectedBits([0.5, 0.5], [1, 0]) = 1; expectedBits([0.5, 0.5], [0.9, 0.1]) = 0.531 (1 − H(0.9))
 */
export function expectedBits(probabilities: readonly number[], wrong: readonly number[]): number {
  let remaining = 0;
  for (const likelihood of [wrong, wrong.map((p) => 1 - p)]) {
    const joint = probabilities.map((p, index) => p * likelihood[index]!);
    const chance = joint.reduce((a, b) => a + b, 0);
    if (chance > 0) remaining += chance * entropyBits(joint.map((p) => p / chance));
  }
  return Math.max(0, entropyBits(probabilities) - remaining);
}
