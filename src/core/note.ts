/** A remark that travels with a result: what was found, decided or repaired, for the reader of the report. */
export interface Note {
  /** Stable kebab-case name, for programs. */
  readonly code: string;
  /** One or two plain sentences, for people. */
  readonly text: string;
  /** How much it matters: 'info' is a decision explained, 'warning' limits what the answer can say. */
  readonly severity: 'info' | 'warning';
}

/**
 * An expected failure: bad input, an impossible question. Facts only, plus one remedy. Returned, never thrown.
 */
export interface Problem {
  /** Stable kebab-case name, for programs and for the test that every member has a sentence. */
  readonly code: string;
  /** File the trouble is in, where there is one. */
  readonly file?: string;
  /** 1-based line in the file. */
  readonly line?: number;
  /** 1-based column (character) in the line, or a key such as `vehicle.axleRatio` in a job file. */
  readonly column?: number;
  readonly key?: string;
  /** What was found, in a sentence. */
  readonly message: string;
  /** What to do next, in a sentence. */
  readonly remedy: string;
}

/** Success or an expected failure. */
export type Result<T> = { readonly ok: true; readonly value: T } | { readonly ok: false; readonly problem: Problem };

export const success = <T>(value: T): Result<T> => ({ ok: true, value });
export const failure = (problem: Problem): { readonly ok: false; readonly problem: Problem } => ({
  ok: false,
  problem,
});

/** For the end of a switch over a union: a member nobody handled fails the type check. */
export const assertNever = (value: never): never => {
  throw new Error(`unhandled: ${JSON.stringify(value)}`);
};
