/** Sizes by outer diameter and section width in inches: 33x12.50R15. */
import { success } from '../note.ts';
import type { Result } from '../note.ts';
import { MM_PER_INCH } from '../units.ts';
import { CONSTRUCTION, constructionOf, letterOf, outside, refuse } from './tire-parts.ts';
import type { TireSize } from './tire-parts.ts';
import { readSuffix } from './tire-suffix.ts';

export const FLOTATION = new RegExp(
  `^(LT)?(\\d{2}(?:\\.\\d{1,2})?)[X/-](\\d{1,2}(?:\\.\\d{1,2})?|\\d{3,4})(?:[ -]?${CONSTRUCTION} ?-?|[ /X-])(\\d{2}(?:\\.5)?)(?!\\d)(.*)$`,
  'u',
);

/** Reads what FLOTATION matched. */
export const readFlotation = (match: RegExpExecArray, shown: string): Result<TireSize> => {
  const [, , diameterText = '', widthText = '', , radial, bias, rimText = '', tail = ''] = match;
  const diameterIn = Number(diameterText);
  // "33x1250R15" leaves the dot of 12.50 away.
  const widthIn = /^\d{3,4}$/u.test(widthText) ? Number(widthText) / 100 : Number(widthText);
  const rimIn = Number(rimText);
  const wrong = outside([
    ['the outer diameter in inches', diameterIn, 20, 60],
    ['the section width in inches', widthIn, 4, 25],
    ['the rim diameter in inches', rimIn, 8, Math.min(30, diameterIn - 3)],
  ]);
  if (wrong !== '') return refuse(shown, wrong);
  const suffix = readSuffix(tail);
  if (suffix === null) return refuse(shown, `"${tail.trim()}" after the size was not understood`);

  const { construction, notes } = constructionOf(radial, bias);
  const diameterMm = diameterIn * MM_PER_INCH;
  const rimMm = rimIn * MM_PER_INCH;
  const sectionWidthMm = widthIn * MM_PER_INCH;
  return success({
    form: 'flotation',
    written: `${diameterIn}x${widthIn.toFixed(2)}${letterOf(construction)}${rimText}LT`,
    construction,
    diameterMm,
    sectionWidthMm,
    aspectPercent: (100 * (diameterMm - rimMm)) / 2 / sectionWidthMm,
    aspectAssumed: false,
    rimMm,
    ...(suffix.loadIndex === undefined ? {} : { loadIndex: suffix.loadIndex }),
    ...(suffix.speedSymbol === undefined ? {} : { speedSymbol: suffix.speedSymbol }),
    notes: [...suffix.notes, ...notes],
  });
};
