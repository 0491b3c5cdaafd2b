/** Runs and orders as plain-text tables. */
import type { OrderReport, Report, RunReport } from './report.ts';
import type { UnitSystem } from './format.ts';
import { decimalsFor, durationText, rateText, rpmText, speedText } from './format.ts';
import { driverWord, orderWords } from './order-words.ts';
import { table, wrap } from './wrap.ts';

/** Each run: how long, at what rate, how driven, at what speed; then what was decided or repaired in reading it. */
export function runsText(report: Report, units: UnitSystem, width: number): string {
  return report.runs.map((run) => runText(run, driverWord(report), units, width)).join('\n');
}

function runText(run: RunReport, driver: string, units: UnitSystem, width: number): string {
  const axes = run.axes.length === 1 ? '1 axis' : `${run.axes.length} axes`;
  const driven = run.load === null ? '' : `, ${run.load}`;
  const lines = [
    wrap(
      `${run.name}: ${durationText(run.durationS)} at ${rateText(run.samplingRateHz)}, ${axes}${driven}${speedWords(run, units)}${engineWords(run, driver)}.`,
      width,
      '  ',
      '    ',
    ),
  ];
  for (const note of run.notes) lines.push(wrap(note.text, width, note.severity === 'warning' ? '    ! ' : '    - '));
  return lines.join('\n');
}

const SPEED_SAYS: Readonly<Record<RunReport['speed']['source'], string>> = {
  dial: 'the dial said',
  gps: 'GPS said',
  obd: 'the diagnostic socket said',
  logged: 'the log says',
  unknown: 'stated:',
};

/** ', at 61.3 mph (GPS said 62.0 mph; the recording says −1.1 ± 0.2 %)'. */
function speedWords(run: RunReport, units: UnitSystem): string {
  const { statedMps, restated = false, usedMps, scale, scaleSd, source } = run.speed;
  if (usedMps === null) return ', speed not known';
  const used = ` at ${speedText(usedMps, units)}`;
  if (statedMps === null || Math.abs(statedMps / usedMps - 1) < 0.001) return `,${used}`;
  const sdPercent = Math.max(0.01, 100 * scaleSd);
  const decimals = Math.min(2, Math.max(1, decimalsFor(sdPercent)));
  const off = ((scale - 1) * 100).toFixed(decimals).replace('-', '−');
  const said = `${restated ? 'taken for' : SPEED_SAYS[source]} ${speedText(statedMps, units)}`;
  return `,${used} (${said}; the recording says ${off} ± ${sdPercent.toFixed(decimals)} %)`;
}

function engineWords(run: RunReport, driver: string): string {
  if (run.engine.usedRpm === null || run.engine.source === 'unknown') return '';
  const from = { given: 'given', logged: 'logged', gear: 'from the gear' }[run.engine.source];
  return `, ${driver} at ${rpmText(run.engine.usedRpm)} (${from})`;
}

/** Every expected order with what was measured there. */
export function ordersText(report: Report): string {
  const many = report.runs.length > 1;
  const header = ['', 'expected', 'level m/s²', 'felt', ''];
  return report.runs
    .map((run) => {
      const rows = report.orders.filter((order) => order.run === run.name).map(orderRow);
      return (many ? `  ${run.name}\n` : '') + table([header, ...rows], ['left', 'right', 'right', 'right', 'left']);
    })
    .join('\n');
}

function orderRow(order: OrderReport): string[] {
  const words = orderWords(order);
  return [words.label, words.expected, words.level, words.felt, words.state];
}
