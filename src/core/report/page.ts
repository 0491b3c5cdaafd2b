/** One self-contained printable page: the answer, the pictures, the findings, what to do next. No script, no network. */
import type { Analysis, RunPicture } from './analysis.ts';
import type { Report } from './report.ts';
import type { UnitSystem } from './format.ts';
import type { Markup } from './html.ts';
import { html, raw } from './html.ts';
import { findingMarkup, nextCheckMarkup, proofMarkup, repairsMarkup } from './page-findings.ts';
import { mapFigure } from './page-map.ts';
import type { PictureWidth } from './page-spectrum.ts';
import { spectrumFigure } from './page-spectrum.ts';
import { PAGE_STYLE } from './page-style.ts';
import { ordersTable, runsTable } from './page-tables.ts';
import { vehicleRows } from './vehicle-rows.ts';

export interface PageOptions {
  readonly units: UnitSystem;
  /** Shown above the answer: the job's title. */
  readonly title?: string;
  /** In the driver's words. */
  readonly complaint?: string;
}

/** The page as HTML text. Every word of it that came from a file or a person is escaped. */
export function reportPage(analysis: Analysis, options: PageOptions): string {
  const { report } = analysis;
  const shown = analysis.pictures.find(({ run }) => run === report.findings[0]?.run) ?? analysis.pictures[0];
  const others = analysis.pictures.filter((picture) => picture !== shown);
  const page = html`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8" />
        <meta name="viewport" content="width=device-width,initial-scale=1" />
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'" />
        <title>${options.title ?? report.sentence}</title>
        <style>
          ${raw(PAGE_STYLE)}
        </style>
      </head>
      <body>
        <header>
          <p class="brand">
            perrev${options.title === undefined ? null : html` <span class="soft">${options.title}</span>`}
          </p>
          <h1>${report.sentence}</h1>
          <p class="why">${report.why}</p>
          ${vehicleList(report, options)}
        </header>
        <main>
          ${pictures(shown, report, others.length > 0)}
          ${proofMarkup(report)} ${repairsMarkup(report)} ${nextCheckMarkup(report)} ${report.findings.map((finding) => findingMarkup(finding))}
          ${others.map((picture) => pictures(picture, report, true))}
          <h2>What was recorded</h2>
          ${runsTable(report, options.units)}
          <h2>Orders</h2>
          ${ordersTable(report)}
          ${
            report.cautions.length === 0
              ? null
              : html`<h2>Cautions</h2>
                  ${report.cautions.map((caution) => html`<p class="caution">${caution}</p>`)}`
          }
        </main>
        <footer>
          <p>
            Made by perrev ${report.program.version}. Results rank causes; they do not clear a vehicle as safe. Felt
            level is the level in multiples of the vibration perception threshold of ISO 2631-1 (weighted): 1 is just
            felt.
          </p>
        </footer>
      </body>
    </html> `;
  return page.text;
}

/** What vehicle it was, and what was said of it: a page is read by itself. */
function vehicleList(report: Report, { units, complaint }: PageOptions): Markup {
  const rows = [
    ...vehicleRows(report, units),
    ...(complaint === undefined ? [] : [['Complaint', `“${complaint}”`] as const]),
  ];
  return html`<dl>
    ${rows.map(
      ([name, value]) =>
        html`<div>
          <dt>${name}</dt>
          <dd>${value}</dd>
        </div>`,
    )}
  </dl>`;
}

/** Both are in the page; which is shown is the style’s, by the width of the screen. */
const WIDTHS_SHOWN: readonly PictureWidth[] = ['wide', 'phone'];

function pictures(picture: RunPicture | undefined, report: Report, named: boolean): Markup | null {
  if (!picture) return null;
  const of = named ? `${picture.run}: ` : '';
  return html`<figure>
      <figcaption>${of}what shook, and what turns at that rate</figcaption>
      ${WIDTHS_SHOWN.map((width) => spectrumFigure(picture, report, width))}
    </figure>
    <figure>
      <figcaption>${of}does it follow the speed?</figcaption>
      ${WIDTHS_SHOWN.map((width) => mapFigure(picture, report, width))}
      <p class="soft">Time upward, frequency across; darker is stronger. The found orders are drawn over it.</p>
    </figure>`;
}
