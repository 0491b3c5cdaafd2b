/**
 * Runs one above the other on one scale: of orders, so that what follows a part stands in one column at every speed;
 * of frequency for a tone that follows none, which then stands in one column itself.
 */
import type { RunPicture } from '../../core/report/analysis.ts';
import type { FindingReport } from '../../core/report/report.ts';
import { aliasOfHz } from '../../core/vehicle/alias.ts';
import type { Line, Part } from '../../core/vehicle/line.ts';

export interface RunRow {
  readonly picture: RunPicture;
  /** What one step of the scale is in this run, Hz: a turn of the part, or 1 Hz. */
  readonly stepHz: number;
}

export interface RunScale {
  readonly rows: readonly RunRow[];
  /** Where the finding stands on the scale, in steps. */
  readonly place: number;
  /** Upper end of the scale. */
  readonly top: number;
}

/** How fast a part turned in a run, Hz; null where that is not known. */
export function turningHz(lines: readonly Line[], part: Part, name: string | undefined): number | null {
  const line = lines.find((candidate) => candidate.part === part && candidate.name === name && candidate.order > 0);
  return line ? line.frequencyHz / line.order : null;
}

/** The runs in which the part turned at a known speed. */
export function orderRows(pictures: readonly RunPicture[], part: Part, name: string | undefined): RunRow[] {
  return pictures.flatMap((picture) => {
    const stepHz = turningHz(picture.lines, part, name);
    return stepHz === null ? [] : [{ picture, stepHz }];
  });
}

/** The scale the finding's runs are drawn on. */
export function runScale(pictures: readonly RunPicture[], finding: FindingReport): RunScale {
  const { order, part, name, frequencyHz, run } = finding;
  if (order !== null) {
    const rows = orderRows(pictures, part, name);
    return { rows, place: order, top: topOf(rows, Math.max(3, 2 * order + 1)) };
  }
  const rows = pictures.map((picture) => ({ picture, stepHz: 1 }));
  const rate = pictures.find((picture) => picture.run === run)?.samplingRateHz ?? Infinity;
  const place = aliasOfHz(frequencyHz, rate);
  return { rows, place, top: topOf(rows, Math.max(LEAST_TOP_HZ, 2 * place)) };
}

/** A scale of frequency reaches at least so far, Hz. */
const LEAST_TOP_HZ = 40;

/** The step up to which all rows have something to show, and no farther than wanted. */
function topOf(rows: readonly RunRow[], wanted: number): number {
  const reach = rows.map(
    ({ picture: { spectrum }, stepHz }) => ((spectrum.amplitudeMps2.length - 1) * spectrum.stepHz) / stepHz,
  );
  return Math.max(1, Math.min(wanted, ...reach));
}
