import { describe, expect, it } from 'vitest';
import { hasDoubleCardan } from '../../../../src/core/diagnosis/evidence/where.ts';
import type { JointKind, ShaftPiece } from '../../../../src/core/vehicle/vehicle.ts';

const joints = (...pairs: readonly (readonly (JointKind | undefined)[])[]): boolean | null =>
  hasDoubleCardan({
    layout: 'rear-drive',
    driveshaftPieces: pairs.map(([frontJoint, rearJoint]): ShaftPiece => ({
      ...(frontJoint && { frontJoint }),
      ...(rearJoint && { rearJoint }),
    })),
  });

describe('whether a vehicle has a double-Cardan joint', () => {
  // By counting: n pieces in a row have n + 1 joints, those between two pieces written at either.
  it('is known to be so from one, and known not to be from all', () => {
    expect(joints(['cross', 'double-cardan'])).toBe(true);
    expect(joints([undefined, 'double-cardan'])).toBe(true);
    expect(joints(['cross', 'cross'])).toBe(false);
    expect(joints(['cross', 'cross'], [undefined, 'cross'])).toBe(false);
  });

  it('is open where some or all are not described', () => {
    expect(joints()).toBeNull();
    expect(joints(['cross'])).toBeNull();
    expect(joints(['cross'], [])).toBeNull();
    expect(joints(['cross', 'cross'], [])).toBeNull();
    expect(hasDoubleCardan({ layout: 'rear-drive' })).toBeNull();
  });
});
