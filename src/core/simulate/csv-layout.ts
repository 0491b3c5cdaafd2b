/** How a logger lays out its file. Every layout in csv-layouts.ts is invented; together they cover what turns up. */

export interface CsvLayout {
  /** Short name for tests and for choosing one. */
  readonly name: string;
  readonly delimiter: ',' | ';' | '\t' | ' ';
  readonly decimal: '.' | ',';
  readonly lineEnd: '\n' | '\r\n';
  readonly byteOrderMark?: boolean;
  /** Lines before the header; {rate} stands for the nominal rate in Hz. */
  readonly preamble?: readonly string[];
  /** None: the file begins with numbers. A prefix makes the header itself a comment. */
  readonly header: 'none' | { readonly prefix?: string };
  /** Every cell in double quotes. */
  readonly quoted?: boolean;
  /** Every row ends in a delimiter. */
  readonly trailingDelimiter?: boolean;
  readonly columns: readonly CsvColumn[];
}

export type AccelerationUnit = 'm/s²' | 'g' | 'mg' | 'mm/s²' | 'counts';

export type CsvColumn = { readonly header: string } & (
  | { readonly kind: 'time'; readonly as: TimeForm; readonly digits?: number }
  | { readonly kind: 'axis'; readonly axis: 0 | 1 | 2; readonly unit: AccelerationUnit; readonly digits: number }
  /** Length of the acceleration vector. */
  | { readonly kind: 'magnitude'; readonly unit: AccelerationUnit; readonly digits: number }
  /** Written only where the run has such a log; 'fresh' leaves the cell empty between fresh values. */
  | { readonly kind: 'speed'; readonly write: 'held' | 'fresh'; readonly digits: number }
  | { readonly kind: 'engine'; readonly write: 'held' | 'fresh'; readonly digits: number }
  /** Columns that are beside the point: a turn-rate sensor, a counter, a place on the map, a word. */
  | { readonly kind: 'gyro'; readonly axis: 0 | 1 | 2; readonly digits: number }
  | { readonly kind: 'count' }
  | { readonly kind: 'place'; readonly which: 'latitude' | 'longitude' }
  | { readonly kind: 'word'; readonly words: readonly string[] }
);

/** Seconds from the start, finer units from the start, epochs, a date and time, or a time of day. */
export type TimeForm = 's' | 'ms' | 'us' | 'ns' | 'epoch-s' | 'epoch-ms' | 'epoch-us' | 'epoch-ns' | 'iso' | 'clock';
