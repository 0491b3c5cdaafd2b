/** Lines of the turning parts, gathered into one lane a part for the picture under a spectrum. */
import type { Line, Part } from '../vehicle/line.ts';

export interface Lane {
  readonly part: Part;
  readonly name: string;
  readonly lines: readonly Line[];
}

const PART_NAMES: Readonly<Record<Part, string>> = {
  tire: 'Tire',
  driveshaft: 'Driveshaft',
  'half-shaft': 'Half-shaft',
  engine: 'Engine',
  accessory: 'Accessory',
  fixed: 'Fixed',
  unknown: 'Unknown',
};

/** Order of the lanes, slow parts first. */
const PART_ORDER: readonly Part[] = ['tire', 'half-shaft', 'driveshaft', 'engine', 'accessory'];

/** The lanes that have at least one line below `highestHz`. */
export function lanesOf(lines: readonly Line[], highestHz: number): Lane[] {
  return PART_ORDER.map((part) => ({
    part,
    name: PART_NAMES[part],
    lines: lines.filter((line) => line.part === part && line.frequencyHz <= highestHz),
  })).filter((lane) => lane.lines.length > 0);
}

/** '1×', '½×', '4× (firing)': a line's label without the part its lane already names. */
export function labelInLane(line: Line): string {
  const words = line.label.split(' ');
  const from = words.findIndex((word) => word.includes('×'));
  return from < 0 ? line.label : words.slice(from).join(' ');
}
