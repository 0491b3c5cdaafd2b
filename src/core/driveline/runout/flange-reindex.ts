/**
 * Vibration with the shaft turned to several bolt positions of its flange, amplitudes only. What the flange brings and
 * what the shaft brings add as vectors, so the squared level goes as a + b·cos + c·sin of the turn (derived).
 */
import { radFromDeg } from '../../units.ts';
import type { Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import { leastSquares } from '../least-squares.ts';

export interface ReindexLevel {
  readonly steps: number;
  readonly amplitude: number;
}

export interface Reindexing {
  /** Level at every bolt position, lowest first; computed where three or more positions were tried, else as tried. */
  readonly positions: readonly { readonly steps: number; readonly amplitude: number; readonly tried: boolean }[];
  /** Highest less lowest level tried: how much the pairing of flange and shaft matters. */
  readonly spread: number;
}

/** More bolts than any flange has. */
const MOST_BOLTS = 48;

/**
 * Judge the positions.
 * @param levels level at each tried position, steps counted from as found
 */
export const reindexByLevels = (levels: readonly ReindexLevel[], boltCount: number): Result<Reindexing> => {
  const usable = levels.filter(({ steps, amplitude }) => Number.isInteger(steps) && amplitude >= 0);
  const turns = new Set(usable.map(({ steps }) => ((steps % boltCount) + boltCount) % boltCount));
  if (
    !Number.isInteger(boltCount) ||
    boltCount < 2 ||
    boltCount > MOST_BOLTS ||
    usable.length < levels.length ||
    turns.size < 2
  ) {
    return failure({
      code: 'reindex-too-few',
      key: 'levels',
      message: 'Re-indexing needs the level as found and with the shaft turned by at least one bolt position.',
      remedy: 'Mark shaft and flange, turn the shaft one or more bolt positions, and record again at the same speed.',
    });
  }
  const amplitudes = usable.map(({ amplitude }) => amplitude);
  const angleOf = (steps: number): number => radFromDeg((360 * steps) / boltCount);
  const rows = usable.map(({ steps }) => [1, Math.cos(angleOf(steps)), Math.sin(angleOf(steps))]);
  const fit =
    turns.size < 3
      ? null
      : leastSquares(
          rows,
          amplitudes.map((amplitude) => amplitude ** 2),
        );
  const levelAt = ([mean, cosine, sine]: readonly number[], steps: number): number =>
    Math.sqrt(Math.max(mean! + cosine! * Math.cos(angleOf(steps)) + sine! * Math.sin(angleOf(steps)), 0));
  const positions =
    fit === null
      ? usable.map(({ steps, amplitude }) => ({ steps, amplitude, tried: true }))
      : Array.from({ length: boltCount }, (_, steps) => ({
          steps,
          amplitude: levelAt(fit.solution, steps),
          tried: turns.has(steps),
        }));
  return success({
    positions: [...positions].sort((a, b) => a.amplitude - b.amplitude || a.steps - b.steps),
    spread: Math.max(...amplitudes) - Math.min(...amplitudes),
  });
};
