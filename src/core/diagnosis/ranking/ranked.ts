/**
 * What ranking hands on. The report's own types have the same shape (a test keeps them so); they are written down here
 * too because diagnosis stands below the report and does not know it.
 */
import type { Part } from '../../vehicle/line.ts';

/** A cause with its share of the probability and what speaks for and against it. */
export interface RankedCause {
  readonly id: string;
  readonly title: string;
  readonly probability: number;
  readonly probabilityBefore?: number;
  readonly for: readonly string[];
  readonly against: readonly string[];
  readonly missing: readonly string[];
  readonly repair: string;
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
