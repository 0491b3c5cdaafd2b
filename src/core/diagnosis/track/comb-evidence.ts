/** Evidence of all lines together at each row, slope and speed. */
import type { ChirpMap } from './chirp-map.ts';
import type { EvidenceOf } from './line-evidence.ts';

/** Images get through a filter that is not known; they speak less. */
const IMAGE_SHARE = 0.5;
/** Bins next to 0 Hz hold the drift that was taken out, not lines. */
const LOWEST_HZ = 1.5;

/** The map with each power turned into evidence. */
export const evidenceMap = (map: ChirpMap, evidenceOf: EvidenceOf): Float32Array => map.excess.map(evidenceOf);

/** Which of the slopes the rows were computed for is nearest to `ratePerS`; −1 where none is near. */
const nearestRate = (rates: Float64Array, ratePerS: number): number => {
  const step = rates.length > 1 ? rates[1]! - rates[0]! : Infinity;
  const at = Math.round((ratePerS - rates[0]!) / step);
  return at >= 0 && at < rates.length ? at : -1;
};

/**
 * @param linesHz true frequencies of the lines at the reference speed
 * @param evidence of `evidenceMap`
 * @returns `[(row * slopes + slope) * states.length + state]`, ln of the likelihood ratio against noise
 */
export const combEvidence = (
  map: ChirpMap,
  evidence: Float32Array,
  linesHz: readonly number[],
  states: Float64Array,
  samplingRateHz: number,
): Float32Array => {
  const rows = map.timeS.length;
  const slopes = map.ratesPerS.length;
  const count = states.length;
  const grid = new Float32Array(rows * slopes * count);
  const bin = new Int32Array(count);
  const share = new Float64Array(count);
  for (const lineHz of linesHz) {
    const image = lineHz > samplingRateHz / 2;
    const folds = Math.round(lineHz / samplingRateHz);
    for (let s = 0; s < count; s++) {
      const at = Math.abs(lineHz * Math.exp(states[s]!) - folds * samplingRateHz) / map.stepHz;
      const k = Math.floor(at);
      const outside = at * map.stepHz < LOWEST_HZ || k + 1 >= map.bins;
      bin[s] = outside ? -1 : k;
      share[s] = at - k;
    }
    const shown = lineHz * Math.exp(states[count >> 1]!) - folds * samplingRateHz;
    const weight = image ? IMAGE_SHARE : 1;
    for (let c = 0; c < slopes; c++) {
      // An image moves by the line's own hertz, the other way below a multiple of the rate: another relative slope.
      const warped = image ? nearestRate(map.ratesPerS, (map.ratesPerS[c]! * lineHz) / shown) : c;
      if (warped < 0) continue;
      for (let r = 0; r < rows; r++) {
        const base = (r * slopes + warped) * map.bins;
        const out = (r * slopes + c) * count;
        for (let s = 0; s < count; s++) {
          const k = bin[s]!;
          if (k < 0) continue;
          const below = evidence[base + k]!;
          grid[out + s]! += weight * (below + share[s]! * (evidence[base + k + 1]! - below));
        }
      }
    }
  }
  return grid;
};
