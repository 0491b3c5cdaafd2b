/** Bytes of a file, in order, ready for reading: unpacked, in UTF-8, with one kind of line end. */
import type { SourceFile } from './recording.ts';

/** A file already in memory is handed on in pieces of this size, so that progress and cancelling work. */
const PIECE_BYTES = 1 << 20;
/** A pause for the worker's messages after this many bytes of a file in memory. */
const PAUSE_EVERY_BYTES = 8 << 20;

/** So much is looked at to tell the encoding and the line ends. */
const LOOK_BYTES = 1 << 16;

/** What the byte source noticed on its way. */
export interface ByteSourceLog {
  /** The compressed stream broke off; what came before is used. */
  gzipCutShort: boolean;
  gzip: boolean;
  encoding: 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252';
}

type OnProgress = (fraction: number) => void;

const pause = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

/** The user has had enough. */
export class ReadStopped extends Error {}
/** The source broke off: a file that vanished, a drive that was pulled out. */
export class SourceFailed extends Error {}

/** The source's chunks; its failures told apart from bugs in here, and a stop on request. */
async function* pieces(source: SourceFile, signal?: AbortSignal, onProgress?: OnProgress): AsyncGenerator<Uint8Array> {
  const total = source.bytes instanceof Uint8Array ? source.bytes.length : source.sizeBytes;
  let done = 0;
  const chunks = source.bytes instanceof Uint8Array ? slices(source.bytes) : source.bytes;
  const iterator = chunks[Symbol.asyncIterator]();
  try {
    for (;;) {
      if (signal?.aborted) throw new ReadStopped();
      const next = await iterator.next().catch((error: unknown) => {
        throw new SourceFailed(error instanceof Error ? error.message : String(error));
      });
      if (next.done) return;
      yield next.value;
      done += next.value.length;
      if (onProgress && total) onProgress(Math.min(1, done / total));
    }
  } finally {
    // Lets the source go, also when reading ends early.
    await iterator.return?.().catch(() => undefined);
  }
}

async function* slices(bytes: Uint8Array): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += PIECE_BYTES) {
    yield bytes.subarray(at, at + PIECE_BYTES);
    if ((at + PIECE_BYTES) % PAUSE_EVERY_BYTES === 0) await pause();
  }
}

/** Joins chunks until at least `count` bytes are there, so that the first bytes can be looked at. */
async function* atLeastFirst(chunks: AsyncIterable<Uint8Array>, count: number): AsyncGenerator<Uint8Array> {
  let parts: Uint8Array[] | null = [];
  let length = 0;
  for await (const chunk of chunks) {
    if (!parts) {
      yield chunk;
      continue;
    }
    parts.push(chunk);
    length += chunk.length;
    if (length < count) continue;
    yield joined(parts);
    parts = null;
  }
  if (parts && length > 0) yield joined(parts);
}

/** One array out of several. */
export function joined(parts: readonly Uint8Array[]): Uint8Array {
  if (parts.length === 1) return parts[0]!;
  const whole = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

async function* unpacked(chunks: AsyncIterable<Uint8Array>, log: ByteSourceLog): AsyncGenerator<Uint8Array> {
  const unpacker = new DecompressionStream('gzip');
  const writer = unpacker.writable.getWriter();
  let failed: unknown = null;
  const feeding = (async () => {
    try {
      for await (const chunk of chunks) await writer.write(chunk as Uint8Array<ArrayBuffer>);
      await writer.close();
    } catch (error) {
      // A failed source ends the unpacking; a failed unpacking comes out on the reading side as well.
      if (error instanceof SourceFailed || error instanceof ReadStopped) failed = error;
      await writer.abort(error).catch(() => undefined);
    }
  })();
  const reader = unpacker.readable.getReader();
  try {
    for (;;) {
      const next = await reader.read().catch(() => null);
      if (next === null) log.gzipCutShort = failed === null;
      if (next === null || next.done) break;
      yield next.value;
    }
  } finally {
    await reader.cancel().catch(() => undefined);
    await feeding;
  }
  if (failed !== null) throw failed;
}

async function* transcoded(
  chunks: AsyncIterable<Uint8Array>,
  from: 'utf-16le' | 'utf-16be',
): AsyncGenerator<Uint8Array> {
  const decoder = new TextDecoder(from);
  const encoder = new TextEncoder();
  for await (const chunk of chunks) yield encoder.encode(decoder.decode(chunk, { stream: true }));
  yield encoder.encode(decoder.decode());
}

const isGzip = (b: Uint8Array): boolean => b[0] === 0x1f && b[1] === 0x8b;

/** UTF-16 by its mark, or by every second byte of the first 64 being zero. */
function utf16Of(b: Uint8Array): 'utf-16le' | 'utf-16be' | null {
  if (b[0] === 0xff && b[1] === 0xfe) return 'utf-16le';
  if (b[0] === 0xfe && b[1] === 0xff) return 'utf-16be';
  const pairs = Math.min(32, b.length >> 1);
  let evenZero = 0;
  let oddZero = 0;
  for (let i = 0; i < pairs; i++) {
    if (b[2 * i] === 0) evenZero++;
    if (b[2 * i + 1] === 0) oddZero++;
  }
  if (pairs < 4) return null;
  if (oddZero > 0.8 * pairs && evenZero === 0) return 'utf-16le';
  if (evenZero > 0.8 * pairs && oddZero === 0) return 'utf-16be';
  return null;
}

/** The bytes of a file, unpacked and in UTF-8 (or the one-byte code it was in), byte order mark still on. */
export async function* readableBytes(
  source: SourceFile,
  log: ByteSourceLog,
  signal?: AbortSignal,
  onProgress?: OnProgress,
): AsyncGenerator<Uint8Array> {
  let chunks: AsyncIterable<Uint8Array> = atLeastFirst(pieces(source, signal, onProgress), 2);
  const first = await peeked(chunks);
  chunks = first.chunks;
  if (isGzip(first.head)) {
    log.gzip = true;
    chunks = unpacked(chunks, log);
  }
  const text = await peeked(atLeastFirst(chunks, LOOK_BYTES));
  const wide = utf16Of(text.head);
  if (wide) log.encoding = wide;
  const narrow = await peeked(atLeastFirst(wide ? transcoded(text.chunks, wide) : text.chunks, LOOK_BYTES));
  const returnsOnly = narrow.head.includes(13) && !narrow.head.includes(10);
  yield* returnsOnly ? withLineFeeds(narrow.chunks) : narrow.chunks;
}

/** Files whose lines end with a carriage return alone. */
async function* withLineFeeds(chunks: AsyncIterable<Uint8Array>): AsyncGenerator<Uint8Array> {
  for await (const chunk of chunks) yield chunk.map((byte) => (byte === 13 ? 10 : byte));
}

/** The first chunk, and all chunks from the start again. */
async function peeked(
  chunks: AsyncIterable<Uint8Array>,
): Promise<{ head: Uint8Array; chunks: AsyncIterable<Uint8Array> }> {
  const iterator = chunks[Symbol.asyncIterator]();
  const first = await iterator.next();
  const head = first.done ? new Uint8Array(0) : first.value;
  async function* again(): AsyncGenerator<Uint8Array> {
    if (first.done) return;
    yield first.value;
    try {
      for (;;) {
        const next = await iterator.next();
        if (next.done) return;
        yield next.value;
      }
    } finally {
      await iterator.return?.();
    }
  }
  return { head, chunks: again() };
}
