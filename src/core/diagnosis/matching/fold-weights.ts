/** What uneven sampling instants say of a tone's true frequency: likelihoods, 1 where they say nothing against it. */
import type { Tone } from '../origins/tone.ts';

/** Share of recordings whose stamps are not quite the instants of their samples, though these seemed to follow them. Judgment. */
const STAMPS_STRAY = 0.01;
/** Stamps that strayed hardly tell one place from the others: this much (ln) that they do leaves an e-th of that. Judgment. */
const TOLD_BY_STRAY = 50;
/** Share of tones of no expected line that are images of something above half the rate. Judgment. */
const OTHERS_FOLDED = 0.1;

/** Likelihood (1 at most) that the tone truly stands so many sampling rates away; 0 where it shows. */
export const foldWeight = ({ folds }: Tone, fold: number): number => {
  const seen = folds.find((one) => one.fold === fold);
  if (!seen) return 1;
  const stray = STAMPS_STRAY * Math.exp(seen.logLikelihood / TOLD_BY_STRAY);
  return stray + (1 - stray) * Math.exp(seen.logLikelihood);
};

/** The same for what is in no list, and may itself be folded. */
export const unlistedFoldWeight = (tone: Tone): number => OTHERS_FOLDED + (1 - OTHERS_FOLDED) * foldWeight(tone, 0);

/** Share of a true level that is left in the tone, were it so many sampling rates away. */
export const keptOf = ({ folds }: Tone, fold: number): number => folds.find((one) => one.fold === fold)?.kept ?? 1;
