/** Numbers and lists as sentences need them. */
import { kmhFromMps, mphFromMps } from './units.ts';

const SMALL = ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'];

/** 3 → 'three', 14.2 → '14'. */
export const countText = (n: number): string => SMALL[Math.round(n)] ?? n.toFixed(0);

/** 'about 1.4 times', 'nine times'. */
export const timesText = (ratio: number): string => {
  if (ratio < 1.95) return `about ${ratio.toFixed(1)} times`;
  return ratio < 2.5 ? 'twice' : `${countText(ratio)} times`;
};

export const hzText = (hz: number): string => `${hz.toFixed(hz < 10 ? 2 : 1)} Hz`;

/** '62 mph (100 km/h)': both, since the sentence is read in both worlds. */
export const bothSpeedsText = (mps: number, decimals = 0): string =>
  `${mphFromMps(mps).toFixed(decimals)} mph (${kmhFromMps(mps).toFixed(decimals)} km/h)`;

export const capitalized = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
/** 'Worn joint' → 'worn joint'; 'U-bolts' stay. */
export const uncapitalized = (text: string): string =>
  /^[A-Z](?![a-z ])/.test(text) ? text : text.charAt(0).toLowerCase() + text.slice(1);

/** 'a', 'a and b', 'a, b and c'. */
export const listText = (items: readonly string[], word = 'and'): string =>
  items.length < 2 ? (items[0] ?? '') : `${items.slice(0, -1).join(', ')} ${word} ${items[items.length - 1]}`;

/** '97 in 100', for sentences; certainty is never claimed. */
export const chanceText = (probability: number): string =>
  `${Math.min(99, Math.max(1, Math.round(probability * 100)))} in 100`;
