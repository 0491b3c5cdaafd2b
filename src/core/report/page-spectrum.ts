/** The spectrum picture of the page: trace, floor, lanes of the parts under it, a dashed drop from peak to line. */
import { PERCEPTION_THRESHOLD_MPS2, weightingVertical } from '../signal/felt.ts';
import type { RunPicture } from './analysis.ts';
import type { FindingReport, Report } from './report.ts';
import { decadeTicks, decimate, linearScale, linearTicks, logScale } from './chart-geometry.ts';
import type { Scale } from './chart-geometry.ts';
import { frequencyText, significant } from './format.ts';
import type { Markup } from './html.ts';
import { html, raw } from './html.ts';
import { labelInLane, lanesOf } from './lanes.ts';

/** Width of a picture in its own units, which are pixels of type: on a screen or paper, and on a phone. */
export const WIDTHS = { wide: 820, phone: 340 } as const;
export type PictureWidth = keyof typeof WIDTHS;

const LEFT = 52;
const RIGHT = 14;
const TRACE_TOP = 26;
const TRACE_BOTTOM = 236;
const LANE_HEIGHT = 38;
/** Beyond this the seat feels nothing and most loggers see nothing; lines above it stay in the order table. */
const HIGHEST_SHOWN_HZ = 250;

/** Upper end of the picture: a little above the highest line that can be seen, within the recording. */
export function shownRangeHz(picture: RunPicture): readonly [number, number] {
  const halfRate = picture.spectrum.stepHz * (picture.spectrum.amplitudeMps2.length - 1);
  const highest = Math.max(
    40,
    ...picture.lines.filter(({ frequencyHz }) => frequencyHz < halfRate).map(({ frequencyHz }) => frequencyHz),
  );
  return [0, Math.min(halfRate, HIGHEST_SHOWN_HZ, highest * 1.08)];
}

/** One SVG figure. */
export function spectrumFigure(picture: RunPicture, report: Report, width: PictureWidth = 'wide'): Markup {
  const range = shownRangeHz(picture);
  const right = WIDTHS[width] - RIGHT;
  const x = linearScale(range, [LEFT, right]);
  const points = decimate(
    picture.spectrum.amplitudeMps2,
    picture.spectrum.stepHz,
    [Math.max(range[0], 1), range[1]],
    right - LEFT,
  );
  const levels = points.map(([, level]) => level).filter((level) => level > 0);
  const top = Math.max(...levels, 1e-3) * 1.6;
  const y = logScale(
    [Math.max(top / 3000, levels.length > 0 ? quantile(levels, 0.02) / 2 : 1e-5), top],
    [TRACE_BOTTOM, TRACE_TOP],
  );
  const lanes = lanesOf(picture.lines, range[1]);
  const height = TRACE_BOTTOM + 22 + lanes.length * LANE_HEIGHT + 26;
  const findings = report.findings.filter(({ run }) => run === picture.run);
  const axisY = height - 8;
  return html`<svg
    viewBox="0 0 ${WIDTHS[width]} ${height}"
    class="${width}"
    role="img"
    aria-label="Spectrum of ${picture.run}, with the expected orders of each part below it"
  >
    <text x="${LEFT}" y="14">level, m/s² (0 to peak), all axes</text>
    ${decadeTicks(y.from[0], y.from[1]).map((tick) => html`<line x1="${LEFT}" x2="${right}" y1="${f1(y.place(tick))}" y2="${f1(y.place(tick))}" class="grid" /><text x="${LEFT - 6}" y="${f1(y.place(tick) + 4)}" text-anchor="end">${significant(tick, 1)}</text>`)}
    ${feltLine(x, y)}
    <path d="${path(points, x, y)}" class="trace" />
    ${lanes.map((lane, index) => laneMarkup(lane, TRACE_BOTTOM + 34 + index * LANE_HEIGHT, x))}
    ${findings.map((finding) =>
      dropMarkup(
        finding,
        lanes.findIndex(({ part }) => part === finding.part),
        x,
        y,
      ),
    )}
    ${frequencyAxis(x, axisY)}</svg>`;
}

/** Room of a tick's figure, in the picture's units. */
const LEAST_TICK_GAP = 50;

/** Round tick values under a picture, the unit with the last. */
export function frequencyAxis(x: Scale, y: number): Markup {
  const ticks = linearTicks(x.from[0], x.from[1], Math.min(7, (x.to[1] - x.to[0]) / LEAST_TICK_GAP));
  return html`${ticks.map((tick, index) => {
    const last = index === ticks.length - 1;
    const anchor = last && x.place(tick) > x.to[1] + RIGHT - 40 ? 'end' : 'middle';
    return html`<text x="${f1(x.place(tick))}" y="${f1(y)}" text-anchor="${anchor}">${Number(tick.toFixed(3))}${last ? ' Hz' : ''}</text>`;
  })}`;
}

const f1 = (value: number): string => value.toFixed(1);

const path = (points: readonly (readonly [number, number])[], x: Scale, y: Scale): string =>
  points.map(([at, level], index) => `${index === 0 ? 'M' : 'L'}${f1(x.place(at))} ${f1(y.place(level))}`).join('');

function quantile(values: readonly number[], p: number): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.floor(p * (sorted.length - 1))] ?? 1e-5;
}

/** The level that is just felt at each frequency, vertical motion at the seat. */
function feltLine(x: Scale, y: Scale): Markup {
  const points: [number, number][] = [];
  for (let f = 1; f <= Math.min(x.from[1], 160); f += 1)
    points.push([f, PERCEPTION_THRESHOLD_MPS2 / weightingVertical(f)]);
  const inside = points.filter(([, level]) => level >= y.from[0] && level <= y.from[1]);
  if (inside.length === 0) return raw('');
  const [lastF, lastLevel] = inside[inside.length - 1] ?? [0, 0];
  return html`<path d="${path(inside, x, y)}" class="felt" /><text
      x="${f1(x.place(lastF) - 4)}"
      y="${f1(y.place(lastLevel) - 6)}"
      text-anchor="end"
      >just felt</text
    >`;
}

function laneMarkup(lane: ReturnType<typeof lanesOf>[number], middle: number, x: Scale): Markup {
  let lastLabelEnd = -Infinity;
  return html`<line x1="${LEFT}" x2="${x.to[1]}" y1="${middle}" y2="${middle}" class="grid" /><text
      x="4"
      y="${middle - 10}"
      class="strong"
      >${lane.name}</text
    >
    ${lane.lines.map((line) => {
      const at = x.place(line.frequencyHz);
      const half = Math.max(1.5, x.place(line.frequencyHz + line.frequencySdHz) - at);
      const label = labelInLane(line);
      const fits = at - label.length * 3.2 > lastLabelEnd;
      if (fits) lastLabelEnd = at + label.length * 3.2 + 3;
      return html`<rect
          x="${f1(at - half)}"
          y="${middle - 6}"
          width="${f1(2 * half)}"
          height="12"
          rx="2"
          class="band ${lane.part}"
        /><line
          x1="${f1(at)}"
          x2="${f1(at)}"
          y1="${middle - 6}"
          y2="${middle + 6}"
          class="mark ${lane.part}"
        />${fits ? html`<text x="${f1(at)}" y="${middle + 18}" text-anchor="middle">${label}</text>` : null}`;
    })}`;
}

/** Width of a letter of a label, about. */
const LETTER = 6.8;

function dropMarkup(finding: FindingReport, lane: number, x: Scale, y: Scale): Markup {
  const at = x.place(finding.frequencyHz);
  const level = y.place(finding.amplitudeMps2);
  const end = lane < 0 ? TRACE_BOTTOM : TRACE_BOTTOM + 34 + lane * LANE_HEIGHT - 6;
  const label = `${finding.label}, ${frequencyText(finding.frequencyHz)}`;
  const roomRight = x.to[1] - at;
  const side = roomRight < LETTER * label.length && roomRight < at ? 'end' : 'start';
  return html`<path d="M${f1(at)} ${f1(level)}V${end}" class="drop ${finding.part}" /><circle
      cx="${f1(at)}"
      cy="${f1(level)}"
      r="4.5"
      class="dot ${finding.part}"
    /><text x="${f1(at + (side === 'end' ? -9 : 9))}" y="${f1(level + 3)}" text-anchor="${side}" class="strong"
      >${label}</text
    >`;
}
