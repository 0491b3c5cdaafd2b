/** Damaged tables through the reader: read the same in pieces and by both ways through the rows, or refused in words. */
import { isDeepStrictEqual } from 'node:util';
import type { Result } from '../../../src/core/note.ts';
import { readRecording } from '../../../src/core/reading/read-recording.ts';
import type { ReadOptions } from '../../../src/core/reading/read-recording.ts';
import type { Recording } from '../../../src/core/reading/recording.ts';
import { seedFiles } from '../csv-seeds.ts';
import { diceOf } from '../dice.ts';
import type { Dice } from '../dice.ts';
import { checkProblem, checkRecording } from '../invariants.ts';
import { damagedBytes, encoded, inPieces, randomBytes } from '../mutate-bytes.ts';
import { mutatedTable } from '../mutate-table.ts';
import { anyText } from '../odd-text.ts';
import { must, target } from '../target.ts';

export interface FileInput {
  readonly bytes: Uint8Array;
  /** Read a second time in pieces from these dice, or by the other way through the rows. */
  readonly again: 'no' | 'pieces' | 'tokenised';
  readonly seed: number;
  readonly options: ReadOptions;
}

const seeds = seedFiles(40);

function bytesOf(dice: Dice): Uint8Array {
  const kind = dice.below(40);
  if (kind === 0) return randomBytes(dice, dice.below(400));
  if (kind === 1) return Buffer.from(Array.from({ length: dice.below(30) }, () => anyText(dice, 80)).join('\n'));
  const { text, layout } = dice.pick(seeds);
  if (kind === 2) return damagedBytes(Buffer.from(text), dice);
  const bytes = encoded(mutatedTable(text, layout.delimiter, dice), dice);
  return dice.chance(0.15) ? damagedBytes(bytes, dice) : bytes;
}

export async function readBytes(
  bytes: Uint8Array | AsyncIterable<Uint8Array>,
  options: ReadOptions = {},
): Promise<Result<Recording>> {
  return readRecording({ name: 'made.csv', bytes }, options);
}

export const reader = target<FileInput>({
  name: 'reader',
  cases: 400,
  make: (dice) => ({
    bytes: bytesOf(dice),
    again: dice.pick(['no', 'no', 'pieces', 'tokenised']),
    seed: dice.below(2 ** 31),
    options: dice.chance(0.1) ? { samplingRateHz: dice.pick([100, 1000, 0, -1, NaN, 1e-9, 1e9, Infinity]) } : {},
  }),
  check: async ({ bytes, again, seed, options }) => {
    const read = await readBytes(bytes, options);
    if (read.ok) checkRecording(read.value);
    else checkProblem(read.problem, `${Buffer.from(bytes).toString('latin1')}${options.samplingRateHz}`);
    if (again === 'no') return;
    const second =
      again === 'pieces'
        ? await readBytes(inPieces(bytes, diceOf(seed)), options)
        : await readBytes(bytes, { ...options, way: 'tokenised' });
    // How much of a broken stream can be unpacked is up to the platform.
    if (brokenStream(read) || brokenStream(second)) return;
    must(isDeepStrictEqual(second, read), `read otherwise (${again}): ${difference(read, second)}`);
  },
  show: ({ bytes }) => bytes,
});

const brokenStream = (read: Result<Recording>): boolean =>
  read.ok ? read.value.notes.some(({ code }) => code === 'gzip-cut-short') : read.problem.code === 'damaged-gzip';

const difference = (first: Result<Recording>, second: Result<Recording>): string =>
  [first, second]
    .map((read) =>
      read.ok
        ? `${read.value.segments.map(({ accelerationMps2 }) => accelerationMps2[0]!.length).join('+')} rows at ${read.value.samplingRateHz} Hz, ${read.value.notes.map(({ code }) => code).join(' ')}`
        : `${read.problem.code} line ${read.problem.line}`,
    )
    .join(' | ');
