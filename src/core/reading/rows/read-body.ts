/** Reads all rows below the head, chunk by chunk; memory is bounded by the columns that are kept. */
import { joined } from '../byte-source.ts';
import { takeRowsDirectly } from './direct-rows.ts';
import { HEAD_LIMIT_BYTES } from '../layout/head.ts';
import type { Layout } from '../layout/layout.ts';
import { RowSink } from './row-sink.ts';
import type { Table } from './row-sink.ts';
import { TokenisedRows } from './tokenised-rows.ts';

/** A quoted cell longer than this was never meant to be one. */
const PENDING_LIMIT = 1 << 20;

export interface Body {
  readonly table: Table;
  /** Line of the unfinished last line that was left out, if any. */
  readonly unfinishedLine: number | null;
  /** Line of a quote that is never closed, if any. */
  readonly openQuoteLine: number | null;
  /** Line that is too long to be a row; reading stopped there. */
  readonly tooLongLine: number | null;
  readonly lastLine: number;
}

/** 'direct' and 'tokenised' force one way for every row that allows it; the columns come out the same. */
export type BodyWay = 'direct' | 'tokenised';

class BodyReader {
  readonly #sink: RowSink;
  readonly #decoder: TextDecoder;
  readonly #tokenised: TokenisedRows;
  readonly #way: BodyWay;
  #parts: Uint8Array[] = [];
  #partsLength = 0;
  #line: number;
  openQuoteLine: number | null = null;

  constructor(layout: Layout, decoder: TextDecoder, way: BodyWay) {
    this.#sink = new RowSink(layout);
    this.#decoder = decoder;
    this.#tokenised = new TokenisedRows(this.#sink, layout.delimiter);
    this.#way = way;
    this.#line = layout.bodyLine;
  }

  get line(): number {
    return this.#line;
  }
  get unfinishedBytes(): number {
    return this.#partsLength;
  }

  take(chunk: Uint8Array): void {
    const cut = chunk.lastIndexOf(10) + 1;
    if (cut === 0) {
      this.#keep(chunk);
      return;
    }
    const block = this.#parts.length ? joined([...this.#parts, chunk.subarray(0, cut)]) : chunk.subarray(0, cut);
    this.#parts = [];
    this.#partsLength = 0;
    if (cut < chunk.length) this.#keep(chunk.subarray(cut));
    this.#takeLines(block);
  }

  #keep(bytes: Uint8Array): void {
    this.#parts.push(bytes);
    this.#partsLength += bytes.length;
  }

  #takeLines(block: Uint8Array): void {
    let rest = block;
    if (this.#way === 'direct' && this.#tokenised.pendingLength === 0) {
      const { offset, line } = takeRowsDirectly(block, this.#sink, this.#line);
      rest = block.subarray(offset);
      this.#line = line;
    }
    if (rest.length === 0) return;
    if (this.#tokenised.pendingLength === 0) this.#tokenised.line = this.#line;
    if (!this.#tokenised.take(this.#decoder.decode(rest))) this.openQuoteLine ??= this.#line;
    this.#line = this.#tokenised.line;
    if (this.#tokenised.pendingLength > PENDING_LIMIT) this.#unquote();
  }

  #unquote(): void {
    this.openQuoteLine ??= this.#tokenised.line;
    this.#tokenised.takePendingUnquoted();
    this.#line = this.#tokenised.line;
  }

  /** Ends the body. @returns whether a last line without line end was left out */
  finish(): { table: Table; unfinished: boolean } {
    if (this.#tokenised.pendingLength > 0) this.#unquote();
    let unfinished = false;
    if (this.#partsLength > 0) {
      const last = joined(this.#parts);
      if (this.#decoder.decode(last).trim() !== '') unfinished = !this.#lastCellSpare(last);
      if (!unfinished) this.#takeLines(joined([last, Uint8Array.of(10)]));
    }
    return { table: this.#sink.finish(), unfinished };
  }

  /**
   * A last line without a line end may be cut off within a number. It is safe to take only if a further, unused cell
   * has begun behind the cells that are kept.
   */
  #lastCellSpare(last: Uint8Array): boolean {
    let delimiters = 0;
    for (const byte of last) {
      if (byte === 34) return false;
      if (byte === this.#sink.delimiter) delimiters++;
    }
    return this.#sink.delimiter !== 32 && delimiters >= this.#sink.keptColumns;
  }
}

/** @param first bytes from the first row on that the head already holds */
export async function readBody(
  layout: Layout,
  decoder: TextDecoder,
  first: Uint8Array,
  chunks: AsyncIterator<Uint8Array>,
  way: BodyWay = 'direct',
): Promise<Body> {
  const reader = new BodyReader(layout, decoder, way);
  reader.take(first);
  for (;;) {
    if (reader.unfinishedBytes > HEAD_LIMIT_BYTES) return body(reader, reader.line);
    const next = await chunks.next();
    if (next.done) break;
    reader.take(next.value);
  }
  return body(reader, null);
}

function body(reader: BodyReader, tooLongLine: number | null): Body {
  const { table, unfinished } = reader.finish();
  return {
    table,
    unfinishedLine: unfinished ? reader.line : null,
    openQuoteLine: reader.openQuoteLine,
    tooLongLine,
    lastLine: reader.line,
  };
}
