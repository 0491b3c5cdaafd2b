/**
 * The rolling circumference that all runs of a job share. A run's road scale is s = e − c with e the error of its own
 * stated speed and c the log of true over nominal circumference; what the run says of s it says, blurred by e, of c.
 */
import type { RunInference } from './infer-run.ts';
import { scaleAt, type ScaleAxis, type ScalePrior } from '../origins/scale-prior.ts';

/** Likelihood of −c on a grid. */
export interface CircumferenceMessage {
  readonly likelihood: Float64Array;
}

const REACH = 0.06;
const STEP = 5e-4;
const SIZE = Math.round((2 * REACH) / STEP) + 1;
const gridAt = (index: number): number => -REACH + index * STEP;

/** Standard deviation of the speed's own error where the prior's total is known. */
const ownSd = (prior: ScaleAxis, circumferenceSd: number): number => {
  let sum = 0;
  let mean = 0;
  let square = 0;
  for (let i = 0; i < prior.logPrior.length; i++) {
    const weight = Math.exp(prior.logPrior[i]!);
    sum += weight;
    mean += weight * scaleAt(prior, i);
    square += weight * scaleAt(prior, i) ** 2;
  }
  const total = square / sum - (mean / sum) ** 2;
  return Math.sqrt(Math.max(total - circumferenceSd ** 2, (2 * STEP) ** 2));
};

const blurred = (values: readonly { readonly at: number; readonly weight: number }[], sd: number): Float64Array => {
  const out = new Float64Array(SIZE);
  for (const { at, weight } of values) {
    if (weight === 0) continue;
    for (let i = 0; i < SIZE; i++) out[i]! += weight * Math.exp(-0.5 * ((gridAt(i) - at) / sd) ** 2);
  }
  return out;
};

/** Null where the run has no road lines. */
export const circumferenceMessage = (
  { posterior, prior }: RunInference,
  circumferenceSd: number,
): CircumferenceMessage | null => {
  const { road } = prior;
  if (circumferenceSd === 0 || road.logPrior.length < 2) return null;
  // Posterior over prior is what the run itself said of its scale; gathered to a coarser step, which is all c needs.
  const stride = Math.max(1, Math.round(STEP / road.step));
  const values: { at: number; weight: number }[] = [];
  for (let i = 0; i < road.logPrior.length; i += stride) {
    let weight = 0;
    for (let j = i; j < Math.min(road.logPrior.length, i + stride); j++) {
      weight += posterior.roadWeight[j]! / Math.exp(road.logPrior[j]!);
    }
    values.push({ at: scaleAt(road, Math.min(road.logPrior.length - 1, i + (stride >> 1))), weight });
  }
  const likelihood = blurred(values, ownSd(road, circumferenceSd));
  const most = Math.max(...likelihood);
  return most > 0 ? { likelihood: likelihood.map((l) => l / most) } : null;
};

/** The run's prior given what the other runs say of the circumference. */
export const withCircumference = (
  prior: ScalePrior,
  messages: readonly (CircumferenceMessage | null)[],
  circumferenceSd: number,
): ScalePrior => {
  const told = messages.filter((m) => m !== null);
  if (told.length === 0 || prior.road.logPrior.length < 2) return prior;
  const alone = Float64Array.from({ length: SIZE }, (_, i) => Math.exp(-0.5 * (gridAt(i) / circumferenceSd) ** 2));
  const known = alone.map((p, i) => told.reduce((product, m) => product * m.likelihood[i]!, p));
  const spread = (weights: Float64Array, sd: number): Float64Array =>
    blurred(
      Array.from(weights, (weight, i) => ({ at: gridAt(i), weight })),
      sd,
    );
  const sd = ownSd(prior.road, circumferenceSd);
  const before = spread(alone, sd);
  const after = spread(known, sd);
  const sumBefore = before.reduce((a, b) => a + b, 0);
  const sumAfter = after.reduce((a, b) => a + b, 0);
  // The prior's own shape (a skewed dial, long tails) is kept; the ratio of what is now known moves it.
  const logPrior = prior.road.logPrior.map((log, i) => {
    const at = Math.min(SIZE - 1, Math.max(0, Math.round((scaleAt(prior.road, i) + REACH) / STEP)));
    const ratio = (after[at]! / sumAfter + 1e-9) / (before[at]! / sumBefore + 1e-9);
    return log + Math.log(ratio);
  });
  return { ...prior, road: { ...prior.road, logPrior } };
};
