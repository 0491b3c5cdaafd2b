/** How much a bin's power speaks for a line being there, against noise alone. */

/** Mean powers over noise per axis that a line may have, each as likely. */
const STRENGTHS = [1, 4, 16, 64, 256];
/** Share of the places looked at that hold a line strong enough to help. Judgment. */
const PRESENCE = 0.3;
/** Capped: no single bin counts for more than this (in ln), so that one loud tone does not outvote the rest. */
const CAP = 10;
/** Growing: beyond this ln the evidence grows with this power of the bin's power only: levels pulse, tracks are rough. */
const KNEE = 20;
const GROWTH = 0.6;
const STEP = 0.25;
const SIZE = 400;

/**
 * ln of the likelihood ratio for a power `sum` over `axes` axes (each 1 on average in noise, exponential), the line's
 * amplitude on each axis being complex normal: Σ over strengths ξ of exp(sum·ξ/(1+ξ))/(1+ξ)^axes.
 */
const logRatio = (sum: number, axes: number): number => {
  const logs = STRENGTHS.map((x) => (sum * x) / (1 + x) - axes * Math.log1p(x));
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((total, log) => total + Math.exp(log - most), 0) / STRENGTHS.length);
};

export type EvidenceOf = (sum: number) => number;

const tabulated = (axes: number, bend: (log: number) => number): { table: Float64Array; last: number } => {
  const table = Float64Array.from({ length: SIZE }, (_, i) => {
    const log = logRatio(i * STEP, axes);
    return bend(log > 30 ? log + Math.log(PRESENCE) : Math.log(1 - PRESENCE + PRESENCE * Math.exp(log)));
  });
  return { table, last: (SIZE - 1) * STEP };
};

const lookup = (table: Float64Array, sum: number): number => {
  const at = sum / STEP;
  const i = Math.floor(at);
  return table[i]! + (at - i) * (table[i + 1]! - table[i]!);
};

/** For following many weak lines at once. */
export const cappedEvidence = (axes: number): EvidenceOf => {
  const { table, last } = tabulated(axes, (log) => Math.min(CAP, log));
  return (sum) => (sum >= last ? CAP : lookup(table, sum));
};

/** For following a strong line closely. */
export const growingEvidence = (axes: number): EvidenceOf => {
  const bend = (log: number): number => (log <= KNEE ? log : KNEE * (log / KNEE) ** GROWTH);
  const { table, last } = tabulated(axes, bend);
  const top = table[SIZE - 1]!;
  return (sum) => (sum >= last ? top * (sum / last) ** GROWTH : lookup(table, sum));
};
