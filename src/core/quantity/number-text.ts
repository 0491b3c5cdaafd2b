/** The number at the start of a typed quantity, with its possible readings where comma or dot leave it open. */

export interface NumberReading {
  readonly value: number;
  /** True where this is how a program would read the digits (dot as decimal sign), so that it needs no asking. */
  readonly plain: boolean;
}

/** Longest text that is looked at; nothing a person types as one number is longer. */
const LONGEST = 200;

const digitsOf = (text: string): string => text.replaceAll(/[\s'’_]/gu, '');

const decimalOf = (whole: string, fraction: string, exponent: string): number =>
  Number(`${whole === '' ? '0' : whole}.${fraction === '' ? '0' : fraction}${exponent}`);

/** Readings of digits that hold commas or dots, the likelier first. Empty where they make no number. */
const readingsOfDigits = (body: string, exponent: string): NumberReading[] => {
  const commas = body.split(',').length - 1;
  const dots = body.split('.').length - 1;
  if (commas === 0 && dots === 0) return [{ value: Number(body + exponent), plain: true }];

  if (commas > 0 && dots > 0) {
    // Both signs: the last one is the decimal sign, and the other parts thousands.
    const decimalSign = body.lastIndexOf(',') > body.lastIndexOf('.') ? ',' : '.';
    const thousandsSign = decimalSign === ',' ? '.' : ',';
    const [whole = '', fraction = '', more] = body.split(decimalSign);
    const grouped = whole.split(thousandsSign);
    if (more !== undefined || fraction.includes(thousandsSign) || !areThousands(grouped)) return [];
    return [{ value: decimalOf(grouped.join(''), fraction, exponent), plain: true }];
  }

  const sign = commas > 0 ? ',' : '.';
  const groups = body.split(sign);
  const [whole = '', fraction = ''] = groups;
  if (groups.length > 2) {
    return areThousands(groups) ? [{ value: Number(groups.join('') + exponent), plain: true }] : [];
  }
  const asDecimal = decimalOf(whole, fraction, exponent);
  if (!areThousands(groups)) return [{ value: asDecimal, plain: true }];
  return [
    { value: asDecimal, plain: sign === '.' },
    { value: Number(groups.join('') + exponent), plain: false },
  ];
};

const areThousands = (groups: readonly string[]): boolean =>
  groups.every((group, index) => (index === 0 ? /^[1-9]\d{0,2}$/u.test(group) : /^\d{3}$/u.test(group)));

const GROUPED = String.raw`\d{1,3}(?:[\s'’_]\d{3})+(?!\d)(?:[.,]\d+)?`;
const EXPONENT = String.raw`e[+-]?\d{1,3}(?![\d.,])`;
const NUMBER = new RegExp(String.raw`^\s*([+\-−]?)\s*(${GROUPED}|\d[\d.,]*|[.,]\d+)(${EXPONENT})?`, 'iu');
const FRACTION = /^\s*([+\-−]?)\s*(?:(\d{1,6})[\s-]+)?(\d{1,4})\s*[/⁄]\s*(\d{1,4})(?![\d.,])/u;

/**
 * Reads the number a text begins with.
 *
 * @returns Its possible readings (none, one, or two where a sign may be decimal or part thousands; the decimal one
 *   first), all finite, and the text after it. Fractions are read ("92 7/8").
 */
export const readingsOfNumber = (
  text: string,
): { readonly readings: readonly NumberReading[]; readonly rest: string } => {
  const nothing = { readings: [], rest: '' };
  if (text.length > LONGEST) return nothing;
  const signOf = (mark: string | undefined): number => (mark === '-' || mark === '−' ? -1 : 1);

  const fraction = FRACTION.exec(text);
  if (fraction !== null) {
    const [all, mark, whole = '0', over = '', under = ''] = fraction;
    const value = signOf(mark) * (Number(whole) + Number(over) / Number(under)) + 0;
    return Number.isFinite(value) ? { readings: [{ value, plain: true }], rest: text.slice(all.length) } : nothing;
  }
  const match = NUMBER.exec(text);
  if (match === null) return nothing;
  const [all, mark, body = '', exponent = ''] = match;
  const readings = readingsOfDigits(digitsOf(body), exponent)
    .map((reading) => ({ ...reading, value: reading.value * signOf(mark) + 0 }))
    .filter((reading) => Number.isFinite(reading.value));
  return { readings, rest: text.slice(all.length) };
};
