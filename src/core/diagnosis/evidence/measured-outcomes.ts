/** Measurements, as entered, turned into outcomes of checks. */
import type { Measurement, ShaftPlace } from '../../driveline/measurement.ts';
import { rpmFromHz } from '../../units.ts';
import type { CaseContext, FindingBasis } from './case.ts';
import { isFrontShaft } from './where.ts';
import type { CheckOutcome } from './check-outcome.ts';
import { forceText, wrongnessOf } from './measured-fact.ts';
import type { FindingSpeeds } from './measured-facts.ts';
import { factsOf } from './measured-facts.ts';
import type { CheckId } from '../weights.ts';

/** One outcome a check: of several readings that belong to it the worst decides; good ones count as far as they cover it. */
export function outcomesOfMeasurements(
  basis: FindingBasis,
  { vehicle, measurements, limits }: CaseContext,
): CheckOutcome[] {
  const speeds = speedsOf(basis);
  const facts = measurements
    .filter((one) => concerns(one, basis))
    .flatMap((one) => factsOf(one, vehicle, speeds, limits));
  return [...new Set(facts.map(({ checkId }) => checkId))].map((checkId) => {
    const own = facts.filter((fact) => fact.checkId === checkId);
    const believed = own.map((fact) => ({ fact, wrongness: wrongnessOf(fact, basis) }));
    const worst = believed.reduce((a, b) => (b.wrongness > a.wrongness ? b : a));
    const coverage = Math.min(
      1,
      own.reduce((sum, fact) => sum + fact.coverage, 0),
    );
    const wrongness = worst.wrongness >= 0.5 ? worst.wrongness : 0.5 - (0.5 - worst.wrongness) * Math.sqrt(coverage);
    const { text, isFault } = worst.fact;
    return { checkId, wrongness, text: `${text}${forceText(worst.fact, basis)}.`, isFault, origin: 'measured' };
  });
}

/** Ids of the checks the measurements have answered: something was found wrong, or most of the check was made. */
export function checksAnswered({ measurements, vehicle, limits }: CaseContext): CheckId[] {
  const facts = measurements.flatMap((one) => factsOf(one, vehicle, SOME_SPEED, limits));
  const made = (checkId: CheckId): number =>
    facts
      .filter((fact) => fact.checkId === checkId)
      .reduce((sum, { share, coverage }) => sum + (share > 1 ? 1 : coverage), 0);
  return [...new Set(facts.map(({ checkId }) => checkId))].filter((checkId) => made(checkId) >= MOST_OF_IT);
}

/** Coverage from which on a check counts as made: two tube stations of three, the radial reading of a flange. */
const MOST_OF_IT = 0.6;
/** Whether a check was made does not depend on the speed; angles are judged at any. */
const SOME_SPEED: FindingSpeeds = { driveshaftRpm: 1000, wheelRpm: 300, once: false };

function speedsOf({ part, order, frequencyHz }: FindingBasis): FindingSpeeds {
  const rpm = order ? rpmFromHz(frequencyHz / order) : null;
  return {
    driveshaftRpm: part === 'driveshaft' ? rpm : null,
    wheelRpm: part === 'tire' ? rpm : null,
    once: order === 1,
  };
}

/** Readings of one driveshaft say nothing of the other. */
function concerns(measurement: Measurement, basis: FindingBasis): boolean {
  const measured: ShaftPlace = ('driveshaft' in measurement ? measurement.driveshaft : undefined) ?? 'rear-driveshaft';
  const ofShaft =
    measurement.kind === 'working-angles' ||
    (measurement.kind === 'runout' && /^(tube|companion)/.test(measurement.place));
  return !ofShaft || basis.part !== 'driveshaft' || (measured === 'front-driveshaft') === isFrontShaft(basis);
}
