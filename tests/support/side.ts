/** One side of a comparison made of runs that are weighed already. */
import type { Side } from '../../src/core/diagnosis/compare/compare.ts';
import { findingsOf } from '../../src/core/diagnosis/findings/findings-of.ts';
import type { RunInference } from '../../src/core/diagnosis/matching/infer-run.ts';

export const sideOf = (...inferences: readonly RunInference[]): Side => ({
  inferences,
  found: findingsOf(inferences),
});
