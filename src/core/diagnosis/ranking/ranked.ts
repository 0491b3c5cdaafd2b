/**
 * What ranking hands on. Causes and repairs stand in the report as they are; of findings and checks the report says more
 * (a test keeps the shapes alike), and diagnosis stands below it and does not know it.
 */
import type { Part } from '../../vehicle/line.ts';

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

/** What the choice of the next check needs of a finding. */
export interface RankedFinding {
  readonly part: Part;
  readonly name?: string;
  readonly order: number | null;
  readonly label: string;
  readonly probability: number;
  readonly run: string;
  readonly frequencyHz: number;
  readonly feltLevel: number;
  readonly sharesFrequencyWith: readonly {
    readonly part: Part;
    readonly name?: string;
    readonly order: number;
    readonly label: string;
    readonly probability: number;
  }[];
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
  readonly kind: 'measurement' | 'run' | 'swap' | 'inspection';
  readonly minutes: number;
  readonly tellsApart: readonly string[];
  readonly expectedBits: number;
  readonly how: readonly string[];
  readonly limit: string | null;
  readonly outcomes: { readonly fine: string; readonly wrong: string };
  readonly cautions: readonly string[];
}
