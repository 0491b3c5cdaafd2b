/** What speaks for a cause, against it, and what is not known, in sentences. */
import type { CaseContext, FindingBasis } from '../evidence/case.ts';
import type { Cause } from '../causes/cause.ts';
import { checkOf, checkWeights, outcomeLikelihood, wrongProbability } from '../checks/all-checks.ts';
import { capitalized, uncapitalized } from '../../words.ts';
import type { CheckOutcome } from '../evidence/check-outcome.ts';
import { missingText } from '../evidence/clue.ts';
import { isRepairedInVain } from '../evidence/repaired.ts';
import type { SignEvidence } from '../evidence/read-signs.ts';
import { WORK_WORDS, workRatios } from '../evidence/work-done.ts';
import type { CauseWeights, CheckId } from '../weights.ts';
import { CAUSE_WEIGHTS, LEAST_RATIO_TOLD } from '../weights.ts';

/** Checks named as missing: the most telling ones only. */
const MISSING_CHECKS = 3;

export interface CauseSentences {
  readonly for: readonly string[];
  readonly against: readonly string[];
  readonly missing: readonly string[];
}

/** Sorts everything known and not known about a cause into the three states. */
export function sentencesOf(
  cause: Cause,
  basis: FindingBasis,
  context: CaseContext,
  signs: SignEvidence,
  outcomes: readonly CheckOutcome[],
  checks: readonly CheckId[],
): CauseSentences {
  const sides = { for: [] as string[], against: [] as string[] };
  const tell = (logRatio: number, text: string, reason: string | undefined): void => {
    if (Math.abs(logRatio) < Math.log(LEAST_RATIO_TOLD)) return;
    sides[logRatio > 0 ? 'for' : 'against'].push(
      `${capitalized(text).replace(/\.$/, '')}${reason ? `; ${reason}` : ''}.`,
    );
  };
  const weights: CauseWeights = CAUSE_WEIGHTS[cause.id];

  for (const { checkId, wrongness, text } of outcomes) {
    tell(outcomeLogRatio(checkId, cause.id, basis, wrongness), text, cause.reasons?.[checkId]);
  }
  for (const { work, ratio } of workRatios(weights, context.work)) {
    if (work === null) tell(Math.log(ratio), 'No work is on record that would have brought this', undefined);
    else tell(Math.log(ratio), WORK_WORDS[work], cause.reasons?.[work]);
  }
  for (const { sign, text, strength } of signs.seen) {
    tell(strength * Math.log(weights.signs?.[sign] ?? 1), text, cause.reasons?.[sign]);
  }

  if (isRepairedInVain(cause.id, basis, context)) sides.against.push('It was put right, and the shake stayed.');

  const unread = signs.unread.filter((clue) => clue.signs.some((sign) => weights.signs?.[sign] !== undefined));
  const done = new Set(outcomes.map(({ checkId }) => checkId));
  const open = checks.filter((id) => !done.has(id)).slice(0, MISSING_CHECKS);
  const missing = [
    ...open.map((id) => `Not checked: ${uncapitalized(checkOf(id)!.title)}.`),
    ...unread.map((clue) => missingText(clue, basis)),
  ];
  return { ...sides, missing };
}

/** Log of how much likelier this outcome is under the cause than with a healthy part of the same kind. */
function outcomeLogRatio(checkId: CheckId, causeId: string, basis: FindingBasis, wrongness: number): number {
  const { parts, rest } = checkWeights(checkId);
  const healthy = outcomeLikelihood(wrongness, parts?.[basis.part] ?? rest);
  return Math.log(outcomeLikelihood(wrongness, wrongProbability(checkId, causeId, basis.part)) / healthy);
}
