/** Tire sizes as they stand on the sidewall or as people type them, and the diameter they mean. */
import { failure, success } from '../note.ts';
import type { Note, Result } from '../note.ts';
import { MM_PER_INCH } from '../units.ts';
import { readSuffix } from './tire-suffix.ts';

export type TireForm = 'passenger' | 'light-truck' | 'commercial' | 'trailer' | 'flotation' | 'spare';
export type TireConstruction = 'radial' | 'diagonal' | 'bias-belted';

export interface TireSize {
  readonly form: TireForm;
  /** The size written the usual way: "LT245/75R16", "33x12.50R15LT". */
  readonly written: string;
  readonly construction: TireConstruction;
  /** Free (unloaded) outer diameter by the designation, mm. */
  readonly diameterMm: number;
  readonly sectionWidthMm: number;
  /** Section height over width, %; follows from the diameter for flotation sizes. */
  readonly aspectPercent: number;
  /** True where the size names no ratio and 80 % was taken. */
  readonly aspectAssumed: boolean;
  readonly rimMm: number;
  readonly loadIndex?: number;
  readonly speedSymbol?: string;
  /** What was assumed, and words that were not used. */
  readonly notes: readonly Note[];
}

/** Ratio of a size that prints none (old metric sizes such as 165R15); 80 % by common practice, 82 % is also quoted. */
export const UNPRINTED_ASPECT_PERCENT = 80;
/** Rim numbers from here up are millimetres, not inches (from memory of ETRTO: 315, 340, 365, 390, 415 …). */
const FIRST_MM_RIM = 300;
const EXAMPLE = 'Write it as on the sidewall, like 265/70R17, LT245/75R16 or 33x12.50R15, or give the circumference.';

const CONSTRUCTION = '(?:([NPQSTUHVZWY])?(RF|R)|([DB]))';
const METRIC = new RegExp(
  `^(P|LT|ST|T|HL)?(\\d{3})(?:[ /.-]?(\\d{2}|\\d{3}))?(?:[ -]?${CONSTRUCTION} ?-?|[ /.-]|)(\\d{2}\\.5|\\d{3}|\\d{2})(?!\\d)(.*)$`,
  'u',
);
const FLOTATION = new RegExp(
  `^(LT)?(\\d{2}(?:\\.\\d{1,2})?)[X/-](\\d{1,2}(?:\\.\\d{1,2})?|\\d{3,4})(?:[ -]?${CONSTRUCTION} ?-?|[ /X-])(\\d{2}(?:\\.5)?)(?!\\d)(.*)$`,
  'u',
);
/** Sizes by width in inches (7.50-16) or by a load letter (FR78-15) do not say how tall the tire is. */
const HEIGHTLESS = /^(?:\d{1,2}(?:\.\d{1,2})?[ -]?[RDB-] ?-?\d{2}|[A-N]R?\d{2}[ -]?R?-?\d{2})/u;

const tidy = (text: string): string =>
  text
    .normalize('NFKC')
    .toUpperCase()
    .replaceAll(/[×✕*]/gu, 'X')
    .replaceAll(/[–—−‐‑]/gu, '-')
    .replaceAll(/(\d),(\d)/gu, '$1.$2')
    .replaceAll(/\s+/gu, ' ')
    .replaceAll(/ ?([/-]) ?/gu, '$1')
    .replaceAll(/(?<=\d) ?X ?(?=\d)/gu, 'X')
    .replace(/^(P|LT|ST|T|HL) (?=\d)/u, '$1')
    .trim();

const info = (code: string, text: string): Note => ({ code, text, severity: 'info' });

const refuse = (shown: string, understood: string) =>
  failure({
    code: 'tire-size',
    message: `"${shown}" is not a tire size that could be read${understood === '' ? '' : `: ${understood}`}.`,
    remedy: EXAMPLE,
  });

/** Where a field lies outside what tires are made in, the sentence that says so; '' where all is well. */
const outside = (fields: readonly (readonly [string, number, number, number])[]): string => {
  const bad = fields.find(([, value, least, most]) => !(value >= least && value <= most));
  if (bad === undefined) return '';
  const [name, value, least, most] = bad;
  return `${name} was understood as ${value}, outside ${least} to ${most}`;
};

const letterOf = (construction: TireConstruction): string =>
  construction === 'radial' ? 'R' : construction === 'diagonal' ? 'D' : 'B';

const constructionOf = (radial: string | undefined, bias: string | undefined): TireConstruction | null =>
  radial !== undefined ? 'radial' : bias === 'D' ? 'diagonal' : bias === 'B' ? 'bias-belted' : null;

/** Without a letter a temporary spare is taken as diagonal, any other tire as radial. */
const assumeConstruction = (isSpare: boolean): { construction: TireConstruction; note: Note } =>
  isSpare
    ? {
        construction: 'diagonal',
        note: info('tire-construction-assumed', 'No construction letter: the spare is taken as diagonal (D).'),
      }
    : {
        construction: 'radial',
        note: info('tire-construction-assumed', 'No construction letter: the tire is taken as radial (R).'),
      };

const readMetric = (match: RegExpExecArray, shown: string): Result<TireSize> => {
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

  const notes: Note[] = [...suffix.notes];
  let construction = constructionOf(radial, bias);
  if (construction === null) {
    const assumed = assumeConstruction(prefix === 'T');
    construction = assumed.construction;
    notes.push(assumed.note);
  }
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

const formOf = (prefix: string, letters: string): TireForm => {
  if (prefix === 'T') return 'spare';
  if (prefix === 'ST') return 'trailer';
  if (prefix === 'LT' || letters === 'LT') return 'light-truck';
  return letters === 'C' ? 'commercial' : 'passenger';
};

const readFlotation = (match: RegExpExecArray, shown: string): Result<TireSize> => {
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

  const notes: Note[] = [...suffix.notes];
  let construction = constructionOf(radial, bias);
  if (construction === null) {
    const assumed = assumeConstruction(false);
    construction = assumed.construction;
    notes.push(assumed.note);
  }
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
    notes,
  });
};

/**
 * Reads a tire size.
 *
 * Metric, P-metric, LT, C, ST, HL, temporary spare (T), flotation (33x12.50R15), sizes without a ratio (165R15),
 * millimetric rims (190/65R390), with load index and speed symbol, in any case and with the usual separators.
 * Diameter of metric sizes: rim + 2·width·ratio (UN R30 §6.1.2 without its rounding of the section height).
 *
 * @returns The size, or a Problem that names what was understood and shows an example.
 */
export const parseTireSize = (text: string): Result<TireSize> => {
  const shown = text.length > 40 ? `${text.slice(0, 40)}…` : text;
  if (text.length > 120) return refuse(shown, 'it is too long');
  const size = tidy(text);
  if (size === '') return refuse(shown, 'nothing was written');
  const flotation = FLOTATION.exec(size);
  if (flotation !== null) return readFlotation(flotation, shown);
  const metric = METRIC.exec(size);
  if (metric !== null) return readMetric(metric, shown);
  if (HEIGHTLESS.test(size)) {
    return refuse(
      shown,
      'a size of this old kind does not say how tall the tire is, so its circumference must be given',
    );
  }
  return refuse(shown, understoodPart(size));
};

/** How far a metric size could be followed before it broke off. */
const understoodPart = (size: string): string => {
  const match = /^(?:P|LT|ST|T|HL)?(\d{3})(?:[ /.-]?(\d{2,3})(?!\d))?(.*)$/u.exec(size);
  if (match === null) return '';
  const [, width = '', ratio, rest = ''] = match;
  const read =
    ratio === undefined ? `the width ${width} mm was` : `the width ${width} mm and the ratio ${ratio} % were`;
  return rest === '' ? `${read} understood, but the rim is missing` : `${read} understood, but not "${rest}"`;
};
