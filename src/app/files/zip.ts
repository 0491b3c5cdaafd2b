/** The zip container (PKWARE APPNOTE 6.3): several files in one, readable by any archive program. */
import type { Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import { texts } from '../texts.ts';
import { crc32 } from './crc32.ts';

export interface ZipFile {
  readonly name: string;
  readonly blob: Blob;
}

const LOCAL = 0x04034b50;
const CENTRAL = 0x02014b50;
const END = 0x06054b50;
/** File names are UTF-8. */
const UTF8_FLAG = 0x0800;
const DEFLATE = 8;
const STORED = 0;
/** The date field of a file without one: 1980-01-01. */
const NO_DATE = 0x21;
const END_SIZE = 22;
/** 2³² and more would need the 64-bit form. */
const LARGEST = 0xffff_ffff;

/** Packs files, compressed. Sizes are limited to 4 GB in all, which no job comes near. */
export async function packZip(files: readonly ZipFile[]): Promise<Blob> {
  const parts: BlobPart[] = [];
  const directory: Uint8Array<ArrayBuffer>[] = [];
  let offset = 0;
  for (const { name, blob } of files) {
    const plain = new Uint8Array(await blob.arrayBuffer());
    const packed = await through(blob, new CompressionStream('deflate-raw'));
    const entry = {
      name: new TextEncoder().encode(name),
      crc: crc32(plain),
      packed: packed.length,
      plain: plain.length,
    };
    const header = record(LOCAL, entry);
    parts.push(header, packed);
    directory.push(record(CENTRAL, entry, offset));
    offset += header.length + packed.length;
  }
  if (offset > LARGEST) throw new RangeError('archive larger than 4 GB');
  const size = directory.reduce((sum, { length }) => sum + length, 0);
  return new Blob([...parts, ...directory, endRecord(files.length, size, offset)], { type: 'application/zip' });
}

/** Unpacks a zip of stored or deflated files. Every length is checked against the file before it is used. */
export async function unpackZip(blob: Blob): Promise<Result<readonly ZipFile[]>> {
  const damaged = failure({ code: 'archive-damaged', ...texts.book.archiveDamaged });
  try {
    const bytes = new DataView(await blob.arrayBuffer());
    const end = findEnd(bytes);
    if (end < 0) return damaged;
    const files: ZipFile[] = [];
    let at = bytes.getUint32(end + 16, true);
    for (let left = bytes.getUint16(end + 10, true); left > 0; left--) {
      if (bytes.getUint32(at, true) !== CENTRAL) return damaged;
      const [nameLength, extra, comment] = [28, 30, 32].map((field) => bytes.getUint16(at + field, true));
      const name = new TextDecoder().decode(new Uint8Array(bytes.buffer, at + 46, nameLength));
      const content = await contentAt(bytes, blob, at);
      if (content === null) return damaged;
      if (!name.endsWith('/')) files.push({ name, blob: content });
      at += 46 + (nameLength ?? 0) + (extra ?? 0) + (comment ?? 0);
    }
    return success(files);
  } catch {
    // Out-of-range offsets and broken compressed data.
    return damaged;
  }
}

async function contentAt(bytes: DataView<ArrayBuffer>, blob: Blob, entry: number): Promise<Blob | null> {
  const method = bytes.getUint16(entry + 10, true);
  const crc = bytes.getUint32(entry + 16, true);
  const packedSize = bytes.getUint32(entry + 20, true);
  const local = bytes.getUint32(entry + 42, true);
  if (bytes.getUint32(local, true) !== LOCAL) return null;
  const start = local + 30 + bytes.getUint16(local + 26, true) + bytes.getUint16(local + 28, true);
  const packed = blob.slice(start, start + packedSize);
  if (packed.size !== packedSize || (method !== DEFLATE && method !== STORED)) return null;
  const plain =
    method === STORED
      ? new Uint8Array(await packed.arrayBuffer())
      : await through(packed, new DecompressionStream('deflate-raw'));
  return crc32(plain) === crc ? new Blob([plain]) : null;
}

interface Entry {
  readonly name: Uint8Array<ArrayBuffer>;
  readonly crc: number;
  readonly packed: number;
  readonly plain: number;
}

/** A local header, or with an offset the entry of the directory: the same fields, two more in front and six behind. */
function record(signature: number, { name, crc, packed, plain }: Entry, offset?: number): Uint8Array<ArrayBuffer> {
  const isCentral = offset !== undefined;
  const size = isCentral ? 46 : 30;
  const out = new Uint8Array(size + name.length);
  const view = new DataView(out.buffer);
  const at = isCentral ? 6 : 4;
  view.setUint32(0, signature, true);
  if (isCentral) view.setUint16(4, 20, true);
  view.setUint16(at, 20, true);
  view.setUint16(at + 2, UTF8_FLAG, true);
  view.setUint16(at + 4, DEFLATE, true);
  view.setUint16(at + 8, NO_DATE, true);
  view.setUint32(at + 10, crc, true);
  view.setUint32(at + 14, packed, true);
  view.setUint32(at + 18, plain, true);
  view.setUint16(at + 22, name.length, true);
  if (isCentral) view.setUint32(42, offset, true);
  out.set(name, size);
  return out;
}

function endRecord(count: number, size: number, offset: number): Uint8Array<ArrayBuffer> {
  const out = new Uint8Array(END_SIZE);
  const view = new DataView(out.buffer);
  view.setUint32(0, END, true);
  view.setUint16(8, count, true);
  view.setUint16(10, count, true);
  view.setUint32(12, size, true);
  view.setUint32(16, offset, true);
  return out;
}

/** The end record stands last, before a comment of at most 65 535 bytes. */
function findEnd(bytes: DataView): number {
  const lowest = Math.max(0, bytes.byteLength - END_SIZE - 0xffff);
  for (let at = bytes.byteLength - END_SIZE; at >= lowest; at--) if (bytes.getUint32(at, true) === END) return at;
  return -1;
}

async function through(
  blob: Blob,
  transform: CompressionStream | DecompressionStream,
): Promise<Uint8Array<ArrayBuffer>> {
  return new Uint8Array(await new Response(blob.stream().pipeThrough(transform)).arrayBuffer());
}
