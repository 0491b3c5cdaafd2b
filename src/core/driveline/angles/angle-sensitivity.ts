/** How far the residual moves for a millimetre or a tenth of a degree, for ride height, and for pinion wind-up. */
import type { Result } from '../../note.ts';
import { success } from '../../note.ts';
import type { AngleChange, AngleGeometry } from './angle-change.ts';
import { applyChange, completeGeometry } from './angle-change.ts';
import type { WorkingAnglesInput } from './working-angles.ts';
import { workingAngles } from './working-angles.ts';

export interface AngleEffect {
  readonly change: AngleChange;
  readonly unit: '°' | 'mm';
  /** Residual after the change, and by how much it differs from now (negative = better). */
  readonly residualDeg: number;
  readonly residualDifferenceDeg: number;
  /** The same as acceleration at the speed asked for, rad/s²; null where no speed is known. */
  readonly residualRadPerS2: number | null;
  readonly residualDifferenceRadPerS2: number | null;
}

export interface AngleSensitivity {
  /** What the steps a shop can make (a plate of 3 mm, a shim of half a degree) buy, either way, for each thing that can be changed. */
  readonly smallSteps: readonly AngleEffect[];
  /** Body 40 mm lower to 40 mm higher: load, worn springs, a lift. */
  readonly rideHeight: readonly AngleEffect[];
  /** Pinion turned up by the drive torque, 0.5° to 3°. */
  readonly windUp: readonly AngleEffect[];
  readonly assumed: readonly string[];
}

/** Effects of changes on the residual. */
export const angleSensitivity = (input: WorkingAnglesInput, geometry: AngleGeometry): Result<AngleSensitivity> => {
  const now = workingAngles(input);
  if (!now.ok) return now;
  const complete = completeGeometry(geometry, input);
  const pieces = input.shafts.length - 2;
  const { equivalentAngleDeg: nowDeg, accelerationRadPerS2: nowRadPerS2 } = now.value.residual;
  const effect = (change: AngleChange, unit: '°' | 'mm'): AngleEffect => {
    const result = workingAngles({ ...input, ...applyChange(input, complete, change) });
    const after = result.ok ? result.value.residual : now.value.residual;
    const residualRadPerS2 = after.accelerationRadPerS2;
    return {
      change,
      unit,
      residualDeg: after.equivalentAngleDeg,
      residualDifferenceDeg: after.equivalentAngleDeg - nowDeg,
      residualRadPerS2,
      residualDifferenceRadPerS2:
        residualRadPerS2 === null || nowRadPerS2 === null ? null : residualRadPerS2 - nowRadPerS2,
    };
  };
  const hasPinion = input.shafts.some((shaft) => shaft.part === 'pinion');
  const small: (readonly [AngleChange, '°' | 'mm'])[] = [];
  for (const sign of [1, -1]) {
    if (hasPinion) small.push([{ kind: 'axle-shim', amount: 0.5 * sign }, '°']);
    small.push([{ kind: 'mount-height', amount: 3 * sign }, 'mm']);
    for (let piece = 0; piece < pieces; piece++) {
      if (piece + 1 < pieces) small.push([{ kind: 'center-bearing-height', amount: 3 * sign, piece }, 'mm']);
      small.push([{ kind: 'phasing', amount: 0.5 * sign, piece }, '°']);
    }
  }
  const heights = hasPinion ? [-40, -20, -10, 10, 20, 40] : [];
  const windUps = hasPinion ? [0.5, 1, 2, 3] : [];
  return success({
    smallSteps: small.map(([change, unit]) => effect(change, unit)),
    rideHeight: heights.map((amount) => effect({ kind: 'ride-height', amount }, 'mm')),
    windUp: windUps.map((amount) => effect({ kind: 'pinion-wind-up', amount }, '°')),
    assumed: complete.assumed,
  });
};
