/** Lines of one run that stand so close that the recording can hardly part them, or not at all. */
import type { Line } from './line.ts';

export interface Collision {
  readonly first: Line;
  readonly second: Line;
  readonly separationHz: number;
  /**
   * Seconds of steady speed that part them in a spectrum with the Hann window; null where they turn in one ratio and
   * no length helps.
   */
  readonly recordLengthS: number | null;
}

/** Two equal tones part when four bins of a Hann spectrum lie between them (Harris 1978: main lobe of four bins). */
const BINS_TO_PART = 4;
/** Frequencies this close differ by rounding alone: of one ratio. */
const ONE_RATIO = 1e-6;

/** Seconds of steady speed needed to part two lines this far apart: four bins of 1/T. */
export const recordLengthToPartS = (separationHz: number): number => BINS_TO_PART / separationHz;

/**
 * Pairs of lines that coincide, or would need a longer steady recording than there is.
 *
 * Only what separates them in this run counts; that a speed is not known exactly is a matter for the matching, which
 * shifts all lines of a group together.
 *
 * @param lines Lines of one run.
 * @param lengthS Length of the steady recording, s.
 * @returns Pairs in the order of the lines, coinciding ones included.
 */
export const collisions = (lines: readonly Line[], lengthS: number): readonly Collision[] =>
  lines.flatMap((first, index) =>
    lines.slice(index + 1).flatMap((second) => {
      const separationHz = Math.abs(first.frequencyHz - second.frequencyHz);
      const coincide = separationHz <= ONE_RATIO * first.frequencyHz;
      const needed = coincide ? null : recordLengthToPartS(separationHz);
      return needed === null || needed > lengthS ? [{ first, second, separationHz, recordLengthS: needed }] : [];
    }),
  );
