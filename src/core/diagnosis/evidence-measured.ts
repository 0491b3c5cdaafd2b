/** Measurements, as entered, turned into outcomes of checks. */
import type { Measurement, ShaftPlace } from '../driveline/measurement.ts';
import { assertNever } from '../note.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { FindingBasis } from './case.ts';
import { isFrontShaft } from './causes/where.ts';
import { checkOf } from './checks.ts';
import type { CheckOutcome } from './evidence-checks.ts';
import type { MeasuredFact } from './measured-fact.ts';
import { forceText, wrongnessOf } from './measured-fact.ts';
import {
  angleFacts,
  doubleCardanFacts,
  endPlayFacts,
  playFacts,
  rideHeightFacts,
  ringFacts,
} from './measured-joint.ts';
import {
  amplitudeTrialFacts,
  phasorTrialFacts,
  reindexFacts,
  runoutFacts,
  wheelUnbalanceFacts,
} from './measured-runout.ts';
import type { ShaftAtSpeed } from './measured-shaft.ts';
import { shaftAtSpeed } from './measured-shaft.ts';
import type { CheckId } from './weights.ts';
import { OUTCOME_TRUST } from './weights.ts';

/** One outcome a check: of several readings that belong to it the worst decides; good ones count as far as they cover it. */
export function outcomesOfMeasurements(
  basis: FindingBasis,
  vehicle: Vehicle,
  measurements: readonly Measurement[],
): CheckOutcome[] {
  const shaft = shaftAtSpeed(basis, vehicle);
  const facts = measurements.filter((one) => concerns(one, basis)).flatMap((one) => factsOf(one, shaft));
  return [...new Set(facts.map(({ checkId }) => checkId))].map((checkId) => {
    const own = facts.filter((fact) => fact.checkId === checkId).map((fact) => levelFact(fact, shaft));
    const believed = own.map((fact) => ({ fact, wrongness: wrongnessOf(fact, basis) }));
    const worst = believed.reduce((a, b) => (b.wrongness > a.wrongness ? b : a));
    const coverage = Math.min(
      1,
      own.reduce((sum, fact) => sum + fact.coverage, 0),
    );
    const wrongness = worst.wrongness >= 0.5 ? worst.wrongness : 0.5 - (0.5 - worst.wrongness) * Math.sqrt(coverage);
    return {
      checkId,
      wrongness,
      text: `${worst.fact.text}${forceText(worst.fact, basis)}.`,
      origin: 'measured' as const,
    };
  });
}

/** Ids of the checks the measurements have answered: something was found wrong, or most of the check was made. */
export function checksAnswered(measurements: readonly Measurement[]): CheckId[] {
  const facts = measurements.flatMap((one) => factsOf(one, NOWHERE));
  const made = (checkId: CheckId): number =>
    facts
      .filter((fact) => fact.checkId === checkId)
      .reduce((sum, { share, coverage }) => sum + (share > 1 ? 1 : coverage), 0);
  return [...new Set(facts.map(({ checkId }) => checkId))].filter((checkId) => made(checkId) >= MOST_OF_IT);
}

/** Coverage from which on a check counts as made: two tube stations of three, the radial reading of a flange. */
const MOST_OF_IT = 0.6;

const NOWHERE: ShaftAtSpeed = { rpm: 1000, wheelRpm: null, once: false, joints: 2, massKgAt: () => null };

/** A force once a turn is compared with the level only where the finding is once a turn. */
const levelFact = (fact: MeasuredFact, { once }: ShaftAtSpeed): MeasuredFact =>
  once ? fact : { ...fact, forceN: null };

/** Readings of one driveshaft say nothing of the other. */
function concerns(measurement: Measurement, basis: FindingBasis): boolean {
  const measured: ShaftPlace = ('driveshaft' in measurement ? measurement.driveshaft : undefined) ?? 'rear-driveshaft';
  const ofShaft =
    measurement.kind === 'working-angles' || (measurement.kind === 'runout' && /tube|flange/.test(measurement.place));
  return !ofShaft || basis.part !== 'driveshaft' || (measured === 'front-driveshaft') === isFrontShaft(basis);
}

function factsOf(measurement: Measurement, shaft: ShaftAtSpeed): MeasuredFact[] {
  switch (measurement.kind) {
    case 'working-angles':
      return angleFacts(measurement, shaft);
    case 'double-cardan':
      return doubleCardanFacts(measurement);
    case 'ride-height':
      return rideHeightFacts(measurement);
    case 'end-play':
      return endPlayFacts(measurement, shaft);
    case 'rings':
      return ringFacts(measurement, shaft);
    case 'radial-play':
      return playFacts(measurement);
    case 'runout':
      return runoutFacts(measurement, shaft);
    case 'flange-reindex':
      return reindexFacts(measurement);
    case 'balance-amplitudes':
      return amplitudeTrialFacts(measurement);
    case 'balance-phasors':
      return phasorTrialFacts(measurement);
    case 'wheel-unbalance':
      return wheelUnbalanceFacts(measurement, shaft);
    case 'observation':
      return observedFacts(measurement);
    default:
      return assertNever(measurement);
  }
}

/** Seen by a person: as sure as the best reading. */
function observedFacts({ checkId, outcome }: Extract<Measurement, { kind: 'observation' }>): MeasuredFact[] {
  const check = checkOf(checkId);
  if (!check) return [];
  const text = check[outcome].replace(/\.$/, '');
  return [{ checkId: check.id, share: outcome === 'wrong' ? OBSERVED : 1 / OBSERVED, text, forceN: null, coverage: 1 }];
}

/** Share of a limit at which belief is capped in any case. */
const OBSERVED = 10 * OUTCOME_TRUST;
