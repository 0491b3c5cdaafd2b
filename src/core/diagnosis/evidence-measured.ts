/** Measurements, as entered, turned into outcomes of checks. */
import type { Measurement } from '../driveline/measurement.ts';
import type { FindingBasis } from './case.ts';
import { checkOf } from './checks.ts';
import type { CheckOutcome } from './evidence-checks.ts';
import type { CheckId } from './weights.ts';
import { OUTCOME_TRUST } from './weights.ts';

/** One outcome a check: where several readings belong to one check the worst of them decides. */
export function outcomesOfMeasurements(basis: FindingBasis, measurements: readonly Measurement[]): CheckOutcome[] {
  const worst = new Map<string, CheckOutcome>();
  for (const measurement of measurements) {
    for (const outcome of outcomesOf(basis, measurement)) {
      const known = worst.get(outcome.checkId);
      if (!known || outcome.wrongness > known.wrongness) worst.set(outcome.checkId, outcome);
    }
  }
  return [...worst.values()];
}

function outcomesOf(_basis: FindingBasis, measurement: Measurement): CheckOutcome[] {
  if (measurement.kind !== 'observation') return [];
  const check = checkOf(measurement.checkId);
  if (!check) return [];
  const wrong = measurement.outcome === 'wrong';
  const wrongness = wrong ? OUTCOME_TRUST : 1 - OUTCOME_TRUST;
  return [{ checkId: check.id, wrongness, text: wrong ? check.wrong : check.fine, origin: 'measured' }];
}

/** Ids of the checks a measurement answers. */
export function checksOfMeasurement(measurement: Measurement): CheckId[] {
  if (measurement.kind !== 'observation') return [];
  const check = checkOf(measurement.checkId);
  return check ? [check.id] : [];
}
