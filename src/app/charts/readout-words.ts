/** The cursor's reading in words. */
import { feltText, frequencyText, rpmText, significant } from '../../core/report/format.ts';
import type { Line } from '../../core/vehicle/line.ts';
import { texts } from '../texts.ts';
import type { LevelKind } from './level.ts';
import type { PartReadout } from './readout.ts';
import { readoutAt } from './readout.ts';

const words = texts.charts;

/** The level under the cursor, in the reader's kind of level. */
export interface LevelRead {
  readonly kind: LevelKind;
  readonly value: number;
}

/** '2.00×', '11.3×': enough digits to see how near to a whole order. */
const orderReadText = (order: number): string => `${order.toFixed(order < 10 ? 2 : 1)}×`;

/** 'driveshaft 2.00×'. */
export const partReadText = ({ part, name, order }: PartReadout): string =>
  `${name ?? words.parts[part].toLowerCase()} ${orderReadText(order)}`;

/** 'felt level 0.07', 'acceleration 0.012 m/s²'. */
export const levelReadText = ({ kind, value }: LevelRead): string =>
  kind === 'felt'
    ? `${words.levels.felt.toLowerCase()} ${feltText(value)}`
    : `${words.levels[kind].toLowerCase()} ${significant(value, 2)} ${words.units[kind]}`;

/** '84.1 Hz, felt level 9, 5050 rpm, tire 7.45×, driveshaft 2.00×'. */
export const readoutText = (hz: number, level: LevelRead | null, lines: readonly Line[]): string => {
  const { cyclesPerMinute, parts } = readoutAt(hz, lines);
  return [
    frequencyText(hz),
    ...(level ? [levelReadText(level)] : []),
    rpmText(cyclesPerMinute),
    ...parts.map(partReadText),
  ].join(', ');
};
