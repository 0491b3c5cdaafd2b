/** Do probabilities mean what they say? */

export interface StatedOutcome {
  readonly p: number;
  readonly hit: boolean;
}

export interface CalibrationBin {
  readonly from: number;
  readonly count: number;
  readonly meanStated: number;
  readonly shareHit: number;
  /** Standard error of the share, if the stated probabilities were right. */
  readonly standardError: number;
}

const binOf = (from: number, inside: readonly StatedOutcome[]): CalibrationBin => {
  const count = inside.length;
  return {
    from,
    count,
    meanStated: inside.reduce((sum, s) => sum + s.p, 0) / count,
    shareHit: inside.filter((s) => s.hit).length / count,
    standardError: Math.sqrt(inside.reduce((sum, s) => sum + s.p * (1 - s.p), 0)) / count,
  };
};

/** Tenths of stated probability that hold at least `least` statements. */
export const tenths = (all: readonly StatedOutcome[], least = 20): readonly CalibrationBin[] =>
  Array.from({ length: 10 }, (_, i) => i / 10)
    .map((from) => ({ from, inside: all.filter((s) => s.p >= from && (s.p < from + 0.1 || from === 0.9)) }))
    .filter(({ inside }) => inside.length >= least)
    .map(({ from, inside }) => binOf(from, inside));

/** Mean stated probability, share of hits, over everything given; null for nothing. */
export const overall = (all: readonly StatedOutcome[]): CalibrationBin | null =>
  all.length === 0 ? null : binOf(0, all);
