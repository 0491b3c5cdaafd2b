/** The outcome of a check, however it was made. */
import type { CheckId } from '../weights.ts';

export interface CheckOutcome {
  readonly checkId: CheckId;
  /** Probability, 0..1, that the check truly found something wrong; ½ says nothing. */
  readonly wrongness: number;
  /** What was found, a sentence. */
  readonly text: string;
  /** Measured by hand, or read from the loads of the runs. */
  readonly origin: 'measured' | 'runs';
}
