/** What the user says about a file that does not say it itself. */

/** Units an acceleration column may be said to be in. */
export const GIVEN_UNITS = ['g', 'mg', 'm/s²', 'mm/s²'] as const;
export type GivenUnit = (typeof GIVEN_UNITS)[number];

export interface Given {
  /** Rate of a file that has neither time stamps nor a stated rate, Hz. */
  readonly samplingRateHz?: number;
  /** Unit of columns that state none and show no gravity to tell it by; overrules the header. */
  readonly accelerationUnit?: GivenUnit;
}

/** What is given about a file, out of an object that holds more. */
export const givenOf = ({ samplingRateHz, accelerationUnit }: Given): Given => ({
  ...(samplingRateHz === undefined ? {} : { samplingRateHz }),
  ...(accelerationUnit === undefined ? {} : { accelerationUnit }),
});

/** The unit in a text, 'm/s2' and 'm/s^2' for 'm/s²' too; null where it is none of them. */
export const givenUnitOf = (text: string): GivenUnit | null => {
  const tidy = text.trim().toLowerCase().replace(/\^?2$/u, '²');
  return GIVEN_UNITS.find((unit) => unit === tidy) ?? null;
};
