/** The path of the speed through the rows, with its slope in each, that the expected lines together follow best. */
import type { ChirpMap } from './chirp-map.ts';

export interface ChirpSearch {
  /** ln of speed over the reference: from, to and step of the states. */
  readonly from: number;
  readonly to: number;
  readonly step: number;
  /** Standard deviation of the slope itself, 1/s. */
  readonly slopeSd: number;
  /** Standard deviation of the change of the slope from row to row, 1/s. */
  readonly slopeChangeSd: number;
  /** ln prior of a state, once for the whole path. */
  readonly logPrior: (state: number) => number;
  /** Rows share samples: each row's evidence counts this much. */
  readonly rowWeight: number;
}

export interface ChirpPath {
  readonly timeS: Float64Array;
  /** ln of speed over the reference at each row's centre, and its slope there, 1/s. */
  readonly logSpeed: Float64Array;
  readonly slopePerS: Float64Array;
  /** ln evidence along the path, and along the best path that stays at one speed. */
  readonly score: number;
  readonly steadyScore: number;
}

/** Slopes that differ by more than this many standard deviations do not follow each other. */
const MOST_SDS = 4.5;

/** One step of Viterbi's search: the best way to each (slope, state) of the next row. */
const advance = (
  now: Float64Array,
  map: ChirpMap,
  search: ChirpSearch,
  count: number,
  hopS: number,
  from: Int32Array,
  row: number,
): Float64Array => {
  const chirps = map.ratesPerS.length;
  const cell = chirps * count;
  const next = new Float64Array(cell).fill(-Infinity);
  for (let c = 0; c < chirps; c++) {
    for (let q = 0; q < chirps; q++) {
      const change = Math.abs(map.ratesPerS[c]! - map.ratesPerS[q]!) / search.slopeChangeSd;
      if (change > MOST_SDS) continue;
      // The slope halfway between the rows carries the speed from one to the next.
      const moved = (((map.ratesPerS[c]! + map.ratesPerS[q]!) / 2) * hopS) / search.step;
      const low = Math.floor(moved);
      for (let shift = low; shift <= low + 1; shift++) {
        const penalty = 0.5 * change * change + 0.25 * (moved - shift) ** 2;
        for (let s = Math.max(0, shift); s < Math.min(count, count + shift); s++) {
          const value = now[q * count + s - shift]! - penalty;
          const at = c * count + s;
          if (value > next[at]!) {
            next[at] = value;
            from[row * cell + at] = q * count + s - shift;
          }
        }
      }
    }
  }
  return next;
};

const highest = (values: Float64Array): number => {
  let at = 0;
  for (let i = 1; i < values.length; i++) if (values[i]! > values[at]!) at = i;
  return at;
};

export const statesOf = ({ from, to, step }: ChirpSearch): Float64Array =>
  Float64Array.from({ length: Math.max(1, Math.round((to - from) / step) + 1) }, (_, i) => from + i * step);

/** @param evidence of `combEvidence` for the states of the search */
export const chirpPath = (map: ChirpMap, evidence: Float32Array, search: ChirpSearch): ChirpPath => {
  const states = statesOf(search);
  const count = states.length;
  const rows = map.timeS.length;
  const chirps = map.ratesPerS.length;
  const cell = chirps * count;
  const still = chirps >> 1;
  const prior = states.map((state) => search.logPrior(state) / rows);
  const add = (into: Float64Array, row: number): void => {
    for (let c = 0, i = 0; c < chirps; c++) {
      const steep = 0.5 * (map.ratesPerS[c]! / search.slopeSd) ** 2 * search.rowWeight;
      for (let s = 0; s < count; s++, i++) {
        into[i]! += search.rowWeight * evidence[row * cell + i]! + prior[s]! - steep;
      }
    }
  };
  const from = new Int32Array(rows * cell);
  const steady = new Float64Array(count);
  let now: Float64Array = new Float64Array(cell);
  for (let r = 0; r < rows; r++) {
    if (r > 0) now = advance(now, map, search, count, map.timeS[r]! - map.timeS[r - 1]!, from, r);
    add(now, r);
    for (let s = 0; s < count; s++) {
      steady[s]! += search.rowWeight * evidence[r * cell + still * count + s]! + prior[s]!;
    }
  }
  const end = highest(now);
  const logSpeed = new Float64Array(rows);
  const slopePerS = new Float64Array(rows);
  for (let r = rows - 1, i = end; r >= 0; r--) {
    logSpeed[r] = states[i % count]!;
    slopePerS[r] = map.ratesPerS[Math.floor(i / count)]!;
    i = from[r * cell + i]!;
  }
  return { timeS: map.timeS, logSpeed, slopePerS, score: now[end]!, steadyScore: steady[highest(steady)]! };
};
