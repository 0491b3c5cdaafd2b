/** The time-frequency picture of the page: time upward, frequency across, the found orders drawn over it. */
import type { RunPicture } from './analysis.ts';
import type { FindingReport, Report } from './report.ts';
import { linearScale } from './chart-geometry.ts';
import type { Scale } from './chart-geometry.ts';
import { durationText } from './format.ts';
import { aliasOfHz } from '../vehicle/alias.ts';
import type { Markup } from './html.ts';
import { html } from './html.ts';
import type { PictureWidth } from './page-spectrum.ts';
import { frequencyAxis, shownRangeHz, WIDTHS } from './page-spectrum.ts';

const LEFT = 52;
const RIGHT = 14;
const TOP = 6;
const CELL_HEIGHT = 5;
const MOST_ROWS = 32;
const COLUMNS = 150;
/** Shades from faint to full; the lightest cells are left as paper. */
const SHADES = 5;

/** One SVG figure. */
export function mapFigure(picture: RunPicture, report: Report, width: PictureWidth = 'wide'): Markup {
  const range = shownRangeHz(picture);
  const x = linearScale(range, [LEFT, WIDTHS[width] - RIGHT]);
  const grid = coarseGrid(picture, range);
  const bottom = TOP + grid.length * CELL_HEIGHT;
  const times = picture.timeFrequency.timeS;
  const duration = (times[times.length - 1] ?? 0) - (times[0] ?? 0);
  const followed = report.findings.filter(
    ({ run, part }) => run === picture.run && part !== 'unknown' && part !== 'fixed',
  );
  return html`<svg
    viewBox="0 0 ${WIDTHS[width]} ${bottom + 24}"
    class="${width}"
    role="img"
    aria-label="Level over time and frequency in ${picture.run}, ${durationText(duration)} long"
  >
    ${shadePaths(grid, x, range).map((d, shade) => html`<path d="${d}" class="shade shade-${shade + 1}" />`)}
    ${followed.map((finding) => html`<path d="${trackPath(picture, finding, x, bottom)}" class="track ${finding.part}" />`)}
    ${frequencyAxis(x, bottom + 16)}
<text x="${LEFT - 6}" y="${bottom}" text-anchor="end">0 s</text>
    <text x="${LEFT - 6}" y="${TOP + 10}" text-anchor="end">${durationText(duration)}</text>
  </svg>`;
}

/** Level in coarse cells, newest row first (drawn at the top): the greatest value of each, whitened by its column. */
function coarseGrid(picture: RunPicture, range: readonly [number, number]): number[][] {
  const { amplitudeMps2, bins, stepHz, timeS } = picture.timeFrequency;
  const rows = Math.min(MOST_ROWS, timeS.length);
  return Array.from({ length: rows }, (_, row) => {
    const fromTime = Math.floor((row * timeS.length) / rows);
    const toTime = Math.max(fromTime + 1, Math.floor(((row + 1) * timeS.length) / rows));
    return Array.from({ length: COLUMNS }, (_unused, column) => {
      const low = range[0] + ((range[1] - range[0]) * column) / COLUMNS;
      const fromBin = Math.max(1, Math.floor(low / stepHz));
      const toBin = Math.min(bins - 1, Math.max(fromBin, Math.floor((low + (range[1] - range[0]) / COLUMNS) / stepHz)));
      let greatest = 0;
      for (let t = fromTime; t < toTime; t += 1) {
        for (let bin = fromBin; bin <= toBin; bin += 1)
          greatest = Math.max(greatest, amplitudeMps2[t * bins + bin] ?? 0);
      }
      return greatest;
    });
  }).reverse();
}

/** One path a shade, runs of equal cells joined; shades split the levels in equal steps of decibels over 34 dB. */
function shadePaths(grid: readonly (readonly number[])[], x: Scale, range: readonly [number, number]): string[] {
  const greatest = Math.max(1e-12, ...grid.flat());
  const shadeOf = (level: number): number =>
    Math.floor(SHADES * (1 + (20 * Math.log10(Math.max(level, 1e-12) / greatest)) / 34) - 1e-9);
  const paths: string[] = Array.from({ length: SHADES }, () => '');
  const left = (column: number): number => x.place(range[0] + ((range[1] - range[0]) * column) / COLUMNS);
  grid.forEach((row, index) => {
    let from = 0;
    for (let column = 1; column <= row.length; column += 1) {
      const shade = shadeOf(row[from] ?? 0);
      if (column < row.length && shadeOf(row[column] ?? 0) === shade) continue;
      if (shade >= 0) {
        const y = TOP + index * CELL_HEIGHT;
        paths[Math.min(shade, SHADES - 1)] +=
          `M${left(from).toFixed(1)} ${y}H${left(column).toFixed(1)}v${CELL_HEIGHT}H${left(from).toFixed(1)}z`;
      }
      from = column;
    }
  });
  return paths;
}

/** Where a finding's order, or its image, runs over time by the history of its part. */
function trackPath(picture: RunPicture, { label, frequencyHz }: FindingReport, x: Scale, bottom: number): string {
  const { timeS, relative } = picture.histories[picture.lines.find((line) => line.label === label)?.group ?? 'road'];
  const times = picture.timeFrequency.timeS;
  const start = times[0] ?? 0;
  const end = times[times.length - 1] ?? start + 1;
  const y = (time: number): number => bottom - ((time - start) / Math.max(end - start, 1e-9)) * (bottom - TOP);
  const shownHz = (index: number): number => aliasOfHz(frequencyHz * (relative[index] ?? 1), picture.samplingRateHz);
  const at = (index: number): string => x.place(shownHz(index)).toFixed(1);
  if (timeS.length < 2) return `M${at(0)} ${bottom}V${TOP}`;
  const step = Math.max(1, Math.floor(timeS.length / 120));
  let d = '';
  for (let i = 0; i < timeS.length; i += step) {
    const time = timeS[i] ?? 0;
    if (time >= start && time <= end) d += `${d === '' ? 'M' : 'L'}${at(i)} ${y(time).toFixed(1)}`;
  }
  return d;
}
