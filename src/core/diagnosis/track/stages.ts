/** The looks that are taken at a recording to follow its speed, coarse and fine. */
import type { Prepared } from '../../signal/spectra/spectrum.ts';
import { chirpMap, type ChirpMap } from './chirp-map.ts';
import { chirpPath, statesOf, type ChirpPath, type ChirpSearch } from './chirp-path.ts';
import { combEvidence, evidenceMap } from './comb-evidence.ts';
import type { EvidenceOf } from './line-evidence.ts';

export interface Stage {
  readonly segmentS: number;
  readonly hopS: number;
  /** Slopes to each side of 0, and the steepest. */
  readonly slopes: number;
  readonly steepestPerS: number;
  readonly search: Omit<ChirpSearch, 'logPrior'>;
}

/** Cruise: a driver's foot moves the speed by a percent within ten seconds. Judgment. */
export const CRUISE: Stage = {
  segmentS: 5.12,
  hopS: 1,
  slopes: 7,
  steepestPerS: 0.007,
  search: { from: -0.09, to: 0.09, step: 8e-4, slopeSd: 2.5e-3, slopeChangeSd: 7e-4, rowWeight: 0.3 },
};
/** Pull-up or coast-down over up to half of the speed. */
export const RAMP: Stage = {
  segmentS: 2.56,
  hopS: 1,
  slopes: 8,
  steepestPerS: 0.032,
  search: { from: -0.45, to: 0.35, step: 3e-3, slopeSd: 0.015, slopeChangeSd: 3e-3, rowWeight: 0.6 },
};
/** The same, so slowly that the cruise's longer segments show it: a weak line stands higher there. */
export const SLOW_RAMP: Stage = {
  ...CRUISE,
  search: { from: -0.4, to: 0.35, step: 1.5e-3, slopeSd: 5e-3, slopeChangeSd: 4e-4, rowWeight: 0.3 },
};
/** A sweep that one weak line shows alone: longer segments than of several lines together. */
export const WEAK_RAMP: Stage = {
  ...RAMP,
  segmentS: 4,
  search: { ...RAMP.search, step: 2e-3, rowWeight: 0.4 },
};

/** A map of powers, and what they speak for a line. */
export interface Look {
  readonly map: ChirpMap;
  readonly evidence: Float32Array;
}

export const lookAt = (prepared: Prepared, { segmentS, hopS, slopes, steepestPerS }: Stage): ChirpMap | null =>
  chirpMap(prepared, {
    segmentS,
    hopS,
    ratesPerS: Float64Array.from({ length: 2 * slopes + 1 }, (_, i) => ((i - slopes) / slopes) * steepestPerS),
  });

/** @param evidenceFor capped or growing evidence, see line-evidence.ts */
export const lookWith = (map: ChirpMap, evidenceFor: (axes: number) => EvidenceOf): Look => ({
  map,
  evidence: evidenceMap(map, evidenceFor(map.axes)),
});

/** The best path of the given lines (Hz at ln scale 0) through a look. */
export const follow = (
  { map, evidence }: Look,
  stage: Stage,
  linesHz: readonly number[],
  samplingRateHz: number,
  logPrior: (state: number) => number,
): ChirpPath => {
  const search = { ...stage.search, logPrior };
  const grid = combEvidence(map, evidence, linesHz, statesOf(search), samplingRateHz);
  return chirpPath(map, grid, search);
};
