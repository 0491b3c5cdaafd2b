/** What judging a measurement yields: numbers against limits, and what they would do at speed. */
import type { Note } from '../../note.ts';
import type { JudgedNumber, LimitOverrides } from '../limits/limit.ts';
import type { Measurement } from '../measurement.ts';
import type { ProcedureId } from '../procedures.ts';

export type BenchVerdict = 'inside' | 'outside' | 'cannot-tell';

/** A periodic force, couple or acceleration that a measurement predicts. */
export interface Prediction {
  readonly part: 'driveshaft' | 'tire';
  /** Once or twice a turn of the part. */
  readonly order: 1 | 2;
  readonly quantity: 'force' | 'couple' | 'acceleration';
  /** 0-to-peak. */
  readonly value: number;
  readonly unit: 'N' | 'N·m' | 'rad/s²';
  /** Where it acts and at what speed, in words: 'at the rear joint, 2900 rev/min'. */
  readonly where: string;
}

export interface JudgedMeasurement {
  readonly kind: Measurement['kind'];
  /** How it was to be measured; null for an observation. */
  readonly procedure: ProcedureId | null;
  readonly verdict: BenchVerdict;
  /** Numbers that decide the verdict. */
  readonly judged: readonly JudgedNumber[];
  /** Numbers to know that do not decide. */
  readonly advisory: readonly JudgedNumber[];
  readonly predicted: readonly Prediction[];
  readonly notes: readonly Note[];
}

/** Speeds and settings a measurement is judged at. */
export interface BenchConditions {
  /** Driveshaft and wheel speed of the complaint, rev/min; null where not known. */
  readonly driveshaftRpm: number | null;
  readonly wheelRpm: number | null;
  readonly limits: LimitOverrides;
}

/** 'inside' where all numbers are, 'cannot-tell' where there is none. */
const verdictOf = (judged: readonly JudgedNumber[]): BenchVerdict =>
  judged.length === 0 ? 'cannot-tell' : judged.every((number) => number.inside) ? 'inside' : 'outside';

/** The number furthest beyond, or nearest to, its limit. */
export const worstOf = (numbers: readonly JudgedNumber[]): JudgedNumber | undefined =>
  numbers.reduce<JudgedNumber | undefined>(
    (worst, one) => (worst && worst.share >= one.share ? worst : one),
    undefined,
  );

/** A judgment with nothing in it but what is given. */
export const judgedAs = (
  kind: Measurement['kind'],
  procedure: ProcedureId | null,
  judged: readonly JudgedNumber[],
  more: Partial<Pick<JudgedMeasurement, 'verdict' | 'advisory' | 'predicted' | 'notes'>> = {},
): JudgedMeasurement => ({
  kind,
  procedure,
  verdict: verdictOf(judged),
  judged,
  advisory: [],
  predicted: [],
  notes: [],
  ...more,
});
