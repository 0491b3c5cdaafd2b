/** Damage that knows keys and values. */
import type { Dice } from './dice.ts';
import { ODD_WORDS, anyNumber, anyText } from './odd-text.ts';

type Json = unknown;

const UNITS = ['', ' mph', ' km/h', ' mm', ' in', ' kg', ' Hz', ' rpm', ' m/s', ' °', ' thou', ' furlongs'];

function oddValue(dice: Dice, depth = 0): Json {
  switch (dice.below(10)) {
    case 0:
      return null;
    case 1:
      return dice.chance(0.5);
    case 2:
      return [];
    case 3:
      return {};
    case 4:
      return dice.pick([0, -0, -1, 0.5, 1e308, -1e308, 5e-324, 2 ** 53, 1e21, 7.5, 1000]);
    case 5:
      return anyNumber(dice) + dice.pick(UNITS);
    case 6:
      return dice.pick(ODD_WORDS);
    case 7:
      return Array.from({ length: dice.below(30 >> (2 * depth)) }, () => oddValue(dice, depth + 1));
    case 8: {
      let deep: Json = 1;
      for (let left = dice.below(200); left > 0; left--) deep = dice.chance(0.5) ? [deep] : { a: deep };
      return deep;
    }
    default:
      return anyText(dice);
  }
}

/** A copy with a change at one place chosen on the way down. */
export function mutatedJson(value: Json, dice: Dice): Json {
  if (Array.isArray(value) && value.length > 0 && dice.chance(0.85)) {
    const at = dice.below(value.length);
    const kind = dice.below(12);
    if (kind === 0) return value.filter((_, i) => i !== at);
    if (kind === 1) return [...value, ...value];
    return value.map((item, i) => (i === at ? mutatedJson(item, dice) : (item as Json)));
  }
  if (typeof value === 'object' && value !== null && !Array.isArray(value) && dice.chance(0.92)) {
    const entries = Object.entries(value);
    const at = dice.below(Math.max(1, entries.length));
    const kind = dice.below(14);
    if (kind === 0) return Object.fromEntries(entries.filter((_, i) => i !== at));
    if (kind === 1) return Object.fromEntries([...entries, [dice.pick(ODD_WORDS), oddValue(dice)]]);
    if (kind === 2) return Object.fromEntries(entries.map(([key, item], i) => [i === at ? anyText(dice) : key, item]));
    return Object.fromEntries(
      entries.map(([key, item], i) => [key, i === at ? mutatedJson(item, dice) : (item as Json)]),
    );
  }
  if (typeof value === 'number' && dice.chance(0.5)) return value * dice.pick([-1, 0, 10, 0.1, 1000, 1.01]);
  return oddValue(dice);
}
