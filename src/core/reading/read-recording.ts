/** The way in: the bytes of a logger's CSV file to a Recording, or the reason why not. */
import { success, failure } from '../note.ts';
import type { Note, Problem, Result } from '../note.ts';
import { buildRecording } from './build-recording.ts';
import type { Given } from './given.ts';
import { readableBytes, ReadStopped, SourceFailed } from './byte-source.ts';
import type { ByteSourceLog } from './byte-source.ts';
import { HEAD_BYTES, HEAD_LIMIT_BYTES, HEAD_LIMIT_LINES, headLines, readHead } from './layout/head.ts';
import type { Head } from './layout/head.ts';
import { decideLayout } from './layout/layout.ts';
import type { Layout } from './layout/layout.ts';
import { readingProblems } from './problems.ts';
import { readBody } from './rows/read-body.ts';
import type { BodyWay } from './rows/read-body.ts';
import type { Recording, SourceFile } from './recording.ts';

export interface ReadOptions extends Given {
  /** Stops reading with a Problem when aborted. */
  readonly signal?: AbortSignal;
  /** For tests: every row through papaparse. */
  readonly way?: BodyWay;
}

/**
 * Reads a recording of any usual logger layout. Never throws for what a file holds: every refusal is a Problem of
 * {@link readingProblems}; every decision and repair is a note of the recording.
 *
 * @param onProgress called with the share of bytes read, 0..1, about once a megabyte
 */
export async function readRecording(
  source: SourceFile,
  options: ReadOptions = {},
  onProgress?: (fraction: number) => void,
): Promise<Result<Recording>> {
  const rateHz = options.samplingRateHz;
  if (rateHz !== undefined && !(rateHz > 0 && rateHz < 1e7))
    return failure(readingProblems.rateNotUsable(source.name, rateHz));
  const log: ByteSourceLog = { gzip: false, gzipCutShort: false, encoding: 'utf-8' };
  const chunks = readableBytes(source, log, options.signal, onProgress);
  try {
    const read = await readAll(source.name, chunks, log, options);
    if (!('code' in read)) return success(read);
    // Whatever is odd about the rest of a file that breaks off, that it breaks off comes first.
    return failure(log.gzipCutShort ? readingProblems.damagedGzip(source.name) : read);
  } catch (error) {
    if (error instanceof ReadStopped) return failure(readingProblems.cancelled(source.name));
    if (error instanceof SourceFailed) return failure(readingProblems.sourceFailed(source.name, error.message));
    throw error;
  } finally {
    await chunks.return(undefined).catch(() => undefined);
  }
}

async function readAll(
  file: string,
  chunks: AsyncIterator<Uint8Array>,
  log: ByteSourceLog,
  options: ReadOptions,
): Promise<Recording | Problem> {
  const found = await findLayout(file, chunks, log);
  if ('code' in found) return found;
  const { layout, head, decoder } = found;
  const body = await readBody(layout, decoder, head.bytes.subarray(layout.bodyOffset), chunks, options.way);
  const built = buildRecording(layout, body, { file, line: layout.bodyLine, context: [] }, options);
  if ('code' in built || !log.gzipCutShort) return built;
  const note: Note = {
    code: 'gzip-cut-short',
    severity: 'warning',
    text: 'The compressed file breaks off; what could be unpacked is used.',
  };
  return { ...built, notes: [...built.notes, note] };
}

interface FoundLayout {
  readonly layout: Layout;
  readonly head: Head;
  readonly decoder: TextDecoder;
}

async function findLayout(
  file: string,
  chunks: AsyncIterator<Uint8Array>,
  log: ByteSourceLog,
): Promise<FoundLayout | Problem> {
  let want = HEAD_BYTES;
  let head: Head = { bytes: new Uint8Array(0), complete: false };
  for (;;) {
    head = await readHead(chunks, head.bytes, want);
    const problem = unreadable(file, head);
    if (problem) return problem;
    const decoder = decoderOf(head, log);
    const { lines, all } = headLines(head, decoder, want);
    const full = head.bytes.length >= HEAD_LIMIT_BYTES || lines.length >= HEAD_LIMIT_LINES;
    const last = all && (head.complete || full);
    if (last && !head.complete && lines.length <= 1) return readingProblems.lineTooLong(file, 1, HEAD_LIMIT_BYTES);
    const layout = decideLayout(lines, file, last);
    if (layout && 'code' in layout) return layout;
    if (layout) return { layout, head, decoder };
    want *= 8;
  }
}

/** What is plainly no text. */
function unreadable(file: string, { bytes }: Head): Problem | null {
  if (bytes.length === 0) return readingProblems.emptyFile(file);
  if (bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2]! < 9)
    return readingProblems.packedFile(file, 'a zip archive or a spreadsheet');
  if (bytes[0] === 0xd0 && bytes[1] === 0xcf && bytes[2] === 0x11)
    return readingProblems.packedFile(file, 'an old spreadsheet');
  if (bytes[0] === 0x25 && bytes[1] === 0x50 && bytes[2] === 0x44 && bytes[3] === 0x46)
    return readingProblems.packedFile(file, 'a PDF');
  const looked = bytes.subarray(0, 4096);
  const control = looked.findIndex((byte) => byte < 9 || (byte > 13 && byte < 32 && byte !== 0x1a && byte !== 0x1b));
  return control < 0
    ? null
    : readingProblems.binaryFile(file, looked.subarray(0, control).filter((byte) => byte === 10).length + 1);
}

function decoderOf({ bytes }: Head, log: ByteSourceLog): TextDecoder {
  try {
    // A character cut by the end of the head is no proof of another encoding.
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
  } catch {
    log.encoding = 'windows-1252';
    return new TextDecoder('windows-1252');
  }
  return new TextDecoder('utf-8');
}
