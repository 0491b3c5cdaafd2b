/** Known damage to a known file: what is repaired or left out is said, and every sample is one that was recorded. */
import { CSV_LAYOUTS } from '../../../src/core/simulate/csv-layouts.ts';
import { seedFile } from '../csv-seeds.ts';
import type { Dice } from '../dice.ts';
import { checkProblem, checkRecording } from '../invariants.ts';
import { must, target } from '../target.ts';
import { readBytes } from './reader.ts';

type Damage = 'cells emptied' | 'cells of words' | 'rows gone' | 'rows doubled' | 'rows cut short' | 'values wild';

interface Input {
  readonly layout: number;
  readonly damage: Damage;
  readonly text: string;
  readonly hurt: number;
}

const ROWS = 120;
const layouts = CSV_LAYOUTS.filter(({ header }) => header !== 'none');
const seeds = layouts.map((layout) => seedFile(layout, ROWS));
const cleanReads = new Map<number, ReturnType<typeof readBytes>>();

/** The file before the damage, read once. */
function cleanRead(layout: number): ReturnType<typeof readBytes> {
  const read = cleanReads.get(layout) ?? readBytes(Buffer.from(seeds[layout]!.text));
  cleanReads.set(layout, read);
  return read;
}

function make(dice: Dice): Input {
  const at = dice.below(layouts.length);
  const { text, layout } = seeds[at]!;
  const damage = dice.pick<Damage>([
    'cells emptied',
    'cells of words',
    'rows gone',
    'rows doubled',
    'rows cut short',
    'values wild',
  ]);
  const lines = text.split(layout.lineEnd).slice(0, -1);
  const first = lines.length - ROWS;
  const column = layout.columns.findIndex(({ kind }) => kind === 'axis');
  const chosen = new Set(Array.from({ length: 1 + dice.below(6) }, () => first + 5 + dice.below(ROWS - 10)));
  const wrap = (cell: string): string => (layout.quoted ? `"${cell}"` : cell);
  const withCell = (line: string, cell: string): string =>
    line
      .split(layout.delimiter)
      .map((old, i) => (i === column ? wrap(cell) : old))
      .join(layout.delimiter);
  const changed = lines.flatMap((line, i) => {
    if (!chosen.has(i)) return [line];
    if (damage === 'rows gone') return [];
    if (damage === 'rows doubled') return [line, line];
    if (damage === 'rows cut short') return [line.split(layout.delimiter).slice(0, 1).join(layout.delimiter)];
    return [withCell(line, damage === 'cells emptied' ? '' : damage === 'cells of words' ? 'oops' : '1e30')];
  });
  return { layout: at, damage, text: changed.join(layout.lineEnd) + layout.lineEnd, hurt: chosen.size };
}

export const damage = target<Input>({
  name: 'damage',
  cases: 60,
  make,
  check: async ({ layout, damage: what, text }) => {
    const name = `${layouts[layout]!.name}, ${what}`;
    const read = await readBytes(Buffer.from(text));
    if (!read.ok) return checkProblem(read.problem, text);
    checkRecording(read.value);
    const clean = await cleanRead(layout);
    must(clean.ok, `${name}: the clean file is refused`);
    const usual = new Set(clean.value.notes.map(({ code }) => code));
    const said = read.value.notes.some(({ code }) => !usual.has(code));
    const held = (recording: typeof read.value): number =>
      recording.segments.reduce((sum, piece) => sum + piece.accelerationMps2[0]!.length, 0);
    const full = clean.value.segments[0]!.accelerationMps2;
    const known = full.map((axis) => new Set(axis));
    const odd = read.value.segments.some((piece) =>
      piece.accelerationMps2.some((axis, k) => axis.some((value) => !known[k]!.has(value))),
    );
    // Without a time column nobody can know of rows that are not there, and that is said of every such file.
    const blind = clean.value.notes.some(({ code }) => code === 'rate-not-from-stamps') && what.startsWith('rows');
    must(
      said || blind || (!odd && held(read.value) === held(clean.value)),
      `${name}: repaired or left out without a word`,
    );
    must(
      Math.abs(read.value.samplingRateHz / clean.value.samplingRateHz - 1) < 0.02,
      `${name}: ${read.value.samplingRateHz} Hz instead of ${clean.value.samplingRateHz}`,
    );
    const most = Math.max(...full.flatMap((axis) => [...axis].map(Math.abs)));
    for (const piece of read.value.segments)
      for (const axis of piece.accelerationMps2)
        for (const value of axis) must(Math.abs(value) <= 1.5 * most, `${name}: ${value} m/s²`);
  },
  show: ({ text }) => text,
});
