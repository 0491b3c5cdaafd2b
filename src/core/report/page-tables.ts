/** Runs and orders as tables of the page. */
import type { OrderReport, Report, RunReport } from './report.ts';
import type { UnitSystem } from './format.ts';
import { durationText, rateText, rpmText, speedText } from './format.ts';
import { driverWord, orderWords } from './order-words.ts';
import { capitalized } from '../words.ts';
import type { Markup } from './html.ts';
import { html } from './html.ts';

export function runsTable(report: Report, units: UnitSystem): Markup {
  return html`<div class="wide"><table>
      <thead>
        <tr>
          <th>Run</th>
          <th>Length</th>
          <th>Rate</th>
          <th>Load</th>
          <th>Speed</th>
          <th>${capitalized(driverWord(report))}</th>
        </tr>
      </thead>
      <tbody>
        ${report.runs.map((run) => runRow(run, units))}
      </tbody>
    </table></div>
    ${report.runs.map((run) =>
      run.notes.length === 0
        ? null
        : html`<h3>Notes on ${run.name}</h3>
            <ul>
              ${run.notes.map((note) => html`<li>${note.text}</li>`)}
            </ul>`,
    )}`;
}

function runRow(run: RunReport, units: UnitSystem): Markup {
  const speed = run.speed.usedMps === null ? 'not known' : speedText(run.speed.usedMps, units);
  const engine = run.engine.usedRpm === null ? 'not known' : rpmText(run.engine.usedRpm);
  return html`<tr>
    <td>${run.name}</td>
    <td>${durationText(run.durationS)}</td>
    <td>${rateText(run.samplingRateHz)}</td>
    <td>${run.load ?? ''}</td>
    <td>${speed}</td>
    <td>${engine}</td>
  </tr>`;
}

export function ordersTable(report: Report): Markup {
  return html`${report.runs.map(
    (run) =>
      html`<div class="wide"><table>
        ${
          report.runs.length > 1
            ? html`<caption>
                ${run.name}
              </caption>`
            : null
        }
        <thead>
          <tr>
            <th>Part and order</th>
            <th class="number">Expected</th>
            <th class="number">Level, m/s²</th>
            <th class="number">Felt level</th>
            <th></th>
          </tr>
        </thead>
        <tbody>
          ${report.orders.filter((order) => order.run === run.name).map((order) => orderRow(order))}
        </tbody>
      </table></div>`,
  )}`;
}

function orderRow(order: OrderReport): Markup {
  const words = orderWords(order);
  return html`<tr>
    <td>${words.label}</td>
    <td class="number">${words.expected}</td>
    <td class="number">${words.level}</td>
    <td class="number">${words.felt}</td>
    <td>${words.state}</td>
  </tr>`;
}
