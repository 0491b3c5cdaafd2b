/** The table of orders as CSV. */
import type { Report } from '../../core/report/report.ts';
import { velocityMmpsOfSine } from '../../core/units.ts';
import { texts } from '../texts.ts';
import { csvText } from './csv-out.ts';
import { downloadText } from './download.ts';

function ordersCsv({ orders }: Report): string {
  const rows = orders.map((order) => [
    order.run,
    order.label,
    +order.frequencyHz.toFixed(3),
    +order.frequencySdHz.toFixed(4),
    order.visibility,
    order.aliasHz === undefined ? null : +order.aliasHz.toFixed(3),
    rounded(order.amplitudeMps2),
    order.amplitudeMps2 === null ? null : rounded(velocityMmpsOfSine(order.amplitudeMps2, order.frequencyHz)),
    rounded(order.feltLevel),
  ]);
  return csvText([texts.sheet.savedColumns, ...rows]);
}

const rounded = (value: number | null): number | null => (value === null ? null : +value.toPrecision(4));

export const saveOrders = (report: Report): void => downloadText(ordersCsv(report), 'orders.csv', 'text/csv');
