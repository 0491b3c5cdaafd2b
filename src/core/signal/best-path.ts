/** The likeliest path through a table of evidence, by dynamic programming (A. J. Viterbi, IEEE Trans. IT-13(2), 1967). */

export interface Path {
  /** State at each step. */
  readonly states: Int32Array;
  /** Evidence gathered minus what the moves cost. */
  readonly score: number;
}

/**
 * A path whose state takes random steps.
 * @param evidence row-major, `evidence[step * states + state]`: log-likelihood of the state at the step
 * @param moveCost cost of a move by d states, d = 0 … reach; longer moves are not made
 */
export const bestPath = (evidence: Float64Array, states: number, moveCost: Float64Array): Path => {
  const steps = evidence.length / states;
  const reach = moveCost.length - 1;
  const from = new Int16Array(evidence.length);
  let score = evidence.slice(0, states);
  for (let k = 1; k < steps; k++) {
    const next = new Float64Array(states);
    for (let s = 0; s < states; s++) {
      let best = -Infinity;
      let origin = s;
      const low = Math.max(0, s - reach);
      const high = Math.min(states - 1, s + reach);
      for (let r = low; r <= high; r++) {
        const v = score[r]! - moveCost[Math.abs(r - s)]!;
        if (v > best) {
          best = v;
          origin = r;
        }
      }
      next[s] = best + evidence[k * states + s]!;
      from[k * states + s] = origin;
    }
    score = next;
  }
  return backwards(
    score,
    steps,
    (k, state) => from[k * states + state]!,
    (state) => state,
  );
};

const backwards = (
  score: Float64Array,
  steps: number,
  origin: (step: number, cell: number) => number,
  stateOf: (cell: number) => number,
): Path => {
  let cell = 0;
  for (let c = 1; c < score.length; c++) if (score[c]! > score[cell]!) cell = c;
  const states = new Int32Array(steps);
  const best = score[cell] ?? 0;
  for (let k = steps - 1; k >= 0; k--) {
    states[k] = stateOf(cell);
    if (k > 0) cell = origin(k, cell);
  }
  return { states, score: best };
};

/**
 * A path that keeps its rate: each step it moves by its rate, −most … most states, and the rate may change at a cost.
 * @param rateCost cost of changing the rate by d states a step, d = 0 … reach
 * @param startCost cost of each rate at the start, by |rate|
 */
export const steadiestPath = (
  evidence: Float64Array,
  states: number,
  most: number,
  rateCost: Float64Array,
  startCost: Float64Array,
): Path => {
  const steps = evidence.length / states;
  const rates = 2 * most + 1;
  const reach = rateCost.length - 1;
  const cells = states * rates;
  const from = new Int8Array(steps * cells);
  let score = new Float64Array(cells);
  for (let s = 0; s < states; s++) {
    for (let r = 0; r < rates; r++) score[s * rates + r] = evidence[s]! - startCost[Math.abs(r - most)]!;
  }
  for (let k = 1; k < steps; k++) {
    const next = new Float64Array(cells).fill(-Infinity);
    for (let s = 0; s < states; s++) {
      const own = evidence[k * states + s]!;
      for (let r = 0; r < rates; r++) {
        const origin = s - (r - most);
        if (origin < 0 || origin >= states) continue;
        let best = -Infinity;
        let rate = r;
        const low = Math.max(0, r - reach);
        const high = Math.min(rates - 1, r + reach);
        for (let q = low; q <= high; q++) {
          const v = score[origin * rates + q]! - rateCost[Math.abs(q - r)]!;
          if (v > best) {
            best = v;
            rate = q;
          }
        }
        next[s * rates + r] = best + own;
        from[k * cells + s * rates + r] = rate;
      }
    }
    score = next;
  }
  return backwards(
    score,
    steps,
    (k, cell) => {
      const s = Math.floor(cell / rates);
      const r = cell % rates;
      return (s - (r - most)) * rates + from[k * cells + cell]!;
    },
    (cell) => Math.floor(cell / rates),
  );
};
