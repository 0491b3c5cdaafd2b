/** What balancing without phase is given: levels as found and with one trial weight at several positions. */
import type { AmplitudeReading } from '../measurement.ts';

export interface TrialPosition extends AmplitudeReading {
  readonly angleDeg: number;
}

export interface AmplitudeBalanceInput {
  readonly baseline: AmplitudeReading;
  readonly trialWeight: number;
  readonly positions: readonly TrialPosition[];
}
