/** The Node side of Io. */
import { createReadStream } from 'node:fs';
import { readFile, stat, writeFile } from 'node:fs/promises';
import type { Io } from './io.ts';

/** Bytes per chunk of a streamed file: large enough that the loop over chunks costs nothing. */
const CHUNK_BYTES = 1 << 20;

export function nodeIo(): Io {
  const onTerminal = process.stdout.isTTY === true;
  return {
    stdout: (text) => void process.stdout.write(text),
    stderr: (text) => void process.stderr.write(text),
    readFile: async (path) => {
      if (path !== '-') return readFile(path);
      const chunks: Buffer[] = [];
      for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
      return Buffer.concat(chunks);
    },
    openFile: async (path) => {
      if (path === '-') return { chunks: process.stdin as AsyncIterable<Uint8Array> };
      const status = await stat(path);
      if (status.isDirectory()) throw Object.assign(new Error('is a directory'), { code: 'EISDIR' });
      return {
        chunks: createReadStream(path, { highWaterMark: CHUNK_BYTES }) as AsyncIterable<Uint8Array>,
        sizeBytes: status.size,
      };
    },
    writeFile: (path, text) => writeFile(path, text, 'utf8'),
    terminalColumns: onTerminal ? (process.stdout.columns ?? 96) : null,
    emphasis: onTerminal && (process.env['NO_COLOR'] ?? '') === '',
    progress: process.stderr.isTTY === true,
  };
}
