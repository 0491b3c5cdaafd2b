/** Files too large to hold, made as they are read: a line of 1 GB, and a gigabyte that was packed small. */
import { createGzip } from 'node:zlib';
import { Readable } from 'node:stream';
import type { Result } from '../../../src/core/note.ts';
import type { Recording } from '../../../src/core/reading/recording.ts';
import { checkProblem, checkRecording } from '../invariants.ts';
import { must, target } from '../target.ts';
import { readBytes } from './reader.ts';

const GIGABYTE = 1e9;
const CHUNK = 1 << 20;
/** What reading may hold beside the columns it keeps, which are none here. */
const ROOM_BYTES = 200e6;

const rows = Array.from(
  { length: 200 },
  (_, i) =>
    `${(i / 100).toFixed(2)},${Math.sin(i).toFixed(4)},${Math.cos(i).toFixed(4)},${(9.8 + Math.sin(3 * i)).toFixed(4)}\n`,
).join('');
const HEAD = `time (s),acc x (m/s2),acc y (m/s2),acc z (m/s2)\n${rows}`;

interface Large {
  readonly before: string;
  readonly mark: string;
  readonly packed: boolean;
}

const SHAPES: readonly Large[] = ['', HEAD].flatMap((before) =>
  ['1', ',', '"', ' ', '1,', '\n', '#\n', '"\n'].flatMap((mark) => [
    { before, mark, packed: false },
    { before, mark, packed: true },
  ]),
);

async function* flood({ before, mark }: Large): AsyncGenerator<Uint8Array> {
  if (before !== '') yield Buffer.from(before);
  const chunk = Buffer.from(mark.repeat(CHUNK / mark.length));
  for (let sent = 0; sent < GIGABYTE; sent += chunk.length) yield chunk;
}

/** Only with --only large: each takes seconds. */
export const large = target<Large>({
  name: 'large',
  cases: 0,
  make: (_, index) => SHAPES[index % SHAPES.length]!,
  check: async (shape) => {
    const before = process.memoryUsage();
    let most = 0;
    const timer = setInterval(() => (most = Math.max(most, process.memoryUsage().arrayBuffers)), 20);
    const source = shape.packed ? Readable.from(flood(shape)).pipe(createGzip({ level: 1 })) : flood(shape);
    const read: Result<Recording> = await readBytes(source);
    clearInterval(timer);
    must(most - before.arrayBuffers < ROOM_BYTES, `held ${Math.round((most - before.arrayBuffers) / 1e6)} MB`);
    if (read.ok) checkRecording(read.value);
    else checkProblem(read.problem, '');
  },
  show: ({ before, mark, packed }) => `${before}then a gigabyte of ${JSON.stringify(mark)}${packed ? ', packed' : ''}`,
});
