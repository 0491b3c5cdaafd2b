/** What a check takes and how much it is expected to help, in words; the number of bits behind it is in the JSON. */
import type { CheckReport } from './report.ts';

/** A bit is the doubt between two causes that are equally likely. Judgment, no source. */
const MUCH_BITS = 0.4;
const SOME_BITS = 0.15;
/** Less than this is not worth telling. */
const LEAST_BITS = 0.05;

/** 'about 8 minutes, expected to settle much of the doubt'. */
export function effortText({ minutes, expectedBits }: Pick<CheckReport, 'minutes' | 'expectedBits'>): string {
  const time = `about ${minutes} minutes`;
  if (expectedBits < LEAST_BITS) return time;
  const share = expectedBits >= MUCH_BITS ? 'much' : expectedBits >= SOME_BITS ? 'some' : 'a little';
  return `${time}, expected to settle ${share} of the doubt`;
}
