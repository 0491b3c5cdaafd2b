/** The outcome of a check, however it was made. */
import type { CheckId } from '../weights.ts';

export interface CheckOutcome {
  readonly checkId: CheckId;
  /** Probability, 0..1, that the check truly found something wrong; ½ says nothing. */
  readonly wrongness: number;
  /** What was found, a sentence. */
  readonly text: string;
  /** A reading stands outside the limit it is held to, or a person saw the fault: something to put right, whatever else shakes. */
  readonly isFault: boolean;
  /** Measured by hand, or read from the loads of the runs. */
  readonly origin: 'measured' | 'runs';
}
