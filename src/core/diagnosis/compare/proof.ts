/** What the runs after a repair say of the faults that the runs before it showed. */
import type { Finding } from '../findings/finding.ts';
import { changeOfFinding } from './compare.ts';
import type { Comparison, ComparisonVerdict } from './comparison.ts';

export interface Proof {
  readonly verdict: ComparisonVerdict;
  /** As the comparison tells it: 'Driveshaft 2× is gone.' */
  readonly sentence: string;
  readonly why: string;
  /** Label of what was complained of; null where nothing was felt. */
  readonly complaint: string | null;
  /** The same label where most of it surely stayed: whatever was repaired was not its cause. */
  readonly unmoved: string | null;
  /** Labels of the findings that are done with. */
  readonly gone: readonly string[];
}

/** Half the amplitude: what fell by less than this at the most was not caused by what was mended. Judgment. */
const STAYED_ABOVE_DB = -6;

/** @param found what the runs before the repair showed, most important first */
export function proofOf({ verdict, sentence, why, pairs }: Comparison, found: readonly Finding[]): Proof {
  const [complaint] = found;
  const isGone = (finding: Finding): boolean => {
    const change = changeOfFinding(finding, pairs);
    if (change?.verdict === 'gone' || change?.verdict === 'not-seen') return true;
    // With the complaint proved there is no looking for it any more in what the road covers.
    return verdict === 'gone' && finding.perceived === 'buried';
  };
  const gone = found.filter(isGone);
  const alsoGone = found.filter((finding) => gone.some((other) => isSamePeak(finding, other)));
  const label = complaint?.label ?? null;
  const lowDb = changeOfFinding(complaint ?? null, pairs)?.lowDb ?? null;
  const stayed = verdict === 'unchanged' && lowDb !== null && lowDb > STAYED_ABOVE_DB;
  return {
    verdict,
    sentence,
    why,
    complaint: label,
    unmoved: stayed ? label : null,
    gone: alsoGone.map((one) => one.label),
  };
}

/** One peak under two names: it can be gone only as a whole. */
const isSamePeak = (one: Finding, other: Finding): boolean =>
  one.inference === other.inference && one.trueHz === other.trueHz;

/** The comparison leaves open what the repair did. */
export const isOpen = ({ verdict, unmoved }: Pick<Proof, 'verdict' | 'unmoved'>): boolean =>
  verdict === 'cannot-tell' || verdict === 'nothing-to-compare' || (verdict === 'unchanged' && unmoved === null);
