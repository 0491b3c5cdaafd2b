/** Numbers with units: finite and possible, or refused; and a number that leaves no doubt is read as what it is. */
import * as quantity from '../../../src/core/quantity/quantity.ts';
import * as kinds from '../../../src/core/quantity/quantity-kinds.ts';
import type { QuantityKind } from '../../../src/core/quantity/quantity-kinds.ts';
import type { Dice } from '../dice.ts';
import { checkProblem } from '../invariants.ts';
import { anyNumber, anyText, edited } from '../odd-text.ts';
import { must, target } from '../target.ts';

const KINDS = Object.values(kinds).filter((kind): kind is QuantityKind => typeof kind === 'object');

interface Input {
  readonly text: string;
  readonly kind: QuantityKind;
  readonly defaultUnit: string | undefined;
  /** What it must come to, where that is known. */
  readonly value?: number;
}

function make(dice: Dice): Input {
  const kind = dice.pick(KINDS);
  const unit = dice.pick(Object.keys(kind.units));
  const defaultUnit = dice.chance(0.3) ? dice.pick(Object.keys(kind.units)) : undefined;
  const way = dice.below(4);
  if (way === 0) return { text: anyText(dice), kind, defaultUnit };
  if (way === 1) return { text: anyNumber(dice) + dice.pick(['', ' ']) + unit, kind, defaultUnit };
  if (way === 2)
    return {
      text: edited(dice.pick(['62 mph', '2.36m', '3,73', '92 7/8 in', '1,850 rpm', kind.example]), dice),
      kind,
      defaultUnit,
    };
  // A decimal point with other than three digits behind it leaves no doubt.
  const digits = dice.pick([1, 2, 4]);
  const number = (dice.uniform() * 10 ** dice.below(4)).toFixed(digits);
  return { text: `${number} ${unit}`.trim(), kind, defaultUnit: undefined, value: kind.units[unit]!(Number(number)) };
}

export const quantities = target<Input>({
  name: 'quantity',
  cases: 2000,
  make,
  check: ({ text, kind, defaultUnit, value }) => {
    const read = quantity.parseQuantity(text, kind, defaultUnit);
    const possible = value !== undefined && value >= kind.range[0] && value <= kind.range[1];
    must(!possible || read.ok, `${text} is refused as ${kind.name}`);
    if (!read.ok) return checkProblem(read.problem, text);
    must(Number.isFinite(read.value), `${text} is ${read.value}`);
    must(
      read.value >= kind.range[0] && read.value <= kind.range[1],
      `${text} is ${read.value}, outside ${kind.range.join('..')}`,
    );
    must(
      value === undefined || Math.abs(read.value - value) <= 1e-12 * Math.abs(value),
      `${text} is ${read.value}, not ${value}`,
    );
  },
  show: ({ text, kind, defaultUnit }) => `${JSON.stringify(text)} as ${kind.name}, default ${defaultUnit}`,
});
