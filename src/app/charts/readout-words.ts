/** The cursor's reading in words. */
import { frequencyText } from '../../core/report/format.ts';
import type { Line } from '../../core/vehicle/line.ts';
import { texts } from '../texts.ts';
import type { PartReadout } from './readout.ts';
import { readoutAt } from './readout.ts';

/** '2.00×', '11.3×': enough digits to see how near to a whole order. */
const orderReadText = (order: number): string => `${order.toFixed(order < 10 ? 2 : 1)}×`;

export const partReadName = ({ part, name }: PartReadout): string => name ?? texts.charts.parts[part].toLowerCase();

/** '2.00× of 2596 rpm': what the part turns at, and how many times that is read. */
export const partReadText = ({ order, turningRpm }: PartReadout): string =>
  texts.charts.orderOf(orderReadText(order), turningRpm.toFixed(0));

/** '84.1 Hz, 5046 per minute, tire 7.45× of 677 rpm, driveshaft 2.00× of 2523 rpm'. */
export function readoutText(hz: number, lines: readonly Line[]): string {
  const { cyclesPerMinute, parts } = readoutAt(hz, lines);
  return [
    frequencyText(hz),
    texts.charts.perMinute(cyclesPerMinute.toFixed(0)),
    ...parts.map((part) => `${partReadName(part)} ${partReadText(part)}`),
  ].join(', ');
}
