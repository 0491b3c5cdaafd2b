/** A check: something to do that would tell causes apart. Minutes and outcome probabilities stand in weights.ts. */
import type { CautionId } from './cautions.ts';
import type { CheckId } from './weights.ts';

export interface Check {
  readonly id: CheckId;
  readonly title: string;
  readonly kind: 'measurement' | 'run' | 'swap' | 'inspection';
  readonly how: readonly string[];
  /** Limit with where it comes from; null where the outcome is seen rather than measured. */
  readonly limit: string | null;
  /** What was found, as evidence: the sentence for a good and for a bad outcome. */
  readonly fine: string;
  readonly wrong: string;
  readonly cautions: readonly CautionId[];
}
