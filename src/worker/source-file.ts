/** A browser file as the reader wants it: its name, and its bytes in chunks. */
import type { SourceFile } from '../core/reading/recording.ts';

/** Streams a blob, so that a large file is never in memory as text. */
export function sourceFileOf(name: string, blob: Blob): SourceFile {
  return { name, bytes: chunksOf(blob), sizeBytes: blob.size };
}

async function* chunksOf(blob: Blob): AsyncGenerator<Uint8Array> {
  const reader = blob.stream().getReader();
  try {
    for (let part = await reader.read(); !part.done; part = await reader.read()) yield part.value;
  } finally {
    reader.releaseLock();
  }
}
