/** Where in a recording it shakes: a shake that comes in one part of a drive is lost in the average over all of it. */
import type { Span } from '../../reading/cut-recording.ts';
import type { Prepared } from './spectrum.ts';
import { quantile } from '../numeric/statistics.ts';

/** Blocks in which the shake is read, s. */
const BLOCK_S = 0.5;
const LOW = 0.1;
const HIGH = 0.9;
/** The loud tenth must shake this much more than the quiet one: roads and speeds make less of a difference. Judgment. */
const LOUD_OVER_QUIET = 3;
/** Fewer blocks are one event. */
const LEAST_BLOCKS = 10;
/** A stretch goes on through so many quieter blocks. */
const BRIDGED = 1;
/** Least length of a stretch, s; a shorter one is widened to it. */
const LEAST_S = 4;
/** A stretch that takes up more of the recording than this is the recording. */
const MOST_SHARE = 0.8;

interface Shake {
  readonly startS: number;
  readonly level: number;
}

/** Root mean square of all axes together, block by block, of one piece. */
const shakesOf = ({ startS, axes }: Prepared['pieces'][number], length: number): readonly Shake[] =>
  Array.from({ length: Math.floor((axes[0]?.length ?? 0) / length) }, (_, b) => {
    let power = 0;
    for (const axis of axes) for (let i = b * length; i < (b + 1) * length; i++) power += axis[i]! ** 2;
    return { startS: startS + b * BLOCK_S, level: Math.sqrt(power / length) };
  });

/**
 * The stretch of a recording that shakes most, in all, among those that are loud throughout; null where none stands out.
 */
export const loudStretch = ({ pieces, samplingRateHz, durationS }: Prepared): Span | null => {
  const length = Math.round(BLOCK_S * samplingRateHz);
  const byPiece = pieces.map((piece) => shakesOf(piece, length));
  const levels = byPiece.flat().map(({ level }) => level);
  if (levels.length < LEAST_BLOCKS) return null;
  const quiet = Math.max(quantile(levels, LOW), 1e-12);
  const loud = quantile(levels, HIGH);
  if (loud < LOUD_OVER_QUIET * quiet) return null;
  const threshold = Math.sqrt(loud * quiet);
  const stretches: { stretch: Span; power: number }[] = [];
  byPiece.forEach((shakes) => {
    for (let from = 0; from < shakes.length; from++) {
      if (shakes[from]!.level < threshold) continue;
      let last = from;
      let power = 0;
      for (let i = from; i < shakes.length && i - last <= BRIDGED + 1; i++) {
        if (shakes[i]!.level < threshold) continue;
        last = i;
        power += shakes[i]!.level ** 2;
      }
      const stretch = { fromS: shakes[from]!.startS, toS: shakes[last]!.startS + BLOCK_S };
      stretches.push({ stretch, power });
      from = last;
    }
  });
  const { stretch } = stretches.reduce((a, b) => (b.power > a.power ? b : a));
  return widened(stretch, { pieces, samplingRateHz, durationS });
};

/** A short stretch made as long as can be judged, within its piece; null where it cannot be, and of as good as all. */
export const widened = (
  { fromS, toS }: Span,
  { pieces, samplingRateHz, durationS }: Pick<Prepared, 'pieces' | 'samplingRateHz' | 'durationS'>,
): Span | null => {
  const ends = pieces.map(({ startS, axes }) => ({ startS, endS: startS + (axes[0]?.length ?? 0) / samplingRateHz }));
  const piece = ends.find(({ startS, endS }) => (fromS + toS) / 2 >= startS && (fromS + toS) / 2 <= endS);
  if (!piece) return null;
  const { startS, endS } = piece;
  const lack = Math.max(0, LEAST_S - (toS - fromS));
  const from = Math.max(startS, Math.min(fromS - lack / 2, endS - LEAST_S));
  const to = Math.min(endS, Math.max(toS + lack / 2, from + LEAST_S));
  return to - from < LEAST_S || to - from > MOST_SHARE * durationS ? null : { fromS: from, toS: to };
};
