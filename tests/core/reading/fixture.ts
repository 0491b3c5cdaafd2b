/** Tiny recordings for the reader's tests, made in the test and readable in it. */
import { expect } from 'vitest';
import type { Problem } from '../../../src/core/note.ts';
import { readRecording } from '../../../src/core/reading/read-recording.ts';
import type { ReadOptions } from '../../../src/core/reading/read-recording.ts';
import type { Recording } from '../../../src/core/reading/recording.ts';
import { must } from '../../support/must.ts';

const ROWS = 64;
const RATE_HZ = 100;

/** Acceleration in g of sample i: a shake on each axis, gravity on z. Four decimals, so that text and number agree. */
export const sampleG = (i: number): [number, number, number] => [
  round(0.1 * Math.sin(i)),
  round(0.2 * Math.cos(1.7 * i)),
  round(1 + 0.05 * Math.sin(2.3 * i)),
];
const round = (value: number): number => Number(value.toFixed(4));

/** Rows of cells, sample by sample, joined by a separator; each line ends with a line end. */
export const table = (
  row: (i: number) => readonly (string | number)[],
  separator = ',',
  rows = ROWS,
  lineEnd = '\n',
): string => Array.from({ length: rows }, (_, i) => row(i).join(separator) + lineEnd).join('');

export const seconds = (i: number): string => (i / RATE_HZ).toFixed(2);

/** The plain file: time in s, acceleration in g. */
export const PLAIN = `time (s),acc x (g),acc y (g),acc z (g)\n${table((i) => [seconds(i), ...sampleG(i)])}`;

export const bytesOf = (text: string): Uint8Array => new TextEncoder().encode(text);

/** Bytes in pieces of a given size. */
export async function* inPieces(bytes: Uint8Array, size: number): AsyncGenerator<Uint8Array> {
  for (let at = 0; at < bytes.length; at += size) yield bytes.slice(at, at + size);
}

export const readText = (text: string | Uint8Array, options: ReadOptions = {}, name = 'test.csv') =>
  readRecording({ name, bytes: typeof text === 'string' ? bytesOf(text) : text }, options);

/** The recording, or a failed test that says why there is none. */
export async function recordingOf(
  text: string | Uint8Array,
  options: ReadOptions = {},
  name = 'test.csv',
): Promise<Recording> {
  return must(await readText(text, options, name));
}

export async function problemOf(
  text: string | Uint8Array,
  options: ReadOptions = {},
  name = 'test.csv',
): Promise<Problem> {
  const read = await readText(text, options, name);
  if (read.ok) throw new Error(`read: ${JSON.stringify(read.value.notes)}`);
  return read.problem;
}

export const codesOf = (recording: Recording): string[] => recording.notes.map((note) => note.code);

/** The recording is the fixture's shake in m/s², all rows of it, at 100 Hz. */
export function expectShake(recording: Recording, rows = ROWS): void {
  expect(recording.samplingRateHz).toBeCloseTo(RATE_HZ, 9);
  expect(recording.segments).toHaveLength(1);
  const segment = recording.segments[0]!;
  expect(segment.timeS).toBeNull();
  expect(recording.channels.map((channel) => channel.axis)).toEqual(['x', 'y', 'z']);
  segment.accelerationMps2.forEach((axis, k) => {
    expect(axis).toHaveLength(rows);
    axis.forEach((value, i) => expect(value).toBeCloseTo(sampleG(i)[k]! * 9.80665, 9));
  });
}
