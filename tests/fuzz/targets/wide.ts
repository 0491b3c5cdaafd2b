/** Sizes out of the ordinary: headers of a megabyte, ten thousand columns, long lines, cells and quotes, bombs. */
import { gzipSync } from 'node:zlib';
import type { Dice } from '../dice.ts';
import { checkProblem, checkRecording } from '../invariants.ts';
import { target } from '../target.ts';
import { readBytes } from './reader.ts';

type Shape = (dice: Dice) => Uint8Array;

const rows = (count: number, cells: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => `${(i / 100).toFixed(2)},${cells(i)}\n`).join('');
const shake = (i: number): string =>
  `${(0.1 * Math.sin(i)).toFixed(4)},${(0.2 * Math.cos(i)).toFixed(4)},${(1 + 0.1 * Math.sin(2 * i)).toFixed(4)}`;
const HEADER = 'time (s),acc x (g),acc y (g),acc z (g)';
const text = (content: string): Uint8Array => Buffer.from(content);

const SHAPES: readonly Shape[] = [
  (dice) => text(`${'a,'.repeat(dice.below(300_000))}\n${rows(64, shake)}`),
  (dice) => text(`${`#${'x'.repeat(1000)}\n`.repeat(dice.below(2000))}${HEADER}\n${rows(64, shake)}`),
  (dice) =>
    text(`${HEADER}${',extra'.repeat(9_996)}\n${rows(20 + dice.below(20), (i) => shake(i) + ',1'.repeat(9_996))}`),
  (dice) => text(rows(20, (i) => Array.from({ length: 9_999 + dice.below(3) }, (_, k) => (i * k) % 7).join(','))),
  (dice) => text(`${HEADER}\n${rows(64, shake)}${'1,'.repeat(dice.below(3_000_000))}\n${rows(64, shake)}`),
  (dice) => text(`${HEADER}\n${rows(64, shake)}"${'z'.repeat(dice.below(3_000_000))}`),
  (dice) => text('1'.repeat(1 + dice.below(5_000_000))),
  (dice) => text(`${HEADER}\n${rows(64, (i) => `${'1'.repeat(1 + dice.below(20_000))},${shake(i)}`)}`),
  (dice) => text('\n'.repeat(dice.below(3_000_000)) + HEADER),
  (dice) => text(`${HEADER}\n${rows(64, shake)}${'"'.repeat(dice.below(100_000))}`),
  (dice) => text(`${HEADER}\n${'"\n'.repeat(dice.below(100_000))}${rows(64, shake)}`),
  (dice) => gzipSync(Buffer.alloc(dice.below(32 << 20), dice.pick(['\n', '1', ' ', '1,2,3,4\n', ',', '"']))),
];

export const wide = target<Uint8Array>({
  name: 'wide',
  cases: 1,
  make: (dice, index) => SHAPES[index % SHAPES.length]!(dice),
  check: async (bytes) => {
    const read = await readBytes(bytes);
    if (read.ok) checkRecording(read.value);
    else checkProblem(read.problem, '');
  },
  show: (bytes) => bytes.subarray(0, 100_000),
});
