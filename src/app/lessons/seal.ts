/**
 * An answer locked with a word: AES-GCM (NIST SP 800-38D) under a key made from the word by PBKDF2 (RFC 8018). The
 * name of the recording stands open beside it and is bound to it.
 */
import type { Result } from '../../core/note.ts';
import { failure, success } from '../../core/note.ts';
import { lessonTexts } from '../texts/lessons.ts';
import type { ClassAnswer } from './class-answer.ts';
import { isAnswer } from './class-answer.ts';

const FORMAT = 'perrev-sealed-answer';
/** Slows guessing down; half a second on a phone. */
const ROUNDS = 600_000;

interface SealedFile {
  readonly format: typeof FORMAT;
  readonly version: 1;
  readonly recording: string;
  readonly salt: string;
  readonly start: string;
  readonly sealed: string;
}

type Bytes = Uint8Array<ArrayBuffer>;
const utf8 = (text: string): Bytes => new TextEncoder().encode(text);
const toText = (bytes: Bytes): string => btoa(String.fromCharCode(...bytes));
const toBytes = (text: string): Bytes => Uint8Array.from(atob(text), (letter) => letter.charCodeAt(0));

/** Browsers offer locks only to pages that came over a safe connection. */
export const canSeal = (): boolean => globalThis.crypto?.subtle !== undefined;

async function keyOf(word: string, salt: Bytes): Promise<CryptoKey> {
  const secret = await crypto.subtle.importKey('raw', utf8(word.trim().normalize('NFKC')), 'PBKDF2', false, [
    'deriveKey',
  ]);
  return crypto.subtle.deriveKey(
    { name: 'PBKDF2', hash: 'SHA-256', salt, iterations: ROUNDS },
    secret,
    { name: 'AES-GCM', length: 256 },
    false,
    ['encrypt', 'decrypt'],
  );
}

const locking = (start: Bytes, recording: string): AesGcmParams => ({
  name: 'AES-GCM',
  iv: start,
  additionalData: utf8(recording),
});

/** @returns Text of the answer file. */
export async function sealAnswer(answer: ClassAnswer, word: string): Promise<string> {
  const salt = crypto.getRandomValues(new Uint8Array(16));
  const start = crypto.getRandomValues(new Uint8Array(12));
  const key = await keyOf(word, salt);
  const sealed = await crypto.subtle.encrypt(locking(start, answer.recording), key, utf8(JSON.stringify(answer)));
  const file: SealedFile = {
    format: FORMAT,
    version: 1,
    recording: answer.recording,
    salt: toText(salt),
    start: toText(start),
    sealed: toText(new Uint8Array(sealed)),
  };
  return `${JSON.stringify(file, null, 2)}\n`;
}

/** Opens an answer file. A wrong word and a changed file cannot be told apart. */
export async function openAnswer(text: string, word: string): Promise<Result<ClassAnswer>> {
  const words = lessonTexts.build;
  const file = parsed(text);
  if (file === null) return failure({ code: 'not-an-answer', message: words.notAnswer, remedy: words.noFile });
  try {
    const key = await keyOf(word, toBytes(file.salt));
    const plain = await crypto.subtle.decrypt(locking(toBytes(file.start), file.recording), key, toBytes(file.sealed));
    const answer: unknown = JSON.parse(new TextDecoder().decode(plain));
    if (isAnswer(answer)) return success(answer);
  } catch {
    // Said below: the lock does not tell why it stays shut.
  }
  return failure({ code: 'answer-stays-shut', message: words.wrongWord, remedy: words.wrongWordRemedy });
}

function parsed(text: string): SealedFile | null {
  try {
    const file = JSON.parse(text) as Partial<Record<keyof SealedFile, unknown>> | null;
    const isSealed =
      file?.format === FORMAT &&
      file.version === 1 &&
      [file.recording, file.salt, file.start, file.sealed].every((part) => typeof part === 'string');
    return isSealed ? (file as SealedFile) : null;
  } catch {
    return null;
  }
}
