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
  // Best rate to come from, for each rate to go on with: asked once for each state that is left.
  const reached = new Float64Array(rates);
  const chosen = new Int8Array(rates);
  for (let k = 1; k < steps; k++) {
    const next = new Float64Array(cells).fill(-Infinity);
    for (let s = 0; s < states; s++) {
      const row = s * rates;
      for (let r = 0; r < rates; r++) {
        reached[r] = score[row + r]! - rateCost[0]!;
        chosen[r] = r;
      }
      for (let d = 1; d <= reach; d++) {
        const cost = rateCost[d]!;
        for (let r = d; r < rates; r++) {
          const up = score[row + r - d]! - cost;
          if (up > reached[r]!) {
            reached[r] = up;
            chosen[r] = r - d;
          }
          const down = score[row + r]! - cost;
          if (down > reached[r - d]!) {
            reached[r - d] = down;
            chosen[r - d] = r;
          }
        }
      }
      const first = Math.max(0, most - s);
      const last = Math.min(rates - 1, states - 1 - s + most);
      for (let r = first; r <= last; r++) {
        const to = s + r - most;
        next[to * rates + r] = reached[r]! + evidence[k * states + to]!;
        from[k * cells + to * rates + r] = chosen[r]!;
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
