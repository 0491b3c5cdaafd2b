/** A check: something to do that would tell causes apart. Minutes and outcome probabilities stand in weights.ts. */
import type { CautionId } from './cautions.ts';
import type { CheckId } from '../weights.ts';

export interface Check {
  readonly id: CheckId;
  readonly title: string;
  readonly kind: 'measurement' | 'run' | 'swap' | 'inspection';
  readonly how: readonly string[];
  /** The check that tells where to do this one: it is proposed first where it was not done yet. */
  readonly after?: CheckId;
  /** Limit with where it comes from; null where the outcome is seen rather than measured. */
  readonly limit: string | null;
  /** What was found, as evidence: the sentence for a good and for a bad outcome. */
  readonly fine: string;
  readonly wrong: string;
  readonly cautions: readonly CautionId[];
}
