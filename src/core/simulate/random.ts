/**
 * A seeded random source: xoshiro128** (Blackman & Vigna, "Scrambled linear pseudorandom number generators",
 * ACM Trans. Math. Softw. 47, 2021), seeded by a splitmix-style hash.
 *
 * Every component of a simulation draws from its own stream, named after it. Switching one component off therefore
 * leaves the random numbers of all others as they were: the road is the same road with and without the fault.
 */
export interface RandomSource {
  /** Even over [0, 1), 32 bits. */
  readonly uniform: () => number;
  /** Even over [low, high). */
  readonly between: (low: number, high: number) => number;
  /** Even in the logarithm over [low, high); both positive. */
  readonly logBetween: (low: number, high: number) => number;
  /** Standard normal (Marsaglia's polar method). */
  readonly normal: () => number;
  /** One of the list, each as likely. The list must not be empty. */
  readonly pick: <T>(list: readonly T[]) => T;
  /** True with the given probability. */
  readonly chance: (probability: number) => boolean;
}

const mix = (value: number): number => {
  let z = value | 0;
  z = Math.imul(z ^ (z >>> 16), 0x21f0aaad);
  z = Math.imul(z ^ (z >>> 15), 0x735a2d97);
  return (z ^ (z >>> 15)) >>> 0;
};

const hashName = (name: string, seed: number): number => {
  let h = mix(seed ^ 0x9e3779b9);
  for (let i = 0; i < name.length; i++) h = mix((h ^ name.charCodeAt(i)) + 0x9e3779b9);
  return h;
};

/** The four state words for a seed and a stream name; never all zero. */
const seedWords = (seed: number, stream: string): Uint32Array => {
  const state = new Uint32Array(4);
  let h = hashName(stream, Math.floor(seed / 4294967296) ^ mix(seed >>> 0));
  for (let i = 0; i < 4; i++) {
    h = (h + 0x9e3779b9) >>> 0;
    state[i] = mix(h);
  }
  if (state.every((word) => word === 0)) state[0] = 1;
  return state;
};

/**
 * A random source for one seed and one named stream.
 * @param seed Any whole number; the same seed and name always give the same numbers.
 * @param stream What draws from it: 'road', 'speed' …
 */
export const randomSource = (seed: number, stream = ''): RandomSource => {
  const words = seedWords(seed, stream);
  return randomFromState(words[0]!, words[1]!, words[2]!, words[3]!);
};

/** The generator from its four state words (for comparison with published output). */
export const randomFromState = (a0: number, b0: number, c0: number, d0: number): RandomSource => {
  let a = a0 | 0;
  let b = b0 | 0;
  let c = c0 | 0;
  let d = d0 | 0;
  const next = (): number => {
    const scrambled = Math.imul(b, 5);
    const result = Math.imul((scrambled << 7) | (scrambled >>> 25), 9);
    const t = b << 9;
    c ^= a;
    d ^= b;
    b ^= c;
    a ^= d;
    c ^= t;
    d = (d << 11) | (d >>> 21);
    return result >>> 0;
  };
  const uniform = (): number => next() / 4294967296;
  let spare: number | null = null;
  const normal = (): number => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    for (;;) {
      const u = 2 * uniform() - 1;
      const v = 2 * uniform() - 1;
      const s = u * u + v * v;
      if (s > 0 && s < 1) {
        const scale = Math.sqrt((-2 * Math.log(s)) / s);
        spare = v * scale;
        return u * scale;
      }
    }
  };
  return {
    uniform,
    normal,
    between: (low, high) => low + (high - low) * uniform(),
    logBetween: (low, high) => low * Math.exp(Math.log(high / low) * uniform()),
    pick: (list) => list[Math.floor(uniform() * list.length)]!,
    chance: (probability) => uniform() < probability,
  };
};
