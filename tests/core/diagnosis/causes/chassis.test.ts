import { describe, expect, it } from 'vitest';
import type { CaseContext } from '../../../../src/core/diagnosis/evidence/case.ts';
import { rankCauses } from '../../../../src/core/diagnosis/ranking/rank-causes.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { caseOf, finding, found } from './case-fixtures.ts';

/** That locked axles which do not match wind up, and that ratios pair within 1 %: common practice, no source. */
describe('a four-wheel drive wound up', () => {
  const windUp = (vehicle: Partial<Vehicle>, work: CaseContext['work'] = []): number | undefined =>
    rankCauses(finding('driveshaft', 2), caseOf({ vehicle: { layout: 'four-wheel-drive', ...vehicle }, work })).find(
      ({ id }) => id === 'drive-wind-up',
    )?.probability;

  it('is a cause of driveshaft 2× there only, likelier with unequal ratios or tires', () => {
    expect(windUp({ layout: 'rear-drive' })).toBeUndefined();
    const plain = windUp({})!;
    expect(windUp({ axleRatio: 3.73, frontAxleRatio: 3.55 })!).toBeGreaterThan(2 * plain);
    expect(windUp({ axleRatio: 3.55, frontAxleRatio: 3.54 })!).toBeCloseTo(plain, 9);
    expect(windUp({}, ['tire-size-changed'])!).toBeGreaterThan(1.5 * plain);
  });
});

/** Common practice, no source. */
describe('worn suspension', () => {
  it('stands among the causes of tire 1× and 2×, behind the wheel’s own, and found worn moves to the front', () => {
    const causes = (outcome?: 'wrong') =>
      rankCauses(
        finding('tire', 1),
        caseOf({ measurements: outcome ? [found('suspension-inspection', outcome)] : [] }),
      ).map(({ id }) => id);
    expect(causes().indexOf('suspension-worn')).toBeGreaterThan(causes().indexOf('tire-unbalance'));
    expect(causes('wrong').indexOf('suspension-worn')).toBeLessThan(2);
    expect(rankCauses(finding('driveshaft', 1), caseOf()).map(({ id }) => id)).not.toContain('suspension-worn');
  });
});
