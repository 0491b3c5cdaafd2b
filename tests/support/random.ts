/** Seeded random numbers for tests: the same numbers on every machine. */

export interface Random {
  /** Uniform in [0, 1). */
  readonly uniform: () => number;
  /** Standard normal. */
  readonly normal: () => number;
}

/** mulberry32 (T. Ettinger, public domain) and the polar method of Marsaglia & Bray, SIAM Review 6(3), 1964. */
export const seededRandom = (seed: number): Random => {
  let state = seed >>> 0;
  const uniform = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const value = spare;
      spare = null;
      return value;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) {
        const f = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * f;
        return u * f;
      }
    }
  };
  return { uniform, normal };
};
