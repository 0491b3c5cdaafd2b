/** Before and after a repair, order by order. A plain object, as the Report is; `perrev compare --json` prints it. */
import type { Note } from '../../note.ts';
import type { Part } from '../../vehicle/line.ts';

export const COMPARISON_SCHEMA_VERSION = 1;

export type ComparisonVerdict =
  'gone' | 'better' | 'unchanged' | 'worse' | 'moved' | 'nothing-to-compare' | 'cannot-tell';

export interface Comparison {
  readonly schemaVersion: number;
  readonly verdict: ComparisonVerdict;
  /** The answer in one or two sentences, and why a sceptic may believe it. */
  readonly sentence: string;
  readonly why: string;
  readonly pairs: readonly ComparedPair[];
  readonly notes: readonly Note[];
}

/** One run before and one after, driven at nearly the same speed. */
export interface ComparedPair {
  readonly before: ComparedRun;
  readonly after: ComparedRun;
  /** Standard uncertainty that a difference of logger, mounting or load adds to every change, dB. */
  readonly unlikeSdDb: number;
  /** In what the two runs differ, in words; empty where they are like for like. */
  readonly differences: readonly string[];
  readonly orders: readonly OrderChange[];
}

export interface ComparedRun {
  readonly name: string;
  readonly speedMps: number | null;
  readonly durationS: number;
}

/** The level of an order in one run. */
export interface ComparedLevel {
  readonly frequencyHz: number;
  readonly amplitudeMps2: number;
  readonly feltLevel: number;
  /** False where the noise hides it; then amplitude and felt level are what could hide there (95 %). */
  readonly seen: boolean;
}

export interface OrderChange {
  readonly part: Part;
  readonly name?: string;
  readonly order: number | null;
  readonly label: string;
  readonly before: ComparedLevel;
  readonly after: ComparedLevel;
  /** Change of level with the difference of speed taken out, dB; negative is less. */
  readonly changeDb: number;
  /** 95 % interval, dB; an end is infinite (null) where one side is hidden in the noise. */
  readonly lowDb: number | null;
  readonly highDb: number | null;
  /** True where the interval leaves no change out. */
  readonly real: boolean;
  readonly verdict: 'gone' | 'better' | 'unchanged' | 'worse' | 'appeared' | 'not-seen';
}
