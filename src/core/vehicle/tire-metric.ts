/** Sizes by section width in mm, height ratio and rim: P-metric, metric, LT, C, ST, HL, temporary spare. */
import { success } from '../note.ts';
import type { Note, Result } from '../note.ts';
import { MM_PER_INCH } from '../units.ts';
import { CONSTRUCTION, constructionOf, info, letterOf, outside, refuse } from './tire-parts.ts';
import type { TireForm, TireSize } from './tire-parts.ts';
import { readSuffix } from './tire-suffix.ts';

/** Ratio of a size that prints none (old metric sizes such as 165R15); 80 % by common practice, 82 % is also quoted. */
const UNPRINTED_ASPECT_PERCENT = 80;
/** Rim numbers from here up are millimetres, not inches (from memory of ETRTO: 315, 340, 365, 390, 415 …). */
const FIRST_MM_RIM = 300;

export const METRIC = new RegExp(
  `^(P|LT|ST|T|HL)?(\\d{3})(?:[ /.-]?(\\d{2}|\\d{3}))?(?:[ -]?${CONSTRUCTION} ?-?|[ /.-]|)(\\d{2}\\.5|\\d{3}|\\d{2})(?!\\d)(.*)$`,
  'u',
);

/** How far a metric size could be followed before it broke off. */
export const understoodPart = (size: string): string => {
  const match = /^(?:P|LT|ST|T|HL)?(\d{3})(?:[ /.-]?(\d{2,3})(?!\d))?(.*)$/u.exec(size);
  if (match === null) return '';
  const [, width = '', ratio, rest = ''] = match;
  const read =
    ratio === undefined ? `the width ${width} mm was` : `the width ${width} mm and the ratio ${ratio} % were`;
  return rest === '' ? `${read} understood, but the rim is missing` : `${read} understood, but not "${rest}"`;
};

const formOf = (prefix: string, letters: string): TireForm => {
  if (prefix === 'T') return 'spare';
  if (prefix === 'ST') return 'trailer';
  if (prefix === 'LT' || letters === 'LT') return 'light-truck';
  return letters === 'C' ? 'commercial' : 'passenger';
};

/** Reads what METRIC matched. */
export const readMetric = (match: RegExpExecArray, shown: string): Result<TireSize> => {
  const [, prefix = '', widthText = '', ratioText, speed, radial, bias, rimText = '', tail = ''] = match;
  const sectionWidthMm = Number(widthText);
  const aspectAssumed = ratioText === undefined;
  const aspectPercent = aspectAssumed ? UNPRINTED_ASPECT_PERCENT : Number(ratioText);
  const rim = Number(rimText);
  const rimInMm = rim >= FIRST_MM_RIM;
  const lettered = radial !== undefined || bias !== undefined;
  // "265/70" looks like a size without ratio on a 70 inch rim; what is missing is the rim.
  if (aspectAssumed && !lettered && rim > 30 && !rimInMm) return refuse(shown, understoodPart(match[0]));
  const wrong = outside([
    ['the section width in mm', sectionWidthMm, 105, 455],
    ['the height ratio in %', aspectPercent, 20, 100],
    rimInMm ? ['the rim diameter in mm', rim, 300, 600] : ['the rim diameter in inches', rim, 8, 30],
  ]);
  if (wrong !== '') return refuse(shown, wrong);
  const suffix = readSuffix(tail);
  if (suffix === null) return refuse(shown, `"${tail.trim()}" after the size was not understood`);

  const { construction, notes: assumed } = constructionOf(radial, bias, prefix === 'T');
  const notes: Note[] = [...suffix.notes, ...assumed];
  if (aspectAssumed) {
    const text = `The size names no height ratio; ${UNPRINTED_ASPECT_PERCENT} % is taken, as is usual for such sizes.`;
    notes.push(info('tire-ratio-assumed', text));
  }
  const rimMm = rimInMm ? rim : rim * MM_PER_INCH;
  const ratio = aspectAssumed ? '' : `/${aspectPercent}`;
  const speedSymbol = suffix.speedSymbol ?? speed;
  return success({
    form: formOf(prefix, suffix.letters),
    written: `${prefix}${sectionWidthMm}${ratio}${letterOf(construction)}${rimText}${suffix.letters}`,
    construction,
    diameterMm: rimMm + (2 * sectionWidthMm * aspectPercent) / 100,
    sectionWidthMm,
    aspectPercent,
    aspectAssumed,
    rimMm,
    ...(suffix.loadIndex === undefined ? {} : { loadIndex: suffix.loadIndex }),
    ...(speedSymbol === undefined ? {} : { speedSymbol }),
    notes,
  });
};
