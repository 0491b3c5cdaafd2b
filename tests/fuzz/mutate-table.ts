/** Damage that knows lines and cells. */
import type { Dice } from './dice.ts';
import { ODD_WORDS, anyNumber, anyText } from './odd-text.ts';

type Lines = string[];
type Change = (lines: Lines, dice: Dice, delimiter: string) => Lines;

const onLine =
  (change: (line: string, dice: Dice, delimiter: string) => string): Change =>
  (lines, dice, delimiter) => {
    const at = dice.chance(0.3) ? dice.below(Math.min(4, lines.length)) : dice.below(lines.length);
    return lines.map((line, i) => (i === at ? change(line, dice, delimiter) : line));
  };

const onCell = (change: (cell: string, dice: Dice) => string): Change =>
  onLine((line, dice, delimiter) => {
    const cells = line.split(delimiter);
    const at = dice.below(cells.length);
    return cells.map((cell, i) => (i === at ? change(cell, dice) : cell)).join(delimiter);
  });

const onColumn =
  (change: (cell: string, row: number, dice: Dice) => string | null): Change =>
  (lines, dice, delimiter) => {
    const at = dice.below(lines.at(-2)?.split(delimiter).length ?? 1);
    const share = dice.pick([1, 1, 0.1]);
    return lines.map((line, row) =>
      line
        .split(delimiter)
        .flatMap((cell, i) => {
          if (i !== at || !dice.chance(share)) return [cell];
          const changed = change(cell, row, dice);
          return changed === null ? [] : [changed];
        })
        .join(delimiter),
    );
  };

const CHANGES: readonly Change[] = [
  onCell((_, dice) => anyNumber(dice)),
  onCell((_, dice) => dice.pick(ODD_WORDS)),
  onCell((cell, dice) => cell.slice(0, dice.below(cell.length + 1))),
  onCell((cell) => `"${cell}"`),
  onCell((cell) => cell + cell),
  onLine((line, dice, delimiter) => line + delimiter + anyNumber(dice)),
  onLine((line, dice, delimiter) => line.split(delimiter).slice(0, dice.below(6)).join(delimiter)),
  onLine((line) => `${line}\n${line}`),
  onLine(() => ''),
  onLine((_, dice) => anyText(dice, 200)),
  onLine((line) => `#${line}`),
  onColumn(() => null),
  onColumn((cell) => `${cell.trim()}e3`),
  onColumn(() => '0'),
  onColumn((_, row) => String(row)),
  onColumn((_, __, dice) => anyNumber(dice)),
  onColumn((cell, row) => (row % 4 ? cell : '')),
  onColumn((cell) => `-${cell}`),
  (lines, dice) => lines.slice(dice.below(lines.length)),
  (lines, dice) => lines.filter(() => !dice.chance(0.2)),
  (lines, dice) => {
    const [from, to] = [dice.below(lines.length), dice.below(lines.length)];
    const line = lines[from]!;
    return lines.map((other, i) => (i === to ? line : i === from ? lines[to]! : other));
  },
  (lines, dice) => {
    const at = dice.below(lines.length);
    return [...lines.slice(0, at), ...lines, ...lines.slice(at)];
  },
  (lines) => [...lines].reverse(),
  (lines) => lines.slice(1),
  (lines, dice, delimiter) =>
    lines.map((line) => line.replaceAll(delimiter, dice.pick([',', ';', '\t', ' ', '|', ',,']))),
  (lines) => lines.map((line) => line.replaceAll('.', ',')),
  (lines) => lines.map((line) => line.replaceAll(',', '.')),
  (lines, dice) => [anyText(dice, 300), ...lines],
  (lines, dice) => [
    `${dice.pick(['rate', 'sampling rate:', 'fs =', 'sep=', 'Fréquence :'])} ${anyNumber(dice)} Hz`,
    ...lines,
  ],
  (lines) => lines.map((line) => line.replaceAll(/\d/g, '1')),
];

/** A table changed in one to three ways; line ends change too at times. */
export function mutatedTable(text: string, delimiter: string, dice: Dice): string {
  const end = text.includes('\r\n') ? '\r\n' : '\n';
  let lines = text.split(end);
  for (let left = 1 + dice.below(3); left > 0 && lines.length > 0; left--)
    lines = dice.pick(CHANGES)(lines, dice, delimiter).slice(0, 2000);
  return lines.join(dice.chance(0.1) ? dice.pick(['\r', '\n\n', '\r\n', '\n\r']) : end);
}
