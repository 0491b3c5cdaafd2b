/** The orders drawn over the map, and where each one's name stands: where its track meets the upper edge. */
import type { ScaleLinear } from 'd3';
import type { RunPicture } from '../../core/report/analysis.ts';
import type { PeakReport } from '../../core/report/report.ts';
import { aliasOfHz } from '../../core/vehicle/alias.ts';
import { texts } from '../texts.ts';
import { PART_STYLES, type PartStyle } from './part-style.ts';
import { relativeAt, trackPath } from './tracks.ts';

/** A track that has its name over its upper end. */
export interface NamedTrack {
  readonly key: string;
  readonly text: string;
  readonly style: PartStyle;
  readonly isMatched: boolean;
  /** Where it meets the upper edge, px. */
  readonly endPx: number;
}

export interface MapTrack extends NamedTrack {
  readonly path: string;
}

interface MapScales {
  readonly x: ScaleLinear<number, number>;
  readonly time: ScaleLinear<number, number>;
  readonly right: number;
}

/** A tone is told as fixed from this probability on. */
const FIXED_FROM = 0.5;
/** Tracks that end nearer than this share one name, px. */
const SAME_END_PX = 5;

/** All orders in the picture, and the images and fixed tones that some peak is. */
export function mapTracks(
  picture: RunPicture,
  peaks: readonly PeakReport[],
  matched: ReadonlySet<string>,
  { x, time, right }: MapScales,
): MapTrack[] {
  const endS = time.domain()[1] ?? 0;
  const orders = picture.lines.flatMap((line): MapTrack[] => {
    const isImage = line.visibility === 'above-half-rate';
    const isMatched = matched.has(line.label);
    if ((isImage && !isMatched) || x(line.aliasHz ?? line.frequencyHz) > right + 200) return [];
    const endHz = line.frequencyHz * relativeAt(picture.histories[line.group], endS);
    return [
      {
        key: line.label,
        text: isImage ? texts.charts.image(line.label) : line.label,
        style: PART_STYLES[line.part],
        isMatched,
        path: trackPath(line, picture, x, time),
        endPx: x(aliasOfHz(endHz, picture.samplingRateHz)),
      },
    ];
  });
  return [...orders, ...fixedTracks(peaks, x, time)];
}

/** Upright lines for the tones that stand still. */
function fixedTracks(peaks: readonly PeakReport[], x: MapScales['x'], time: MapScales['time']): MapTrack[] {
  const [from = 0, to = 0] = time.range();
  return peaks.flatMap(({ frequencyHz, matches: [first] }): MapTrack[] => {
    if (first?.part !== 'fixed' || first.probability < FIXED_FROM) return [];
    const px = x(frequencyHz);
    return [
      {
        key: `${first.label} ${frequencyHz}`,
        text: first.label,
        style: PART_STYLES.fixed,
        isMatched: true,
        path: `M${px},${from}L${px},${to}`,
        endPx: px,
      },
    ];
  });
}

/**
 * Matched tracks that end in one place have one name together: 'driveshaft 2× or engine 2×'.
 * @param mostLetters that the picture is wide: of names that do not fit together the first stands alone
 */
export function withSharedNames(tracks: readonly NamedTrack[], mostLetters = Infinity): NamedTrack[] {
  return tracks.map((track, index) => {
    if (!track.isMatched) return track;
    const shares = (other: NamedTrack): boolean => other.isMatched && Math.abs(other.endPx - track.endPx) < SAME_END_PX;
    const first = tracks.findIndex(shares);
    const together = tracks
      .filter(shares)
      .map(({ text }) => text)
      .join(texts.charts.or);
    const text = together.length > mostLetters ? track.text : together;
    return { ...track, text: first === index ? text : '' };
  });
}
