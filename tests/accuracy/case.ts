/** One case of the suite: what the program is given, and what is really the matter. */
import type { Job } from '../../src/core/job/job.ts';
import type { Scenario } from '../../src/core/simulate/scenario.ts';
import type { Part } from '../../src/core/vehicle/line.ts';

export const FAMILIES = [
  'single',
  'shaft',
  'two-faults',
  'rough-weak',
  'dial',
  'speed-wrong',
  'engine-given',
  'direct-gear',
  'logged-ramp',
  'blind-ramp',
  'alias',
  'sound',
  'sound-rough',
  'hum',
  'resonance',
  'two-runs',
  'launch',
] as const;
export type Family = (typeof FAMILIES)[number];

export interface TrueLine {
  readonly part: Part;
  /** Accessories only: which. */
  readonly name?: string;
  readonly order: number;
  readonly hz: number;
  readonly levelMps2: number;
  readonly felt: number;
}

export interface TrueFault {
  readonly kind: string;
  /** All orders the fault makes, strongest felt first. */
  readonly lines: readonly TrueLine[];
  /** Lines it may rightly be named by: felt at least half as much as its strongest. */
  readonly named: readonly TrueLine[];
  /** Lines of sound parts that no analysis could part from its strongest line by frequency. */
  readonly coinciding: readonly TrueLine[];
  /** Signal-to-noise of a detector that knows frequency and phase, see detectability.ts. */
  readonly detectability: number;
}

/** How a case is scored. */
export type Rule =
  /** The first finding is the fault. */
  | 'first'
  /** The two faults come before anything else. */
  | 'both'
  /** The fault and its twin in frequency are named together, neither above 0.8. */
  | 'together'
  /** The fault is in the first finding or among those it shares its frequency with. */
  | 'shared'
  /** No finding. */
  | 'none'
  /** No turning part is named first. */
  | 'not-turning';

export interface AccuracyCase {
  readonly family: Family;
  readonly seed: number;
  readonly rule: Rule;
  readonly job: Job;
  readonly runs: readonly { readonly file: string; readonly layout: string; readonly scenario: Scenario }[];
  readonly faults: readonly TrueFault[];
}

/** Changes to the simulator, to see how far the answers lean on it. */
export interface Lean {
  /** Factor on the normal small orders; they stay below what is felt. */
  readonly normalLevel: number;
  /** Ramps of shapes the suite does not otherwise use. */
  readonly otherRamps: boolean;
}
export const NO_LEAN: Lean = { normalLevel: 1, otherRamps: false };
