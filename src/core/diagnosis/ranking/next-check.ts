/** The next check: the one expected to remove most doubt for its minutes, over measurements, swaps, inspections and runs. */
import type { CaseContext } from '../evidence/case.ts';
import { cautionTexts } from '../../cautions.ts';
import type { Check } from '../checks/check.ts';
import { checkOf, checksOn, checkWeights, outcomeLikelihood, wrongProbability } from '../checks/all-checks.ts';
import { checksDone } from './checks-done.ts';
import type { Doubt, Possibility } from './doubts.ts';
import { doubtsOf, weightOf } from './doubts.ts';
import { expectedBits } from './entropy.ts';
import type { ProposedCheck, RankedFinding } from './ranked.ts';
import { ACCESS_MINUTES, OUTCOME_TRUST, type CheckId } from '../weights.ts';

/** Proposals that would remove less than this, bits, are not worth their minutes. */
const LEAST_BITS = 0.01;
const MOST_PROPOSED = 12;
/** A possibility is named as told apart when a bad outcome would raise it by at least this factor. */
const TOLD_APART = 1.5;
const MOST_NAMED = 6;

/**
 * @param findings with their causes ranked; findings that share a frequency count as one doubt about one peak
 * @param context says which checks and runs were made already; those are not proposed again
 * @returns first what goes before all others at the finding that shakes most; then checks by expected bits a minute,
 *   best first, each after what it asks to be done before; ties in the order of their ids. Taking the shaft out is
 *   counted once. Bits of a lesser finding count in proportion to its felt level × probability, so that the finding that
 *   shakes most leads.
 */
export function chooseChecks(findings: readonly RankedFinding[], context: CaseContext): ProposedCheck[] {
  const doubts = doubtsOf(findings);
  const done = checksDone(context);
  const leading = findings.reduce<RankedFinding | null>((a, b) => (a && weightOf(a) >= weightOf(b) ? a : b), null);
  const open = checksOn(context.vehicle).filter(({ id }) => !done.has(id));
  const goesFirst = ({ first }: Check): boolean => leading !== null && (first?.(leading, context.work) ?? false);
  const first = open.filter(goesFirst).map((check) => propose(check, doubts));
  const proposed = open
    .filter((check) => !goesFirst(check))
    .map((check) => propose(check, doubts))
    .filter(({ expectedBits: bits }) => bits >= LEAST_BITS);
  return [...first, ...inOrder(byGainAMinute(proposed))].slice(0, MOST_PROPOSED);
}

/** Once the shaft is out, or a joint apart, whatever needs that too costs so much less. */
function byGainAMinute(proposed: readonly ProposedCheck[]): ProposedCheck[] {
  const left = [...proposed].sort((a, b) => (a.id < b.id ? -1 : 1));
  const ordered: ProposedCheck[] = [];
  let reachedMinutes = 0;
  const accessMinutes = ({ id }: ProposedCheck): number => {
    const access = checkOf(id) && checkWeights(id as CheckId).access;
    return access === undefined ? 0 : ACCESS_MINUTES[access];
  };
  const gain = (check: ProposedCheck): number =>
    check.expectedBits / (check.minutes - Math.min(reachedMinutes, accessMinutes(check)));
  while (left.length > 0) {
    const best = left.reduce((a, b) => (gain(b) > gain(a) ? b : a));
    left.splice(left.indexOf(best), 1);
    ordered.push(best);
    reachedMinutes = Math.max(reachedMinutes, accessMinutes(best));
  }
  return ordered;
}

/** What another check asks to be done first goes before it. */
function inOrder(proposed: readonly ProposedCheck[]): ProposedCheck[] {
  const before = (check: ProposedCheck): ProposedCheck[] =>
    proposed.filter(({ id }) => id === checkOf(check.id)?.after);
  return [...new Set(proposed.flatMap((check) => [...before(check), check]))];
}

function propose(check: Check, doubts: readonly Doubt[]): ProposedCheck {
  let bits = 0;
  const apart = new Map<string, number>();
  for (const { possibilities, importance } of doubts) {
    const wrong = possibilities.map(({ causeId, part, partName }) =>
      outcomeLikelihood(OUTCOME_TRUST, wrongProbability(check.id, causeId, part, partName)),
    );
    const probabilities = possibilities.map(({ probability }) => probability);
    const gain = importance * expectedBits(probabilities, wrong);
    if (gain < LEAST_BITS / 2) continue;
    bits += gain;
    for (const [name, probability] of movedApart(possibilities, wrong)) {
      apart.set(name, Math.max(apart.get(name) ?? 0, probability));
    }
  }
  const { id, title, kind, how, limit, fine, wrong, cautions } = check;
  const named = [...apart].sort((a, b) => b[1] - a[1] || (a[0] < b[0] ? -1 : 1)).slice(0, MOST_NAMED);
  return {
    id,
    title,
    kind,
    minutes: checkWeights(id).minutes,
    tellsApart: named.map(([name]) => name),
    expectedBits: bits,
    how,
    limit,
    outcomes: { fine, wrong },
    cautions: cautionTexts(cautions),
  };
}

/** What a bad outcome would raise clearly, and beside it the likeliest of what it would not. */
function movedApart(possibilities: readonly Possibility[], wrong: readonly number[]): [string, number][] {
  const chance = possibilities.reduce((sum, { probability }, index) => sum + probability * wrong[index]!, 0);
  const named = possibilities.map((one, index) => ({ ...one, raised: wrong[index]! >= TOLD_APART * chance }));
  const raised = named.filter((one) => one.raised);
  const rest = named.filter((one) => !one.raised);
  const other = rest.reduce<Possibility | null>((a, b) => (a && a.probability >= b.probability ? a : b), null);
  return [...raised, ...(other ? [other] : [])].map(({ name, probability }) => [name, probability]);
}
