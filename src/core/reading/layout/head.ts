/** The first stretch of a file: enough lines to decide the layout, whatever their length. */
import { joined } from '../byte-source.ts';
import type { HeadLine } from './dialect.ts';

/** A first look: some thousand rows of a usual file. */
export const HEAD_BYTES = 1 << 16;
/** The most that is held while a line end or a table is looked for; a line or a preamble beyond it is refused. */
export const HEAD_LIMIT_BYTES = 4 << 20;
const LEAST_LINES = 12;
/** Lines that are looked through for a table, empty ones not counted: no preamble is that long. */
export const HEAD_LIMIT_LINES = 20_000;

export interface Head {
  readonly bytes: Uint8Array;
  /** The file ends within the head. */
  readonly complete: boolean;
}

/** Collects the head from an iterator of chunks; give the head so far to get a longer one. */
export async function readHead(
  chunks: AsyncIterator<Uint8Array>,
  before: Uint8Array,
  wantBytes: number,
): Promise<Head> {
  const parts: Uint8Array[] = before.length ? [before] : [];
  let length = before.length;
  let lines = lineEnds(before);
  while (length < HEAD_LIMIT_BYTES && (length < wantBytes || lines < LEAST_LINES)) {
    const next = await chunks.next();
    if (next.done) return { bytes: joinedOrEmpty(parts), complete: true };
    parts.push(next.value);
    length += next.value.length;
    lines += lineEnds(next.value);
  }
  return { bytes: joinedOrEmpty(parts), complete: false };
}

const joinedOrEmpty = (parts: readonly Uint8Array[]): Uint8Array => (parts.length ? joined(parts) : new Uint8Array(0));

function lineEnds(bytes: Uint8Array): number {
  let count = 0;
  for (let at = bytes.indexOf(10); at >= 0 && count < LEAST_LINES; at = bytes.indexOf(10, at + 1)) count++;
  return count;
}

/** Lines that a quoted line end may join; more, and the quote is a stray mark. */
const JOINED_LINES = 20;

export interface HeadLines {
  readonly lines: readonly HeadLine[];
  /** The whole head was looked at. */
  readonly all: boolean;
}

/** Whole lines, but for empty ones, from about the first `wantBytes` as text; a line whose quote is open goes on into the next. */
export function headLines({ bytes, complete }: Head, decoder: TextDecoder, wantBytes: number): HeadLines {
  const lines: HeadLine[] = [];
  let offset = bytes[0] === 0xef && bytes[1] === 0xbb && bytes[2] === 0xbf ? 3 : 0;
  let number = 1;
  while (offset < bytes.length && (offset < wantBytes || lines.length < LEAST_LINES)) {
    if (lines.length === HEAD_LIMIT_LINES) return { lines, all: true };
    let end = bytes.indexOf(10, offset);
    if (end < 0 && !complete) return { lines, all: true };
    if (end < 0) end = bytes.length;
    if (end === offset || (end === offset + 1 && bytes[offset] === 13)) {
      offset = end + 1;
      number++;
      continue;
    }
    let text = decoder.decode(bytes.subarray(offset, end));
    let taken = 1;
    if (odd(text)) {
      let until = end;
      for (let more = 1; more < JOINED_LINES && until < bytes.length; more++) {
        const next = bytes.indexOf(10, until + 1);
        until = next < 0 ? bytes.length : next;
        const longer = decoder.decode(bytes.subarray(offset, until));
        if (odd(longer)) continue;
        text = longer;
        end = until;
        taken = more + 1;
        break;
      }
    }
    lines.push({ text: inOneLine(text.replace(/\r$/, '')), line: number, offset });
    offset = end + 1;
    number += taken;
  }
  return { lines, all: offset >= bytes.length };
}

/** A quoted line end and the blanks about it become one blank. */
const inOneLine = (text: string): string => {
  const pieces = text.split('\n');
  const end = pieces.length - 1;
  return pieces
    .map((piece, i) => (i === 0 ? (end ? piece.trimEnd() : piece) : i === end ? piece.trimStart() : piece.trim()))
    .join(' ');
};

const odd = (text: string): boolean => {
  let count = 0;
  for (let at = text.indexOf('"'); at >= 0; at = text.indexOf('"', at + 1)) count++;
  return count % 2 === 1;
};
