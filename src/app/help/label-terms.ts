/** Which labels of the forms are words of the trade. */
import { texts } from '../texts.ts';
import { benchFacts } from '../texts/bench-facts.ts';
import type { TermId } from '../texts/glossary.ts';

const { fields: job } = texts.form;
const { fields: bench } = texts.bench;

const TERMS: ReadonlyMap<string, TermId> = new Map<string, TermId>([
  [job.tire.label, 'rolling-circumference'],
  [job.axleRatio.label, 'axle-ratio'],
  [job.frontAxleRatio.label, 'axle-ratio'],
  [job.finalDrive.label, 'final-drive'],
  [job.transferRatio.label, 'transfer-case'],
  [job.cylinders.label, 'firing-order'],
  [job.gearRatios.label, 'gear-ratio'],
  [job.gearRatio.label, 'gear-ratio'],
  [job.pinionTeeth.label, 'gear-mesh'],
  [job.polePairs.label, 'pole-pairs'],
  [job.samplingRate.label, 'sampling-rate'],
  [bench.suspension, 'ride-height'],
  [bench.plan, 'sideways'],
  [bench.sideways, 'sideways'],
  [bench.phasing, 'phasing'],
  [bench.splitError, 'double-cardan'],
  [bench.crossAndCups, 'cross'],
  [bench.tir, 'dial-movement'],
  [bench.halfAngle(1), 'working-angle'],
  [bench.inner, 'plane'],
  [bench.planes, 'plane'],
  [bench.trialWeight, 'trial-weight'],
  [bench.phase, 'phase'],
  [benchFacts.grade, 'grade'],
  [benchFacts.splineTeeth, 'slip-yoke'],
]);

/** The word a label needs told, if it is one. */
export const termOfLabel = (label: string): TermId | undefined => TERMS.get(label);

/**
 * The words to be told in a form, by the id of the field or choice they stand at: each where it comes first.
 * @param told Words that the form's title already tells.
 */
export function firstTerms(
  labelled: readonly { readonly id: string; readonly label: string }[],
  told: readonly TermId[] = [],
): ReadonlyMap<string, TermId> {
  const seen = new Set<TermId>(told);
  const terms = new Map<string, TermId>();
  for (const { id, label } of labelled) {
    const term = termOfLabel(label);
    if (term === undefined || seen.has(term)) continue;
    seen.add(term);
    terms.set(id, term);
  }
  return terms;
}
