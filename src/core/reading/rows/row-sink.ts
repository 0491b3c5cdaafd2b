/** Takes the cells of a row, whichever way they were split, and keeps what the layout wants kept. */
import { ClockScan } from '../scan/clock-scan.ts';
import { ColumnBuilder } from './column-builder.ts';
import type { Layout } from '../layout/layout.ts';
import { CELL_EMPTY, CELL_NUMBER, cellState, cellText, scanNumber } from '../scan/number-scan.ts';
import { StampScan } from '../scan/stamp-scan.ts';
import { add, tally, type Tally } from './tally.ts';

/** What to do with a column's cells. */
export const SKIP = 0;
export const NUMBER = 1;
export const STAMP = 2;
const CLOCK = 3;
const WORD = 4;

export interface SparseColumn {
  /** Index of the acceleration row this value was read in, or the next one after it. */
  readonly row: Float64Array;
  readonly value: Float64Array;
}

export interface Table {
  /**
   * Stamps as differences from the first, in the column's unit; Infinity where the clock was not yet set; null without a
   * time column.
   */
  readonly stamps: Float64Array | null;
  readonly firstStamp: number;
  /** Length after which a clock without a date starts again, s. */
  readonly clockWrapS: number;
  readonly axes: Float64Array[];
  /** Road speed, wheel speeds, engine speed, in the order of the sink's slots. */
  readonly speeds: readonly SparseColumn[];
  readonly rows: number;
  readonly shortRows: Tally;
  readonly longRows: Tally;
  readonly textRows: Tally;
  readonly unreadableCells: Tally;
  readonly rowsWithoutAcceleration: number;
  /** Rows (as they are kept) before which a row could not be used; the first few. */
  readonly lostBefore: readonly number[];
}

/** So many places of lost rows are remembered: they tell lost rows from a slow sensor where both are few. */
const MOST_LOST = 1000;

export class RowSink {
  readonly columnCount: number;
  readonly kinds: Uint8Array;
  /** Cells a row must have: up to the last column that is kept. */
  readonly needed: number;
  /** Cells up to the last column that is kept at all, speeds included. */
  readonly keptColumns: number;
  readonly delimiter: number;
  readonly decimal: number;
  /** Place of a kept column in the row. */
  readonly slots: Int32Array;
  /** The row being read, a number for each kept column. */
  readonly values: Float64Array;
  readonly #states: Uint8Array;
  /** Kept columns that hold a number in this row. */
  #numbers = 0;
  readonly #firstAxis: number;
  readonly #firstSpeed: number;
  readonly #stampScan: StampScan;
  readonly #clockScan = new ClockScan();
  readonly #columns: ColumnBuilder[];
  readonly #speedRows: ColumnBuilder[];
  readonly #speedValues: ColumnBuilder[];
  readonly #word: string;
  #wordFits = true;
  #extraFilled = false;
  #rows = 0;
  /** Rows before the one whose stamp the stamps are counted from: theirs are far from all others. */
  #strayRows = 0;
  #withoutAcceleration = 0;
  readonly #short = tally();
  readonly #long = tally();
  readonly #text = tally();
  readonly #unreadable = tally();
  readonly #lostBefore: number[] = [];

  constructor(layout: Layout) {
    const { roles } = layout;
    this.columnCount = layout.columnCount;
    this.delimiter = layout.delimiter.charCodeAt(0);
    this.decimal = layout.decimalMark.charCodeAt(0);
    this.kinds = new Uint8Array(layout.columnCount);
    this.slots = new Int32Array(layout.columnCount);
    this.#stampScan = new StampScan(this.decimal, () => (this.#strayRows = this.#rows));
    const speeds = [
      ...(roles.roadSpeed ? [roles.roadSpeed] : []),
      ...roles.wheelSpeeds,
      ...(roles.engineSpeed ? [roles.engineSpeed] : []),
    ];
    let slot = 0;
    if (roles.time) {
      this.kinds[roles.time.column] = roles.time.kind === 'clock' ? CLOCK : STAMP;
      this.slots[roles.time.column] = slot++;
    }
    this.#firstAxis = slot;
    for (const { column } of roles.axes) {
      this.kinds[column] = NUMBER;
      this.slots[column] = slot++;
    }
    this.#firstSpeed = slot;
    for (const { column } of speeds) {
      this.kinds[column] = NUMBER;
      this.slots[column] = slot++;
    }
    if (roles.only) this.kinds[roles.only.column] = WORD;
    this.#word = roles.only?.word ?? '';
    let last = 0;
    this.kinds.forEach((kind, column) => {
      if (kind !== SKIP && !speeds.some((speed) => speed.column === column)) last = column;
    });
    this.needed = last + 1;
    this.keptColumns = this.kinds.findLastIndex((kind) => kind !== SKIP) + 1;
    this.values = new Float64Array(slot);
    this.#states = new Uint8Array(slot).fill(CELL_EMPTY);
    this.#columns = Array.from({ length: this.#firstSpeed }, () => new ColumnBuilder());
    this.#speedRows = speeds.map(() => new ColumnBuilder());
    this.#speedValues = speeds.map(() => new ColumnBuilder());
  }

  /** One cell, as bytes; called for kept columns, and for filled cells beyond the last column. */
  cell(column: number, bytes: Uint8Array, from: number, to: number): void {
    if (column >= this.columnCount) {
      if (cellState(bytes, from, to) !== CELL_EMPTY) this.#extraFilled = true;
      return;
    }
    const kind = this.kinds[column]!;
    if (kind === WORD) {
      this.#wordFits = cellText(bytes, from, to) === this.#word;
      return;
    }
    const slot = this.slots[column]!;
    const value =
      kind === NUMBER
        ? scanNumber(bytes, from, to, this.decimal)
        : kind === STAMP
          ? this.#stampScan.scan(bytes, from, to)
          : this.#clockScan.scan(bytes, from, to);
    if (Number.isNaN(value)) {
      this.#states[slot] = cellState(bytes, from, to);
      return;
    }
    this.values[slot] = value;
    this.#states[slot] = CELL_NUMBER;
    this.#numbers++;
  }

  /** A number was found in this column. */
  gotNumber(column: number, value: number): void {
    const slot = this.slots[column]!;
    this.values[slot] = value;
    this.#states[slot] = CELL_NUMBER;
    this.#numbers++;
  }

  /** A plain stamp was found in this column: its whole part and its fraction, both with their sign. */
  gotStamp(column: number, whole: number, fraction: number): void {
    this.gotNumber(column, this.#stampScan.sinceFirst(0, whole, fraction));
  }

  /** Nothing of the row that was begun is kept. */
  forgetRow(): void {
    this.#numbers = 0;
    this.#extraFilled = false;
    this.#wordFits = true;
    for (let slot = 0; slot < this.#states.length; slot++) this.#states[slot] = CELL_EMPTY;
  }

  /** The end of a row of so many cells, at this line of the file. */
  endRow(cells: number, line: number): void {
    if (this.#numbers === this.values.length && cells <= this.columnCount && this.#wordFits) this.#push();
    else if (this.#extraFilled) add(this.#long, line);
    else if (cells < this.needed) {
      if (this.#states.some((state) => state !== CELL_EMPTY)) this.#lose(this.#short, line);
    } else if (this.#wordFits) this.#keep(line);
    this.forgetRow();
  }

  #lose(to: Tally, line: number): void {
    add(to, line);
    if (this.#lostBefore.length < MOST_LOST) this.#lostBefore.push(this.#rows);
  }

  /** A row in which every kept cell is a number. */
  #push(): void {
    const values = this.values;
    for (let i = 0; i < this.#speedRows.length; i++) {
      this.#speedRows[i]!.push(this.#rows);
      this.#speedValues[i]!.push(values[this.#firstSpeed + i]!);
    }
    for (let slot = 0; slot < this.#firstSpeed; slot++) this.#columns[slot]!.push(values[slot]!);
    this.#rows++;
  }

  #keep(line: number): void {
    const states = this.#states;
    let numbers = 0;
    let empty = 0;
    for (let slot = this.#firstAxis; slot < this.#firstSpeed; slot++) {
      if (states[slot] === CELL_NUMBER) numbers++;
      else if (states[slot] === CELL_EMPTY) empty++;
      else add(this.#unreadable, line);
    }
    const axes = this.#firstSpeed - this.#firstAxis;
    if (empty === axes && states.every((state) => state === CELL_EMPTY)) return;
    const timed = this.#firstAxis === 0 || states[0] === CELL_NUMBER;
    if (numbers === 0 && !timed) {
      this.#lose(this.#text, line);
      return;
    }
    for (let i = 0; i < this.#speedRows.length; i++) {
      const slot = this.#firstSpeed + i;
      if (states[slot] !== CELL_NUMBER) continue;
      this.#speedRows[i]!.push(this.#rows);
      this.#speedValues[i]!.push(this.values[slot]!);
    }
    if (empty === axes) {
      this.#withoutAcceleration++;
      return;
    }
    for (let slot = 0; slot < this.#firstSpeed; slot++)
      this.#columns[slot]!.push(states[slot] === CELL_NUMBER ? this.values[slot]! : NaN);
    this.#rows++;
  }

  finish(): Table {
    const columns = this.#columns.map((column) => column.finish());
    const stamps = this.#firstAxis === 1 ? columns[0]! : null;
    stamps?.fill(Infinity, 0, this.#strayRows);
    return {
      stamps,
      firstStamp: this.#stampScan.firstStamp,
      clockWrapS: this.#clockScan.wrapS,
      axes: columns.slice(this.#firstAxis),
      speeds: this.#speedRows.map((row, i) => ({ row: row.finish(), value: this.#speedValues[i]!.finish() })),
      rows: this.#rows,
      shortRows: this.#short,
      longRows: this.#long,
      textRows: this.#text,
      unreadableCells: this.#unreadable,
      rowsWithoutAcceleration: this.#withoutAcceleration,
      lostBefore: this.#lostBefore,
    };
  }
}
