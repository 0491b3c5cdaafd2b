/**
 * Outcomes of checks as evidence. A check made by hand, a measurement judged against its limit and a pair of runs are
 * one thing here: how surely the check found something wrong. What that says of each cause stands in weights.ts.
 */
import type { RunCondition } from '../../vehicle/vehicle.ts';
import type { CaseContext, FindingBasis } from './case.ts';
import type { CheckOutcome } from './check-outcome.ts';
import { checkOf } from '../checks/all-checks.ts';
import { outcomesOfMeasurements } from './measured-outcomes.ts';
import { isToMend } from './to-mend.ts';
import type { CheckId } from '../weights.ts';
import { OUTCOME_TRUST, STRONGER_BLUR, STRONGER_RATIO } from '../weights.ts';

/** Everything the case holds that is the outcome of a check. */
export const readOutcomes = (basis: FindingBasis, context: CaseContext): CheckOutcome[] => [
  ...outcomesOfMeasurements(basis, context).map((one) =>
    context.unmoved === basis.label && isToMend(one) ? putRightSince(one) : one,
  ),
  ...outcomesOfRuns(basis),
];

/** A fault that was put right and left the shake as it was is found fine now: the cause is another. */
const putRightSince = (outcome: CheckOutcome): CheckOutcome => ({
  ...outcome,
  isFault: false,
  wrongness: 1 - OUTCOME_TRUST,
  text: `${outcome.text.replace(/\.$/, '')}; put right since, and the shake stayed.`,
});

type Load = NonNullable<RunCondition['load']>;

/** Load runs that answer a check: wrong where `above` is clearly stronger than `below`. */
const LOAD_PAIRS: readonly { id: CheckId; above: readonly Load[]; below: readonly Load[] }[] = [
  { id: 'run-pull-coast', above: ['pull'], below: ['coast'] },
  { id: 'run-neutral', above: ['cruise', 'pull'], below: ['neutral'] },
  { id: 'run-braking', above: ['brake'], below: ['cruise', 'coast'] },
];

function outcomesOfRuns({ levelByLoadMps2, part }: FindingBasis): CheckOutcome[] {
  const level = (loads: readonly Load[]): number | undefined =>
    loads.map((load) => levelByLoadMps2[load]).find((value) => value !== undefined);
  const outcomes: CheckOutcome[] = [];
  for (const { id, above, below } of LOAD_PAIRS) {
    const [high, low] = [level(above), level(below)];
    if (high === undefined || low === undefined || (high <= 0 && low <= 0)) continue;
    const ratio = Math.max(high, 1e-9) / Math.max(low, 1e-9);
    outcomes.push(
      outcome(id, believed(logistic(Math.log(ratio / STRONGER_RATIO) / STRONGER_BLUR)), 'runs', ratioText(ratio)),
    );
  }
  const standing = levelByLoadMps2.standing;
  const driving = level(['cruise', 'pull', 'coast']);
  if ((part === 'engine' || part === 'accessory') && standing !== undefined && driving !== undefined && driving > 0) {
    // Half of the driving level is still the same shake: an engine at rest against its mounts is less loaded.
    const wrongness = believed(logistic(Math.log(standing / driving / 0.5) / STRONGER_BLUR));
    outcomes.push(outcome('run-standing', wrongness, 'runs', ratioText(standing / driving)));
  }
  return outcomes;
}

const ratioText = (ratio: number): string => ` (level ratio ${ratio >= 10 ? 'above 10' : ratio.toFixed(2)})`;
const logistic = (x: number): number => 1 / (1 + Math.exp(-x));
const believed = (wrongness: number): number => Math.min(OUTCOME_TRUST, Math.max(1 - OUTCOME_TRUST, wrongness));

function outcome(checkId: CheckId, wrongness: number, origin: CheckOutcome['origin'], detail: string): CheckOutcome {
  const check = checkOf(checkId)!;
  const sentence = wrongness >= 0.5 ? check.wrong : check.fine;
  return { checkId, wrongness, isFault: false, origin, text: `${sentence.replace(/\.$/, '')}${detail}.` };
}
