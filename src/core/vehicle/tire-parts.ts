/** What metric and flotation tire sizes have in common: construction letters, limits, and how a refusal is worded. */
import { failure } from '../note.ts';
import type { Note } from '../note.ts';

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

const EXAMPLE = 'Write it as on the sidewall, like 265/70R17, LT245/75R16 or 33x12.50R15, or give the circumference.';

/** Speed letter inside the size (185/70HR14), radial letters, or a bias letter: three groups. */
export const CONSTRUCTION = '(?:([NPQSTUHVZWY])?(RF|R)|([DB]))';

export const info = (code: string, text: string): Note => ({ code, text, severity: 'info' });

export const refuse = (shown: string, understood: string) =>
  failure({
    code: 'tire-size',
    message: `"${shown}" is not a tire size that could be read${understood === '' ? '' : `: ${understood}`}.`,
    remedy: EXAMPLE,
  });

/** Where a field lies outside what tires are made in, the sentence that says so; '' where all is well. */
export const outside = (fields: readonly (readonly [string, number, number, number])[]): string => {
  const bad = fields.find(([, value, least, most]) => !(value >= least && value <= most));
  if (bad === undefined) return '';
  const [name, value, least, most] = bad;
  return `${name} was understood as ${value}, outside ${least} to ${most}`;
};

export const letterOf = (construction: TireConstruction): string =>
  construction === 'radial' ? 'R' : construction === 'diagonal' ? 'D' : 'B';

/** Construction by its letters; without one a temporary spare is taken as diagonal, any other tire as radial. */
export const constructionOf = (
  radial: string | undefined,
  bias: string | undefined,
  isSpare = false,
): { readonly construction: TireConstruction; readonly notes: readonly Note[] } => {
  if (radial !== undefined) return { construction: 'radial', notes: [] };
  if (bias !== undefined) return { construction: bias === 'D' ? 'diagonal' : 'bias-belted', notes: [] };
  const words = isSpare ? 'the spare is taken as diagonal (D)' : 'the tire is taken as radial (R)';
  const note = info('tire-construction-assumed', `No construction letter: ${words}.`);
  return { construction: isSpare ? 'diagonal' : 'radial', notes: [note] };
};
