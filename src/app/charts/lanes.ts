/** Which lanes stand below the spectrum, and which marks have room for their words. */
import type { Line, Part } from '../../core/vehicle/line.ts';
import { texts } from '../texts.ts';
import { LANE_ORDER } from './part-style.ts';
import { capitalized } from '../../core/words.ts';

export interface LaneMark {
  readonly line: Line;
  /** Where it is drawn, Hz: the line, or its alias image. */
  readonly atHz: number;
  readonly isImage: boolean;
  /** '2×', '4× firing' or 'image of 4×'. */
  readonly text: string;
}

export interface Lane {
  /** Part, and the name where one part has several: 'front driveshaft'. */
  readonly key: string;
  readonly part: Part;
  readonly name: string | undefined;
  readonly marks: readonly LaneMark[];
}

/** One lane for each part (and each of several), in a fixed order; lines above half the rate stand at their image. */
export function lanesOf(lines: readonly Line[]): Lane[] {
  const byKey = new Map<string, Line[]>();
  for (const line of lines) {
    const key = `${line.part} ${line.name ?? ''}`.trim();
    byKey.set(key, [...(byKey.get(key) ?? []), line]);
  }
  const lanes = [...byKey].flatMap(([key, group]): Lane[] => {
    const [first] = group;
    if (!first) return [];
    const marks = group.map(markOf).filter((mark) => mark !== null);
    return [{ key, part: first.part, name: first.name, marks: marks.sort((a, b) => a.atHz - b.atHz) }];
  });
  return lanes.sort((a, b) => LANE_ORDER.indexOf(a.part) - LANE_ORDER.indexOf(b.part));
}

function markOf(line: Line): LaneMark | null {
  const isImage = line.visibility === 'above-half-rate';
  const atHz = isImage ? line.aliasHz : line.frequencyHz;
  const word = orderWord(line);
  return atHz === undefined ? null : { line, atHz, isImage, text: isImage ? texts.charts.image(word) : word };
}

/** The order without the part's name: the lane says that. '½×', '4× firing'. */
export function orderWord(line: Line): string {
  const prefix = `${line.name ?? line.part} `;
  const text = line.label.startsWith(prefix) ? line.label.slice(prefix.length) : line.label;
  return text.replace(/\((.+)\)/u, '$1');
}

/** 'Driveshaft', 'Front driveshaft', 'Water pump'. */
export const laneName = ({ part, name }: Pick<Lane, 'part' | 'name'>): string =>
  name === undefined ? texts.charts.parts[part] : capitalized(name);

/** Width of a letter of the chart's type at the normal size, px; a little generous. */
export const LETTER_PX = 7;

/** Width of a word in the chart's type, px. */
export const wordWidth = (text: string, perLetter = LETTER_PX): number => text.length * perLetter;

/** A word over or under its mark; important ones are bold. */
export interface MarkWord {
  readonly xPx: number;
  readonly text: string;
  readonly important: boolean;
}

/** Half of a word's width, and where its middle stands so that all of it lies within the picture, px. */
export const placeWord = (
  { xPx, text, important }: MarkWord,
  { left, right }: { readonly left: number; readonly right: number },
  letterPx: number,
): { readonly half: number; readonly middle: number } => {
  const half = wordWidth(text, letterPx * (important ? BOLD : 1)) / 2;
  return { half, middle: Math.max(left + half, Math.min(xPx, right - half)) };
};

/**
 * Chooses the marks that get their word written, so that no two words touch. Marks listed as important come first.
 *
 * @param marks Marks with their place, px; the words of important ones are written first, those of images last.
 * @returns Indices of the marks whose word has room.
 */
export function wordsWithRoom(
  marks: readonly (MarkWord & { readonly isImage?: boolean })[],
  widthPx: number,
  letterPx = LETTER_PX,
): ReadonlySet<number> {
  const kept = new Set<number>();
  const taken: [from: number, to: number][] = [];
  const ranked = marks.map((mark, index) => ({ ...mark, index })).sort((a, b) => rankOf(a) - rankOf(b));
  for (const { index, ...mark } of ranked) {
    const { half, middle } = placeWord(mark, { left: 0, right: widthPx }, letterPx);
    const span: [number, number] = [middle - half - 2, middle + half + 2];
    const { xPx } = mark;
    if (xPx < 0 || xPx > widthPx || taken.some(([from, to]) => span[0] < to && span[1] > from)) continue;
    taken.push(span);
    kept.add(index);
  }
  return kept;
}

/** Width of bold letters against plain ones. */
export const BOLD = 1.15;

const rankOf = ({ important, isImage }: { important: boolean; isImage?: boolean }): number =>
  important ? 0 : isImage ? 2 : 1;

/** Lines that cannot be seen and have no image worth drawing, for the sentence under the chart. */
export const unseenLines = (lines: readonly Line[]): readonly Line[] =>
  lines.filter((line) => line.visibility === 'above-half-rate');
