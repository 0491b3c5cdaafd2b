/** A simulated run as the text of a logger's file. */
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import type { AccelerationUnit, CsvColumn, CsvLayout, TimeForm } from './csv-layout.ts';
import type { LoggedTrack } from './logger.ts';
import { randomSource } from './random.ts';
import type { Simulation } from './simulate.ts';

/** Start of every recording, s since 1970: a working Monday morning. */
const EPOCH_S = 1_790_586_000;
/** Counts per g of the raw layout: 12 bits over ±2 g. */
const COUNTS_PER_G = 1024;
const PLACE = { latitude: 44.0, longitude: -103.0 } as const;

const PER_MPS2: Readonly<Record<AccelerationUnit, number>> = {
  'm/s²': 1,
  g: 1 / STANDARD_GRAVITY_MPS2,
  mg: 1000 / STANDARD_GRAVITY_MPS2,
  'mm/s²': 1000,
  counts: COUNTS_PER_G / STANDARD_GRAVITY_MPS2,
};

type Cell = (row: number) => string;

/**
 * @param seed For the columns that are beside the point.
 * @returns The whole file, line ends as the layout has them.
 */
export const csvText = (run: Simulation, layout: CsvLayout, seed = 1): string => {
  const columns = layout.columns.filter(
    (c) => (c.kind !== 'speed' || run.speedLog !== undefined) && (c.kind !== 'engine' || run.engineLog !== undefined),
  );
  const cells = columns.map((column) => cellOf(column, run, layout, seed));
  const wrap = (text: string): string => (layout.quoted ? `"${text}"` : text);
  const join = (texts: readonly string[]): string =>
    texts.map(wrap).join(layout.delimiter) + (layout.trailingDelimiter ? layout.delimiter : '');
  const lines = (layout.preamble ?? []).map((line) => line.replace('{rate}', String(run.rateHz)));
  if (layout.header !== 'none') lines.push((layout.header.prefix ?? '') + join(columns.map((c) => headerOf(c, run))));
  const rows = run.stampS.length;
  for (let row = 0; row < rows; row++) lines.push(join(cells.map((cell) => cell(row))));
  return (layout.byteOrderMark ? '\uFEFF' : '') + lines.join(layout.lineEnd) + layout.lineEnd;
};

const headerOf = (column: CsvColumn, run: Simulation): string =>
  column.header
    .replace('{unit}', run.speedLog?.unit ?? '')
    .replace(/_(km\/h|m\/s)$/, (_all, unit: string) => (unit === 'm/s' ? '_mps' : '_kmh'));

const cellOf = (column: CsvColumn, run: Simulation, layout: CsvLayout, seed: number): Cell => {
  const number = (value: number, digits: number): string => {
    const text = value.toFixed(digits);
    return layout.decimal === ',' ? text.replace('.', ',') : text;
  };
  switch (column.kind) {
    case 'time': {
      const form = timeText(column.as, column.digits ?? 3);
      return (row) => {
        const text = form(run.stampS[row]!);
        return layout.decimal === ',' && column.as !== 'iso' ? text.replace('.', ',') : text;
      };
    }
    case 'axis': {
      const values = run.accelerationMps2[column.axis];
      const k = PER_MPS2[column.unit];
      return (row) => number(values[row]! * k, column.digits);
    }
    case 'magnitude': {
      const [x, y, z] = run.accelerationMps2;
      const k = PER_MPS2[column.unit];
      return (row) => number(Math.hypot(x[row]!, y[row]!, z[row]!) * k, column.digits);
    }
    case 'speed':
      return logCell(run.speedLog!, run.timeS, column.write, (v) => number(v, column.digits));
    case 'engine':
      return logCell(run.engineLog!, run.timeS, column.write, (v) => number(v, column.digits));
    case 'gyro': {
      const random = randomSource(seed, `gyro ${column.axis}`);
      return () => number(0.02 * random.normal(), column.digits);
    }
    case 'count':
      return (row) => String(row + 1);
    case 'place': {
      const rate = column.which === 'latitude' ? 2e-4 : 1e-5;
      return (row) => number(PLACE[column.which] + rate * Math.floor(run.timeS[row]!), 6);
    }
    case 'word':
      return (row) => column.words[row % column.words.length]!;
  }
};

/** The log's value at each row: held until the next fresh one, or written only where fresh. Rows must come in order. */
const logCell = (
  log: LoggedTrack,
  rowTimeS: Float64Array,
  write: 'held' | 'fresh',
  text: (value: number) => string,
): Cell => {
  let at = 0;
  return (row) => {
    const before = row === 0 ? -1 : at;
    while (at + 1 < log.timeS.length && log.timeS[at + 1]! <= rowTimeS[row]!) at++;
    return write === 'held' || at !== before ? text(log.value[at]!) : '';
  };
};

const PER_SECOND: Readonly<Partial<Record<TimeForm, number>>> = {
  s: 1,
  ms: 1e3,
  us: 1e6,
  ns: 1e9,
  'epoch-s': 1,
  'epoch-ms': 1e3,
  'epoch-us': 1e6,
};

const timeText = (form: TimeForm, digits: number): ((timeS: number) => string) => {
  switch (form) {
    case 's':
    case 'ms':
    case 'us':
    case 'ns':
      return (t) => (t * PER_SECOND[form]!).toFixed(digits);
    case 'epoch-s':
    case 'epoch-ms':
    case 'epoch-us':
      return (t) => ((EPOCH_S + t) * PER_SECOND[form]!).toFixed(digits);
    case 'epoch-ns':
      // Nineteen digits do not fit a double: whole seconds and the rest are put together as text.
      return (t) => {
        const nanoseconds = Math.round(t * 1e9);
        const whole = Math.floor(nanoseconds / 1e9);
        return String(EPOCH_S + whole) + String(nanoseconds - whole * 1e9).padStart(9, '0');
      };
    case 'iso':
      return (t) => {
        const micro = Math.round(t * 1e6);
        const whole = Math.floor(micro / 1e6);
        const date = new Date((EPOCH_S + whole) * 1000).toISOString().slice(0, 19);
        return `${date}.${String(micro - whole * 1e6).padStart(6, '0')}Z`;
      };
    case 'clock':
      return (t) => {
        const tenths = Math.round((t + (EPOCH_S % 86_400)) * 1e4);
        const seconds = Math.floor(tenths / 1e4);
        const two = (n: number): string => String(n).padStart(2, '0');
        const clock = `${two(Math.floor(seconds / 3600) % 24)}:${two(Math.floor(seconds / 60) % 60)}:${two(seconds % 60)}`;
        return `${clock}.${String(tenths - seconds * 1e4).padStart(4, '0')}`;
      };
  }
};
