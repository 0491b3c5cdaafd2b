/**
 * What is to be put right before anything else is looked for: faults that measurements have found. A reading outside its
 * limit is mended first, then the vehicle is recorded again: the proof settles more than any further check.
 */
import type { CaseContext, FindingBasis } from '../evidence/case.ts';
import type { CheckOutcome } from '../evidence/check-outcome.ts';
import { cautionTexts } from '../../cautions.ts';
import { checkOf, wrongProbability } from '../checks/all-checks.ts';
import { readOutcomes } from '../evidence/read-outcomes.ts';
import { isToMend } from '../evidence/to-mend.ts';
import { weightOf } from './doubts.ts';
import { ringRemedy } from '../../driveline/rings/ring-remedy.ts';
import { capitalized, uncapitalized } from '../../words.ts';
import type { CheckId } from '../weights.ts';
import type { RankedCause, RankedFinding, Repair } from './ranked.ts';

/** A cause is what a check has found where it fails the check more likely than not. */
const FOUND_BY = 0.5;
/** What shakes far less than the rest (felt level × probability) is not mended first. */
const LEAST_IMPORTANCE = 0.25;

/**
 * @param bases bases[i] belongs to findings[i]
 * @returns one repair a cause, those of what shakes most first; empty where every measurement is inside its limit
 */
export function faultsToPutRight(
  findings: readonly RankedFinding[],
  bases: readonly FindingBasis[],
  context: CaseContext,
): Repair[] {
  const greatest = Math.max(...findings.map(weightOf), 0);
  const repairs = findings.flatMap((finding, i): Repair[] => {
    const basis = bases[i];
    if (!basis || weightOf(finding) < LEAST_IMPORTANCE * greatest) return [];
    const found = readOutcomes(basis, context).filter(isToMend);
    const culprits = found.map((outcome) => ({ outcome, cause: culpritOf(outcome.checkId, finding) }));
    return finding.causes.flatMap((cause) => {
      const own = culprits.filter((one) => one.cause === cause).map(({ outcome }) => outcome);
      return own.length === 0 ? [] : [repairOf(cause, finding, own, context)];
    });
  });
  return repairs.filter(({ causeId }, i) => repairs.findIndex((other) => other.causeId === causeId) === i);
}

/** Of the causes the check finds, the likeliest by now; null where it finds none that this shake can have. */
function culpritOf(checkId: CheckId, { causes, part }: RankedFinding): RankedCause | null {
  const wrong = ({ id }: RankedCause): number => wrongProbability(checkId, id, part);
  const able = causes.filter((cause) => cause.repair !== '' && wrong(cause) >= FOUND_BY);
  const likelihood = (cause: RankedCause): number => cause.probability * wrong(cause);
  return able.reduce<RankedCause | null>((a, b) => (a && likelihood(a) >= likelihood(b) ? a : b), null);
}

/** Checks that ring measurements answer. */
const OF_RINGS: readonly CheckId[] = ['ring-thickness', 'ring-fit'];

/** Which rings do it, where rings were measured and are what was found wrong. */
function ringsToFit(found: readonly CheckOutcome[], { measurements, limits }: CaseContext): string[] {
  if (!found.some(({ checkId }) => OF_RINGS.includes(checkId))) return [];
  return measurements.flatMap((one) => {
    const remedy = one.kind === 'rings' ? ringRemedy(one.axes, limits) : null;
    return one.kind !== 'rings' || remedy === null ? [] : [`${capitalized(one.joint)} joint: ${uncapitalized(remedy)}`];
  });
}

function repairOf(
  cause: RankedCause,
  { label }: RankedFinding,
  found: readonly CheckOutcome[],
  context: CaseContext,
): Repair {
  const cautions = found.flatMap(({ checkId }) => checkOf(checkId)?.cautions ?? []);
  return {
    causeId: cause.id,
    title: `Put right first: ${uncapitalized(cause.title)}`,
    label,
    found: found.map(({ text }) => text),
    repair: [cause.repair, ...ringsToFit(found, context)].join(' '),
    prove: `Then record again at the same speed, gear and load, and compare before and after. If ${label} has gone, that was it; if it has not, go on with the checks.`,
    cautions: cautionTexts([...cautions, 'road-test']),
  };
}
