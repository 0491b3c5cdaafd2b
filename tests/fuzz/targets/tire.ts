/** Tire sizes: what is read is a tire that could be, the same in any case and with blanks around it. */
import { rollingCircumference } from '../../../src/core/vehicle/rolling.ts';
import { parseTireSize } from '../../../src/core/vehicle/tire-size.ts';
import type { Dice } from '../dice.ts';
import { checkNumbers, checkProblem } from '../invariants.ts';
import { anyNumber, anyText, edited } from '../odd-text.ts';
import { must, target } from '../target.ts';

const SEEDS = [
  '265/70R17',
  'LT245/75R16',
  '33x12.50R15',
  '165R15',
  '190/65R390',
  'P215/65 R 16 98H',
  '205/55ZR16 91W',
  'T125/70D16',
  '31x10,50-15 LT',
  'ST225/75R15',
  '225/70R15C 112/110R',
  '185/70HR14',
  '7.50-16',
  'FR78-15',
  'HL245/40R19',
];
const WORDS = [
  '/',
  'R',
  'x',
  'X',
  '×',
  '-',
  'LT',
  'P',
  'C',
  'ZR',
  ' ',
  '"',
  ',',
  '.',
  '98H',
  '(112)',
  'XL',
  'M+S',
  '８',
  '٣',
];

function make(dice: Dice): string {
  const kind = dice.below(5);
  if (kind === 0) return anyText(dice, 60);
  if (kind === 1)
    return `${dice.pick(['', 'P', 'LT', 'ST', 'T', 'HL'])}${dice.below(600)}/${dice.below(120)}${dice.pick(['R', 'ZR', 'D', 'B', '-', 'RF', ''])}${dice.below(40)}`;
  if (kind === 2)
    return `${anyNumber(dice)}${dice.pick(['x', 'X', '×', '/'])}${anyNumber(dice)}${dice.pick(['R', '-', ''])}${anyNumber(dice)}`;
  return edited(dice.pick(SEEDS), dice, WORDS);
}

export const tire = target<string>({
  name: 'tire',
  cases: 2000,
  make,
  check: (text) => {
    const read = parseTireSize(text);
    const rolling = rollingCircumference({ kind: 'size', size: text });
    must(rolling.ok === read.ok || !rolling.ok, 'a size that is refused has a circumference');
    if (!read.ok) return checkProblem(read.problem, text);
    const { diameterMm, sectionWidthMm, rimMm, aspectPercent, written } = read.value;
    checkNumbers(read.value, text);
    must(
      diameterMm > rimMm && diameterMm < 2500 && diameterMm > 200,
      `${text}: diameter ${diameterMm} on rim ${rimMm}`,
    );
    must(sectionWidthMm > 0 && aspectPercent > 0, `${text}: width ${sectionWidthMm}, ratio ${aspectPercent}`);
    const again = parseTireSize(written);
    must(
      again.ok && Math.abs(again.value.diameterMm - diameterMm) < 1e-9,
      `${text}: written "${written}" is another tire`,
    );
    for (const other of [text.toLowerCase(), ` ${text} `]) {
      const same = parseTireSize(other);
      must(other.length > 120 || (same.ok && same.value.diameterMm === diameterMm), `${text} and ${other} differ`);
    }
    must(
      rolling.ok && rolling.value.circumferenceM > 0 && rolling.value.circumferenceM < Math.PI * diameterMm * 0.001001,
      `${text}: rolls oddly`,
    );
  },
  show: (text) => text,
});
