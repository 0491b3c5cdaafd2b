import { describe, expect, it, test } from 'vitest';
import {
  checkOf,
  checkWeights,
  checksFor,
  wrongProbability,
} from '../../../../src/core/diagnosis/checks/all-checks.ts';
import { rankCauses } from '../../../../src/core/diagnosis/ranking/rank-causes.ts';
import { caseOf, everyCause, found, placeOf, probabilityOf } from './case-fixtures.ts';

// Three states of evidence: speaks for, speaks against, not known. Every cause must have a check that can do all three.
describe.each(everyCause.map((cause) => [cause.id, cause] as const))('%s', (id, cause) => {
  const { basis, context } = placeOf(cause);
  const checkId = checksFor(id, basis.part, context.vehicle)[0]!;
  const { parts, rest } = checkWeights(checkId);
  const wrongSupports = wrongProbability(checkId, id, basis.part) > (parts?.[basis.part] ?? rest);
  const told = (outcome: 'fine' | 'wrong') => {
    const causes = rankCauses(basis, { ...context, measurements: [found(checkId, outcome)] });
    return causes.find((ranked) => ranked.id === id)!;
  };
  const unmeasured = rankCauses(basis, context).find((ranked) => ranked.id === id)!;
  const sentence = (outcome: 'fine' | 'wrong') => checkOf(checkId)![outcome].replace(/\.$/, '');

  it('has a measurement that speaks for it', () => {
    const outcome = wrongSupports ? 'wrong' : 'fine';
    const supported = told(outcome);
    expect(supported.probability).toBeGreaterThan(unmeasured.probability * 1.02);
    expect(supported.for.some((text) => text.startsWith(sentence(outcome)))).toBe(true);
    expect(supported.probabilityBefore).toBeCloseTo(unmeasured.probability, 12);
  });

  it('has a measurement that speaks against it', () => {
    const outcome = wrongSupports ? 'fine' : 'wrong';
    const contradicted = told(outcome);
    expect(contradicted.probability).toBeLessThan(unmeasured.probability * 0.98);
    expect(contradicted.against.some((text) => text.startsWith(sentence(outcome)))).toBe(true);
  });

  it('says so where the measurement is missing', () => {
    const title = checkOf(checkId)!.title;
    const open = `Not checked: ${title.charAt(0).toLowerCase()}${title.slice(1)}.`;
    expect(unmeasured.missing).toContain(open);
    expect(unmeasured.probabilityBefore).toBeUndefined();
    expect(told('wrong').missing).not.toContain(open);
  });
});

test('A measurement of one part leaves the causes of another part where they were', () => {
  const { basis } = placeOf(everyCause.find(({ id }) => id === 'accessory-bearing')!);
  const before = rankCauses(basis, caseOf());
  const after = rankCauses(basis, caseOf({ measurements: [found('phasing-marks', 'wrong')] }));
  for (const { id, probability } of before) expect(probabilityOf(after, id)).toBeCloseTo(probability, 12);
});
