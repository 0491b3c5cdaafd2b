/** Runs one above the other on a scale of orders, so that what follows a part stands in one column at every speed. */
import type { RunPicture } from '../../core/report/analysis.ts';
import type { Line, Part } from '../../core/vehicle/line.ts';

export interface OrderRow {
  readonly picture: RunPicture;
  /** Turning speed of the part in this run, Hz. */
  readonly turningHz: number;
}

/** How fast a part turned in a run, Hz; null where that is not known. */
export function turningHz(lines: readonly Line[], part: Part, name: string | undefined): number | null {
  const line = lines.find((candidate) => candidate.part === part && candidate.name === name && candidate.order > 0);
  return line ? line.frequencyHz / line.order : null;
}

/** The runs in which the part turned at a known speed. */
export function orderRows(pictures: readonly RunPicture[], part: Part, name: string | undefined): OrderRow[] {
  return pictures.flatMap((picture) => {
    const hz = turningHz(picture.lines, part, name);
    return hz === null ? [] : [{ picture, turningHz: hz }];
  });
}

/** The order up to which all rows have something to show, at most one beyond twice the order in question. */
export function topOrder(rows: readonly OrderRow[], order: number): number {
  const reach = rows.map(({ picture: { spectrum }, turningHz: hz }) => {
    return ((spectrum.amplitudeMps2.length - 1) * spectrum.stepHz) / hz;
  });
  return Math.max(1, Math.min(Math.max(3, 2 * order + 1), ...reach));
}
