/** Forks at the two ends of a shaft piece: how far they stand out of line, and a driveline with all of them in line. */
import type { AngleSetup } from './angle-chain.ts';

/** How far a turn is from a half turn or none, degrees, −90..90: forks and planes do not notice a half turn. */
export const outOfLineDeg = (turnDeg: number): number => ((((turnDeg + 90) % 180) + 180) % 180) - 90;

/** True where forks stand more than a degree out of line: more than reading error, less than most spline teeth. */
export const isTwisted = (twistDeg: number): boolean => Math.abs(outOfLineDeg(twistDeg)) > 1;

/** The same driveline with the forks of every piece in line. */
export const withForksInLine = <T extends Pick<AngleSetup, 'phasingDeg'>>(setup: T): T => ({
  ...setup,
  phasingDeg: setup.phasingDeg?.map(() => 0),
});
