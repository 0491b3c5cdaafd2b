/** The instants at which samples were taken, where these are uneven. */
import type { Recording } from '../../reading/recording.ts';

/** Samples at the instants when they were taken, on the recording's clock. */
export interface Instants {
  readonly samplingRateHz: number;
  readonly pieces: readonly { readonly timeS: Float64Array; readonly axes: readonly Float64Array[] }[];
}

/** @returns null where all samples were taken at even instants */
export const instantsOf = ({ samplingRateHz, segments }: Recording): Instants | null => {
  const pieces = segments.flatMap(({ startS, timeS, accelerationMps2 }) =>
    timeS ? [{ timeS: timeS.map((t) => startS + t), axes: accelerationMps2 }] : [],
  );
  return pieces.length > 0 ? { samplingRateHz, pieces } : null;
};
