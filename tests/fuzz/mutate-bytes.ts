/** Damage below the text: bytes flipped, cut, put in, doubled; packed, in another encoding, in pieces. */
import { gzipSync } from 'node:zlib';
import type { Dice } from './dice.ts';

export function damagedBytes(bytes: Uint8Array, dice: Dice): Uint8Array {
  let out = Uint8Array.from(bytes);
  for (let left = dice.below(4); left > 0; left--) {
    const at = dice.below(out.length + 1);
    const kind = dice.below(6);
    if (kind === 0 && out.length > 0) out[Math.min(at, out.length - 1)]! ^= 1 << dice.below(8);
    else if (kind === 1 && out.length > 0) out[Math.min(at, out.length - 1)] = dice.below(256);
    else if (kind === 2) out = out.slice(0, at);
    else if (kind === 3)
      out = joinedBytes([out.subarray(0, at), randomBytes(dice, 1 + dice.below(8)), out.subarray(at)]);
    else if (kind === 4) out = joinedBytes([out.subarray(0, at), out.subarray(at + 1 + dice.below(20))]);
    else out = joinedBytes([out, out.subarray(at)]);
  }
  return out;
}

export const randomBytes = (dice: Dice, length: number): Uint8Array =>
  Uint8Array.from({ length }, () => dice.below(256));

const joinedBytes = (parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> => Uint8Array.from(Buffer.concat(parts));

/** The text as a file: usually UTF-8, at times in another encoding or packed. */
export function encoded(text: string, dice: Dice): Uint8Array {
  const kind = dice.below(40);
  if (kind === 0) return Buffer.from(text, 'utf16le');
  if (kind === 1) return Buffer.from(`\ufeff${text}`, 'utf16le');
  if (kind === 2) return Buffer.from(`\ufeff${text}`, 'utf16le').swap16();
  if (kind === 3) return Buffer.from(text, 'latin1');
  if (kind === 4) return gzipSync(text, { level: 1 });
  return Buffer.from(text, 'utf8');
}

/** The same bytes in pieces of changing size. */
export async function* inPieces(bytes: Uint8Array, dice: Dice): AsyncGenerator<Uint8Array> {
  const most = dice.pick([1, 3, 17, 256, 4096]);
  const least = Math.ceil(bytes.length / 400);
  for (let at = 0; at < bytes.length;) {
    const size = least + dice.below(most);
    yield bytes.slice(at, at + size);
    at += size;
  }
}
