/** Evidence that the causes of a finding share, told once above them instead of under each. */
import { capitalized } from '../words.ts';
import type { CauseReport } from './report.ts';

type Told = Pick<CauseReport, 'for' | 'against' | 'missing'>;
const SIDES = ['for', 'against', 'missing'] as const;

/** A remark that stands under so many causes is told above them. */
const COMMON_FROM = 3;

/** 'The shaft was out; its fasteners were off.' in what was seen and what that means for the cause. */
const parted = (sentence: string): readonly [head: string, reason: string] => {
  const at = [...sentence.matchAll(/; /g)].map(({ index }) => index).findLast((place) => isOutside(sentence, place));
  return at === undefined ? [sentence, ''] : [`${sentence.slice(0, at)}.`, `${capitalized(sentence.slice(at + 2))}`];
};

/** Not within brackets. */
const isOutside = (text: string, place: number): boolean =>
  text.slice(0, place).split('(').length === text.slice(0, place).split(')').length;

/**
 * @param causes those that are told with their evidence
 * @returns what at least three of them share, as sentences, and the causes with only what is their own; what is shared
 *   but means something else to each leaves its meaning with the cause
 */
export function commonEvidence<Cause extends Told>(
  causes: readonly Cause[],
): { readonly common: Told; readonly causes: readonly Cause[] } {
  const counts = new Map<string, number>();
  const keyOf = (side: string, head: string): string => `${side} ${head}`;
  for (const cause of causes)
    for (const side of SIDES)
      for (const head of new Set(cause[side].map((sentence) => parted(sentence)[0])))
        counts.set(keyOf(side, head), (counts.get(keyOf(side, head)) ?? 0) + 1);
  const isCommon = (side: string, head: string): boolean => (counts.get(keyOf(side, head)) ?? 0) >= COMMON_FROM;
  const common = (side: (typeof SIDES)[number]): string[] =>
    [...new Set(causes.flatMap((cause) => cause[side].map((sentence) => parted(sentence)[0])))].filter((head) =>
      isCommon(side, head),
    );
  const own = (side: (typeof SIDES)[number], sentences: readonly string[]): string[] => [
    ...new Set(
      sentences.flatMap((sentence) => {
        const [head, reason] = parted(sentence);
        return isCommon(side, head) ? (reason === '' ? [] : [reason]) : [sentence];
      }),
    ),
  ];
  return {
    common: { for: common('for'), against: common('against'), missing: common('missing') },
    causes: causes.map((cause) => ({
      ...cause,
      for: own('for', cause.for),
      against: own('against', cause.against),
      missing: own('missing', cause.missing),
    })),
  };
}
