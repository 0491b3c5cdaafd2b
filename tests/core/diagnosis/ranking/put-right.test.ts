import { describe, expect, test } from 'vitest';
import type { CaseContext } from '../../../../src/core/diagnosis/evidence/case.ts';
import { faultsToPutRight } from '../../../../src/core/diagnosis/ranking/put-right.ts';
import { rankCauses } from '../../../../src/core/diagnosis/ranking/rank-causes.ts';
import type { Measurement } from '../../../../src/core/driveline/measurement.ts';
import { caseOf, finding, found, probabilityOf, ranked } from '../causes/case-fixtures.ts';

const repairsOf = (basis: ReturnType<typeof finding>, context: CaseContext) =>
  faultsToPutRight([ranked(basis, rankCauses(basis, context))], [basis], context);

const rings = (ring2Mm: number, crossAndCupsMm = 78.6): Measurement => ({
  kind: 'rings',
  joint: 'front',
  axes: [
    { grooveSpanMm: 81.85, crossAndCupsMm, ring1Mm: 1.55, ring2Mm },
    { grooveSpanMm: 81.85, crossAndCupsMm: 78.6, ring1Mm: 1.6, ring2Mm: 1.6 },
  ],
});
// A shaft of the size and speed of the demo job after a joint replacement.
const vehicle = {
  layout: 'rear-drive',
  driveshaftPieces: [{ lengthMm: 1524, tubeOuterMm: 88.9, wallMm: 2.1 }],
} as const;
const once = finding('driveshaft', 1, { frequencyHz: 42.7, amplitudeMps2: 0.24 });
const afterJoint = (...measurements: Measurement[]) =>
  caseOf({ vehicle, work: ['joint-replaced-front', 'shaft-removed'], measurements });

// A fault found after assembly is put right and proved before anything else is looked for (common practice, no source).
describe('What a measurement finds outside its limit', () => {
  test('is put right first and proved by recording again: unequal rings at once a turn', () => {
    const [repair, ...others] = repairsOf(once, afterJoint(rings(1.65)));
    expect(others).toEqual([]);
    expect(repair!.causeId).toBe('joint-off-center');
    expect(repair!.title).toBe('Put right first: joint off center from unequal retaining rings');
    expect(repair!.found.join(' ')).toContain('outside the limit');
    expect(repair!.prove).toContain('record again at the same speed');
    expect(repair!.cautions.length).toBeGreaterThan(0);
  });

  test('raises its cause at least threefold, in odds, though the force of the tube alone looks small', () => {
    const odds = (measurements: Measurement[]): number => {
      const p = probabilityOf(rankCauses(once, afterJoint(...measurements)), 'joint-off-center');
      return p / (1 - p);
    };
    expect(odds([rings(1.65)]) / odds([])).toBeGreaterThan(3);
  });

  test('is the likeliest of the causes that the check can find', () => {
    const twice = finding('driveshaft', 2, { frequencyHz: 63 });
    const angles: Measurement = {
      kind: 'working-angles',
      shafts: [
        { part: 'transmission', slopeDeg: 3.5 },
        { part: 'shaft', slopeDeg: 9 },
        { part: 'pinion', slopeDeg: 6.2 },
      ],
    };
    const lifted = caseOf({ work: ['ride-height-changed'], measurements: [angles] });
    expect(repairsOf(twice, lifted).map(({ causeId }) => causeId)).toEqual(['angles-from-ride-height']);
    const twisted = caseOf({ work: ['shaft-removed'], measurements: [found('phasing-marks', 'wrong')] });
    expect(repairsOf(twice, twisted).map(({ causeId }) => causeId)).toEqual(['forks-out-of-phase']);
  });

  test('is nothing where all is inside, where it only shows the way, or where it concerns another shake', () => {
    expect(repairsOf(once, afterJoint(rings(1.56, 78.7)))).toEqual([]);
    expect(repairsOf(once, afterJoint(found('clamp-trial', 'wrong')))).toEqual([]);
    expect(repairsOf(once, afterJoint(found('reindex-shaft', 'wrong')))).toEqual([]);
    expect(repairsOf(finding('tire', 1), caseOf({ measurements: [found('tube-runout', 'wrong')] }))).toEqual([]);
  });

  test('of a lesser shake waits', () => {
    const context = caseOf({ measurements: [found('wheel-balancer', 'wrong')] });
    const main = finding('driveshaft', 2, { feltLevel: 6 });
    const lesser = finding('tire', 1, { feltLevel: 1.1 });
    const bases = [main, lesser];
    const findings = bases.map((basis) => ranked(basis, rankCauses(basis, context)));
    expect(faultsToPutRight(findings, bases, context)).toEqual([]);
    expect(faultsToPutRight(findings.slice(1), bases.slice(1), context)).toHaveLength(1);
  });
});
