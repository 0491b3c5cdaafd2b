/** Findings and cases as a reader would draw them: everything unknown unless the test says otherwise. */
import type { CaseContext, Companion, FindingBasis } from '../../../../src/core/diagnosis/evidence/case.ts';
import { ALL_CAUSES } from '../../../../src/core/diagnosis/causes/all-causes.ts';
import type { Cause } from '../../../../src/core/diagnosis/causes/cause.ts';
import type { RankedCause, RankedFinding } from '../../../../src/core/diagnosis/ranking/ranked.ts';
import type { ObservationMeasurement } from '../../../../src/core/driveline/measurement.ts';
import type { Part } from '../../../../src/core/vehicle/line.ts';

export function finding(part: Part, order: number | null, more: Partial<FindingBasis> = {}): FindingBasis {
  return {
    part,
    order,
    label: order === null ? `${part} tone` : `${part} ${order}×`,
    probability: 0.95,
    run: 'cruise',
    frequencyHz: 40,
    amplitudeMps2: 0.1,
    feltLevel: 4,
    perceived: 'felt',
    verticalShare: null,
    companions: [],
    speedExponent: null,
    levelByLoadMps2: {},
    beats: false,
    ...more,
  };
}

export const companion = (part: Part, order: number, amplitudeMps2: number, seen = true): Companion => ({
  part,
  order,
  label: `${part} ${order}×`,
  amplitudeMps2,
  feltLevel: 10 * amplitudeMps2,
  seen,
});

export function caseOf(more: Partial<CaseContext> = {}): CaseContext {
  return { vehicle: { layout: 'rear-drive' }, work: [], measurements: [], runs: [], ...more };
}

export const found = (checkId: string, outcome: 'fine' | 'wrong'): ObservationMeasurement => ({
  kind: 'observation',
  checkId,
  outcome,
});

export const probabilityOf = (causes: readonly RankedCause[], id: string): number =>
  causes.find((cause) => cause.id === id)?.probability ?? NaN;

export const ranked = (
  basis: FindingBasis,
  causes: readonly RankedCause[],
  more: Partial<RankedFinding> = {},
): RankedFinding => ({
  ...basis,
  sharesFrequencyWith: [],
  causes,
  ...more,
});

const PLACES: readonly { basis: FindingBasis; context: CaseContext }[] = [
  ...[1, 2, 4].map((order) => ({ basis: finding('driveshaft', order), context: caseOf() })),
  { basis: finding('driveshaft', 2), context: caseOf({ vehicle: { layout: 'four-wheel-drive' } }) },
  { basis: finding('driveshaft', 11, { role: 'mesh' }), context: caseOf() },
  ...[1, 2].map((order) => ({ basis: finding('tire', order), context: caseOf() })),
  { basis: finding('tire', 6, { role: 'knock' }), context: caseOf() },
  { basis: finding('tire', 1), context: caseOf({ vehicle: { layout: 'front-drive' } }) },
  { basis: finding('half-shaft', 3), context: caseOf({ vehicle: { layout: 'front-drive' } }) },
  ...[0.5, 1].map((order) => ({ basis: finding('engine', order), context: caseOf() })),
  {
    basis: finding('engine', 2, { role: 'firing' }),
    context: caseOf({ vehicle: { layout: 'rear-drive', cylinders: 4, converter: true } }),
  },
  {
    basis: finding('engine', 2, { role: 'firing' }),
    context: caseOf({ vehicle: { layout: 'rear-drive', cylinders: 4, converter: false } }),
  },
  { basis: finding('engine', 1), context: caseOf({ vehicle: { layout: 'electric' } }) },
  { basis: finding('engine', 24, { role: 'electric' }), context: caseOf({ vehicle: { layout: 'electric' } }) },
  { basis: finding('half-shaft', 71, { role: 'mesh' }), context: caseOf({ vehicle: { layout: 'electric' } }) },
  { basis: finding('accessory', 1), context: caseOf() },
  { basis: finding('fixed', null), context: caseOf() },
];

/** A finding and a case in which the cause can be. */
export function placeOf(cause: Cause): { basis: FindingBasis; context: CaseContext } {
  const place = PLACES.find(({ basis, context }) => cause.applies(basis, context));
  if (!place) throw new Error(`no place for ${cause.id}`);
  return place;
}

export const everyPlace = PLACES;
export const everyCause = ALL_CAUSES;
