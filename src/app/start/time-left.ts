/** How long work will still take, told the way a person would. */

/** Before this much is done, a forecast would only jump about. */
const LEAST_SHARE = 0.08;
const LEAST_MS = 400;

/** @returns Seconds left, or null while it is too early to tell. */
export function secondsLeft(fraction: number, elapsedMs: number): number | null {
  if (fraction < LEAST_SHARE || elapsedMs < LEAST_MS) return null;
  return ((elapsedMs / 1000) * (1 - fraction)) / fraction;
}

/** 'a second', '5 seconds', '2 minutes'. */
export function roughTime(seconds: number): string {
  if (seconds < 1.5) return 'a second';
  if (seconds < 10) return `${Math.round(seconds)} seconds`;
  if (seconds < 90) return `${Math.round(seconds / 5) * 5} seconds`;
  return `${Math.round(seconds / 60)} minutes`;
}
