/** Texts that have broken readers before. */
import type { Dice } from './dice.ts';

const ODD_NUMBERS: readonly string[] = [
  '',
  ' ',
  '0',
  '-0',
  '+1',
  '1e308',
  '-1e308',
  '1e309',
  '1e-320',
  '4.9e-324',
  'NaN',
  'nan',
  'inf',
  '-Infinity',
  '∞',
  '1e',
  'e5',
  '.',
  ',',
  '-',
  '--1',
  '+-1',
  '1-2',
  '0x10',
  '0b1',
  '1_000',
  '1,000',
  '1.000,5',
  '1.2.3',
  '1,2,3',
  '١٢٣',
  '½',
  '１２',
  '9007199254740993',
  '18446744073709551616',
  '0.1e+0005',
  '00012',
  '1e-400',
  '12:34',
  '12:34:56.7',
  '2026-01-01',
  '2026-13-41T25:61:61Z',
  '#N/A',
  '#DIV/0!',
  '=1+1',
  'null',
  'undefined',
  'true',
  '"',
  '""',
  "'",
  '\\',
  '\u0000',
  '\u001b[31m',
  '\ufeff',
  '\u2028',
  '\ud800',
  '🛞',
  '9'.repeat(400),
  `0.${'0'.repeat(400)}1`,
  '1 000',
  '1\u00a0000',
  '5 %',
  '-32768',
  '32767',
  '65535',
  '2147483648',
  '1e15',
  '1e22',
  '-1e-7',
];

export const ODD_WORDS: readonly string[] = [
  ...ODD_NUMBERS,
  '__proto__',
  'constructor',
  'toString',
  '<script>alert(1)</script>',
  '"><img src=x>',
  '${x}',
  '%s%n',
  '../../etc/passwd',
  'time',
  'time (ms)',
  'time (s)',
  'timestamp',
  'acc x (g)',
  'acc x (m/s²)',
  'gyro x',
  'speed (km/h)',
  'rpm',
  'x',
  'y',
  'z',
  'acceleration',
  'sep=;',
  '# rate 200 Hz',
  'sampling rate: 1000 Hz',
  'm/s²',
  'mg',
  'counts',
  'a'.repeat(2000),
  'Temps (s)',
  'Zeit',
  'sensor',
  'accelerometer',
  '\r',
  '\n',
  '\r\n',
  '\t',
  ';',
  '|',
];

/** A text of any characters. */
export function anyText(dice: Dice, longest = 40): string {
  const kind = dice.below(4);
  if (kind === 0) return dice.pick(ODD_WORDS);
  return Array.from({ length: dice.below(longest) }, () =>
    String.fromCodePoint(kind === 1 ? 32 + dice.below(95) : kind === 2 ? dice.below(0x250) : dice.below(0xd800)),
  ).join('');
}

/** A number as it may be written, mostly believable. */
export function anyNumber(dice: Dice): string {
  const kind = dice.below(6);
  if (kind === 0) return dice.pick(ODD_NUMBERS);
  if (kind === 1) return String((dice.uniform() - 0.5) * 10 ** (dice.below(40) - 20));
  if (kind === 2) return String(dice.below(1000));
  const digits = dice.below(5);
  const text = (dice.uniform() * 10 ** dice.below(5)).toFixed(digits);
  return kind === 3 ? text.replace('.', ',') : kind === 4 ? `-${text}` : text;
}

/** A few small edits of a text. */
export function edited(text: string, dice: Dice, words: readonly string[] = ODD_WORDS): string {
  let out = text;
  for (let left = 1 + dice.below(3); left > 0; left--) {
    const at = dice.below(out.length + 1);
    const kind = dice.below(6);
    if (kind === 0) out = out.slice(0, at) + out.slice(at + 1 + dice.below(3));
    else if (kind === 1) out = out.slice(0, at) + dice.pick(words) + out.slice(at);
    else if (kind === 2) out = out.slice(0, at) + String.fromCharCode(dice.below(256)) + out.slice(at);
    else if (kind === 3) out = out.slice(0, at) + out.slice(at, at + 4) + out.slice(at);
    else if (kind === 4) out = dice.chance(0.5) ? out.toLowerCase() : out.toUpperCase();
    else out = out.slice(0, at);
  }
  return out;
}
