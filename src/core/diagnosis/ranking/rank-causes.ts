/**
 * Ranks the causes of a finding by Bayes: prior × likelihood ratios of the signs and of the work done × likelihood of
 * every check's outcome, then normalised over the causes that can be, 'something else' included.
 */
import type { CaseContext, FindingBasis } from '../evidence/case.ts';
import { ALL_CAUSES } from '../causes/all-causes.ts';
import type { Cause } from '../causes/cause.ts';
import { checksFor, outcomeLikelihood, wrongProbability } from '../checks/all-checks.ts';
import { sentencesOf } from './cause-sentences.ts';
import type { CheckOutcome } from '../evidence/check-outcome.ts';
import { isRepairedInVain } from '../evidence/repaired.ts';
import { readOutcomes } from '../evidence/read-outcomes.ts';
import type { SignEvidence } from '../evidence/read-signs.ts';
import { readSigns } from '../evidence/read-signs.ts';
import { workRatio } from '../evidence/work-done.ts';
import type { RankedCause } from './ranked.ts';
import type { WorkDone } from '../../job/job.ts';
import type { CauseWeights, CheckId } from '../weights.ts';
import { CAUSE_WEIGHTS, OUTCOME_TRUST, SOMETHING_ELSE_PRIOR } from '../weights.ts';

const SOMETHING_ELSE = 'something-else';

/**
 * @param basis the finding: part and order, with what the recording shows about it
 * @param given vehicle, work done, measurements and runs
 * @returns causes most likely first; probabilities add up to 1. `probabilityBefore` leaves the measurements out and is
 *   there only where some were entered. Ties stand in the order of their ids.
 */
export function rankCauses(basis: FindingBasis, given: CaseContext): RankedCause[] {
  const outcomes = readOutcomes(basis, given);
  const context = { ...given, work: workThatHolds(given.work, outcomes) };
  const causes = ALL_CAUSES.filter((cause) => cause.applies(basis, context));
  const signs = readSigns(basis, context);
  const fromRuns = outcomes.filter(({ origin }) => origin === 'runs');

  const weigh = (used: readonly CheckOutcome[]): number[] =>
    normalised([
      ...causes.map((cause) => logWeight(cause, basis, context, signs, used)),
      Math.log(SOMETHING_ELSE_PRIOR) + logLikelihood(SOMETHING_ELSE, basis, used),
    ]);
  const after = weigh(outcomes);
  const before = context.measurements.length > 0 ? weigh(fromRuns) : null;

  const ranked = [...causes, null].map((cause, index): RankedCause => {
    const told = cause ? describe(cause, basis, context, signs, outcomes) : NOTHING_KNOWN;
    const probability = { probability: after[index]! };
    return before ? { ...told, ...probability, probabilityBefore: before[index]! } : { ...told, ...probability };
  });
  return ranked.sort((a, b) => b.probability - a.probability || (a.id < b.id ? -1 : 1));
}

/** Work that a measurement of its own has shown to be undone says nothing any more: wheels that are out of balance. */
const SHOWN_UNDONE: Readonly<Partial<Record<WorkDone, CheckId>>> = { 'wheels-balanced': 'wheel-balancer' };

const workThatHolds = (work: readonly WorkDone[], outcomes: readonly CheckOutcome[]): readonly WorkDone[] =>
  work.filter((done) => {
    const undoneBy = SHOWN_UNDONE[done];
    return !outcomes.some(({ checkId, wrongness }) => checkId === undoneBy && wrongness > 0.5);
  });

const NOTHING_KNOWN: Omit<RankedCause, 'probability'> = {
  id: SOMETHING_ELSE,
  title: 'Something else',
  for: [],
  against: [],
  missing: [],
  repair: '',
  checks: [],
};

function describe(
  cause: Cause,
  basis: FindingBasis,
  context: CaseContext,
  signs: SignEvidence,
  outcomes: readonly CheckOutcome[],
): Omit<RankedCause, 'probability'> {
  const checks = checksFor(cause.id, basis.part, context.vehicle);
  const sentences = sentencesOf(cause, basis, context, signs, outcomes, checks);
  return { id: cause.id, title: cause.title, ...sentences, repair: cause.repair, checks };
}

function logWeight(
  cause: Cause,
  basis: FindingBasis,
  context: CaseContext,
  signs: SignEvidence,
  outcomes: readonly CheckOutcome[],
): number {
  const weights: CauseWeights = CAUSE_WEIGHTS[cause.id];
  let sum = Math.log(weights.prior);
  for (const { sign, strength } of signs.seen) sum += strength * Math.log(weights.signs?.[sign] ?? 1);
  sum += Math.log(workRatio(weights, context.work));
  if (isRepairedInVain(cause.id, basis, context)) sum += Math.log(1 - OUTCOME_TRUST);
  return sum + logLikelihood(cause.id, basis, outcomes);
}

/** Log likelihood of the outcomes under a cause. An unsure outcome counts by how likely it is to be the true one. */
function logLikelihood(causeId: string, basis: FindingBasis, outcomes: readonly CheckOutcome[]): number {
  return outcomes.reduce((sum, { checkId, wrongness }) => {
    return sum + Math.log(outcomeLikelihood(wrongness, wrongProbability(checkId, causeId, basis.part)));
  }, 0);
}

/** Probabilities from log weights. */
function normalised(logWeights: readonly number[]): number[] {
  const greatest = Math.max(...logWeights);
  const weights = logWeights.map((value) => Math.exp(value - greatest));
  const total = weights.reduce((a, b) => a + b, 0);
  return weights.map((value) => value / total);
}
