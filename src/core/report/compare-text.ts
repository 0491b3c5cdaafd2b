/** A comparison as plain text, to be read aloud. */
import { CAUTIONS } from '../cautions.ts';
import { decibelText, intervalText, timesChangeText } from '../diagnosis/compare/change-words.ts';
import type { ComparedPair, Comparison, OrderChange } from '../diagnosis/compare/comparison.ts';
import { durationText, feltText, frequencyText, speedText } from './format.ts';
import type { TextOptions } from './text.ts';
import { table, wrap } from './wrap.ts';

/** The whole comparison as text, with a newline at its end. */
export function comparisonText(comparison: Comparison, options: TextOptions): string {
  const width = options.width ?? 96;
  const heading = (text: string): string => (options.emphasis ? `\u001b[1m${text}\u001b[0m` : text);
  const parts = [
    heading(wrap(comparison.sentence, width)) + (comparison.why === '' ? '' : `\n${wrap(comparison.why, width)}`),
  ];
  for (const pair of comparison.pairs) parts.push(`${heading('Order by order')}\n${pairText(pair, options, width)}`);
  const cautions = [CAUTIONS['road-test'], CAUTIONS['stop-at-once'], CAUTIONS['level-down']];
  if (comparison.notes.length > 0) parts.push(comparison.notes.map(({ text }) => wrap(text, width, '  ! ')).join('\n'));
  parts.push(`${heading('Cautions')}\n${cautions.map((text) => wrap(text, width, '  - ')).join('\n')}`);
  return `${parts.join('\n\n')}\n`;
}

function pairText(pair: ComparedPair, options: TextOptions, width: number): string {
  const side = ({ name, speedMps, durationS }: ComparedPair['before']): string =>
    `${name} (${durationText(durationS)}${speedMps === null ? '' : `, ${speedText(speedMps, options.units)}`})`;
  const rows = pair.orders.filter(({ verdict }) => verdict !== 'not-seen').map(orderRow);
  const named = `${wrap(`Before: ${side(pair.before)}. After: ${side(pair.after)}.`, width, '  ')}\n`;
  if (rows.length === 0) return `${named}  No order of a named part is seen in either run.`;
  const header = ['', 'where', 'felt before', 'felt after', 'change', '', '95 % interval', ''];
  return `${named}${table([header, ...rows], ['left', 'right', 'right', 'right', 'left', 'right', 'left', 'left'])}`;
}

function orderRow(order: OrderChange): string[] {
  const felt = ({ seen, feltLevel }: OrderChange['before']): string => (seen ? '' : 'under ') + feltText(feltLevel);
  return [
    order.label,
    frequencyText(order.before.frequencyHz),
    felt(order.before),
    felt(order.after),
    timesChangeText(order),
    decibelText(order.changeDb),
    intervalText(order),
    order.verdict,
  ];
}
