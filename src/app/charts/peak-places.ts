/** Where each peak is drawn, what is written beside it, and which lanes its drops lead to. */
import { frequencyText } from '../../core/report/format.ts';
import type { FindingReport, MatchReport, PeakReport } from '../../core/report/report.ts';
import { texts } from '../texts.ts';
import { findingOf, trueHzOfImage } from './finding-peak.ts';
import type { SpectrumGeometry } from './geometry.ts';
import type { Box } from './just-felt.ts';
import type { Lane } from './lanes.ts';
import { wordWidth } from './lanes.ts';
import type { LevelKind } from './level.ts';
import { levelOf } from './level.ts';
import { drawnMatches } from './matched.ts';
import type { PartStyle } from './part-style.ts';
import { PART_STYLES } from './part-style.ts';

/** A stretch of the way from a peak down to a lane of a part it may belong to. */
export interface Drop {
  readonly fromY: number;
  /** Middle of the lane. */
  readonly laneY: number;
  readonly style: PartStyle;
}

export interface PeakPlace {
  readonly peak: PeakReport;
  readonly x: number;
  readonly y: number;
  /** From lane to lane, downward; none where it is matched to none. */
  readonly drops: readonly Drop[];
  readonly style: PartStyle;
  readonly weight: 'chosen' | 'finding' | 'plain';
  /** '86.5 Hz', and what it is the image of; none for a peak that is not worth words. */
  readonly text: readonly string[];
}

/** What a word needs to know of the picture it stands in. */
type WordRoom = Pick<SpectrumGeometry, 'right' | 'letterPx'>;

interface PlaceOptions {
  readonly geometry: SpectrumGeometry;
  readonly lanes: readonly Lane[];
  readonly kind: LevelKind;
  readonly share: number | null;
  readonly findings: readonly FindingReport[];
  readonly samplingRateHz: number;
  readonly chosen: PeakReport | null;
}

/** Peaks in the shown stretch, the chosen one last so that it lies on top. */
export function placePeaks(peaks: readonly PeakReport[], options: PlaceOptions): PeakPlace[] {
  const { left, right } = options.geometry;
  return peaks
    .map((peak) => placePeak(peak, options))
    .filter(({ x }) => x >= left && x <= right)
    .sort((a, b) => +(a.weight === 'chosen') - +(b.weight === 'chosen'));
}

function placePeak(peak: PeakReport, options: PlaceOptions): PeakPlace {
  const { geometry, kind, share, findings, samplingRateHz, chosen } = options;
  const finding = findingOf(peak, findings, samplingRateHz);
  const matches = drawnMatches(peak, finding !== null);
  const y = geometry.y(levelOf(kind, peak.frequencyHz, peak.amplitudeMps2, share));
  const weight = peak === chosen ? 'chosen' : finding ? 'finding' : 'plain';
  const trueHz = trueHzOfImage(peak, finding);
  const here = frequencyText(peak.frequencyHz);
  return {
    peak,
    x: geometry.x(peak.frequencyHz),
    y,
    drops: dropsTo(matches, y, options),
    style: PART_STYLES[matches[0]?.part ?? 'unknown'],
    weight,
    text: weight === 'plain' ? [] : trueHz === null ? [here] : [here, texts.charts.image(frequencyText(trueHz))],
  };
}

function dropsTo(matches: readonly MatchReport[], peakY: number, { geometry, lanes }: PlaceOptions): Drop[] {
  const ends = lanes.flatMap((lane, index) => {
    const isSuspect = matches.some(({ part, name }) => part === lane.part && name === lane.name);
    const laneY = geometry.laneY[index];
    return isSuspect && laneY !== undefined ? [{ laneY, style: PART_STYLES[lane.part] }] : [];
  });
  return ends.map((end, index) => ({ ...end, fromY: ends[index - 1]?.laneY ?? peakY }));
}

/** Where a peak's mark, its word and its drop to the lanes stand, for what must not be written over them. */
export function peakBoxes(places: readonly PeakPlace[], picture: WordRoom): Box[] {
  return places.flatMap(({ x, y, drops, text }): Box[] => {
    const word = text.length === 0 ? 0 : widthOf(text, picture) + 12;
    const leftward = isLeftward(x, text, picture);
    const mark = {
      left: x - 8 - (leftward ? word : 0),
      right: x + 8 + (leftward ? 0 : word),
      top: y - 12,
      bottom: y + 8 + (text.length > 1 ? LINE_PX : 0),
    };
    const lowest = drops.at(-1)?.laneY;
    return lowest === undefined ? [mark] : [mark, { left: x - 2, right: x + 2, top: y, bottom: lowest }];
  });
}

/** From one line of a peak's words to the next, px. */
export const LINE_PX = 16;

/** Width of a peak's words, which are bold, px. */
const widthOf = (text: readonly string[], { letterPx }: Pick<WordRoom, 'letterPx'>): number =>
  Math.max(0, ...text.map((line) => wordWidth(line, letterPx + 1)));

/** Near the right edge a peak's word stands left of it. */
export const isLeftward = (x: number, text: readonly string[], picture: WordRoom): boolean =>
  x + 9 + widthOf(text, picture) > picture.right;
