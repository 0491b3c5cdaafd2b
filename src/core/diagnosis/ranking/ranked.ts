/** What ranking takes and hands on. The report holds all of it, of findings with more beside it. */
import type { Part } from '../../vehicle/line.ts';
import type { Check } from '../checks/check.ts';

/** A cause with its share of the probability and what speaks for and against it. */
export interface RankedCause {
  readonly id: string;
  readonly title: string;
  /** Given that the finding's part and order is right; those of one finding add up to 1 ('something else' included). */
  readonly probability: number;
  /** Before the measurements were taken into account; absent where there are none. */
  readonly probabilityBefore?: number;
  readonly for: readonly string[];
  readonly against: readonly string[];
  readonly missing: readonly string[];
  readonly repair: string;
  /** Ids of the checks that speak to this cause. */
  readonly checks: readonly string[];
}

/** Another order that may make the same tone. */
export interface RankedOther {
  readonly part: Part;
  readonly name?: string;
  readonly order: number;
  readonly label: string;
  readonly probability: number;
}

/** What the choice of the next check needs of a finding. */
export interface RankedFinding {
  readonly part: Part;
  readonly name?: string;
  /** null for fixed and unknown. */
  readonly order: number | null;
  readonly label: string;
  readonly probability: number;
  readonly run: string;
  readonly frequencyHz: number;
  readonly feltLevel: number;
  readonly sharesFrequencyWith: readonly RankedOther[];
  readonly causes: readonly RankedCause[];
}

/** A fault that a measurement has found, to be put right and proved before anything else is looked for. */
export interface Repair {
  readonly causeId: string;
  readonly title: string;
  /** The part and order that it may be the cause of. */
  readonly label: string;
  /** The readings outside their limits, a sentence each. */
  readonly found: readonly string[];
  readonly repair: string;
  /** How to prove that it was the cause. */
  readonly prove: string;
  readonly cautions: readonly string[];
}

export interface ProposedCheck {
  readonly id: string;
  readonly title: string;
  readonly kind: Check['kind'];
  readonly minutes: number;
  /** Cause ids or order labels whose probabilities the outcome would move apart. */
  readonly tellsApart: readonly string[];
  readonly expectedBits: number;
  readonly how: readonly string[];
  readonly limit: string | null;
  /** What each outcome means, in a sentence, for entering it as an observation of this check. */
  readonly outcomes: { readonly fine: string; readonly wrong: string };
  readonly cautions: readonly string[];
}
