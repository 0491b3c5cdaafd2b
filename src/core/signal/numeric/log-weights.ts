/** Weights whose logarithms are known, which may be far too small or large to be taken back one by one. */

/** ln Σ eˣ. @param logs one at least */
export const logSum = (logs: readonly number[]): number => {
  const most = Math.max(...logs);
  return most + Math.log(logs.reduce((sum, log) => sum + Math.exp(log - most), 0));
};

/** eˣ / Σ eˣ, which add up to 1. @param logs one at least */
export const sharesOf = (logs: readonly number[]): number[] => {
  const all = logSum(logs);
  return logs.map((log) => Math.exp(log - all));
};
