/** Critical (whirl) speed of a shaft piece, its margin at speed, and the half-critical where 2× drives it. */
import type { Result } from '../note.ts';
import { failure, success } from '../note.ts';
import type { ShaftPiece } from '../vehicle/vehicle.ts';
import type { JudgedNumber, LimitOverrides } from './limits/limit.ts';
import { judge, limitOf } from './limits/limit.ts';
import type { Tube } from './shaft-tube.ts';
import { MATERIALS, tubeMassPerMetreKg, tubeOf } from './shaft-tube.ts';

/**
 * First critical speed of a uniform tube on two pins, rev/min:
 * (60·π/8)·√(E/ρ)·√(D² + d²)/L², from EI·y'''' = m'·ω²·y with pinned ends. Derived; the solid-shaft form agrees with
 * Machinery's Handbook within 0.11 %. Real shafts are lower: yoke mass, soft mounts, shear.
 */
export const criticalSpeedRpm = ({ lengthMm, outerMm, wallMm, material }: Tube): number => {
  const { youngPa, densityKgPerM3 } = MATERIALS[material];
  const innerMm = outerMm - 2 * wallMm;
  // mm/mm² leaves 1/mm: 1000 of them to the metre.
  return (
    ((60 * Math.PI) / 8) * Math.sqrt(youngPa / densityKgPerM3) * (Math.hypot(outerMm, innerMm) / lengthMm ** 2) * 1000
  );
};

/** Longest tube, mm, whose first critical speed is at least this, rev/min. */
export const longestTubeMm = (tube: Omit<Tube, 'lengthMm'>, rpm: number): number =>
  Math.sqrt(criticalSpeedRpm({ ...tube, lengthMm: 1 }) / rpm);

/** Half-width of the band around half the critical speed in which 2× is said to drive the shaft; judgment. */
const HALF_CRITICAL_BAND = 0.1;

export interface WhirlPiece {
  readonly massPerMetreKg: number;
  readonly criticalRpm: number;
  /** Where the 2× of the joints meets the first bending mode. */
  readonly halfCriticalRpm: number;
  /** Critical speed times the limit in force: run below this. */
  readonly safeRpm: number;
  /** Speed asked about, over critical, held to the limit; null where no speed was given. */
  readonly atComplaint: JudgedNumber | null;
  readonly atTopSpeed: JudgedNumber | null;
  /** True where the complaint speed lies within a tenth of the half-critical. */
  readonly nearHalfCritical: boolean;
}

export interface WhirlInput {
  /** Driveshaft speed at the complaint and at the vehicle's top speed, rev/min; null where not known. */
  readonly complaintRpm: number | null;
  readonly topRpm: number | null;
  readonly limits?: LimitOverrides | undefined;
}

/**
 * Critical speeds of each piece.
 * @returns a problem that names the first piece whose tube is not known
 */
export const whirl = (pieces: readonly ShaftPiece[], input: WhirlInput): Result<readonly WhirlPiece[]> => {
  if (pieces.length === 0) {
    return failure({
      code: 'no-shaft',
      key: 'vehicle.driveshaftPieces',
      message: 'There is no driveshaft piece to work out a critical speed for.',
      remedy: 'Give length, tube diameter and wall thickness of each driveshaft piece.',
    });
  }
  const results: WhirlPiece[] = [];
  for (const [index, piece] of pieces.entries()) {
    const tube = tubeOf(piece);
    if (tube === null) {
      return failure({
        code: 'tube-not-known',
        key: `vehicle.driveshaftPieces[${index}]`,
        message: `Shaft piece ${index + 1} has no length, tube diameter and wall thickness that make a tube.`,
        remedy: 'Measure joint center to joint center, the outer diameter of the tube, and its wall thickness.',
      });
    }
    results.push(whirlOfPiece(tube, input));
  }
  return success(results);
};

const whirlOfPiece = (tube: Tube, { complaintRpm, topRpm, limits }: WhirlInput): WhirlPiece => {
  const limit = limitOf('whirl-share', limits);
  const criticalRpm = criticalSpeedRpm(tube);
  const halfCriticalRpm = criticalRpm / 2;
  const at = (rpm: number | null, when: string): JudgedNumber | null =>
    rpm === null ? null : judge(rpm / criticalRpm, limit, `shaft speed over critical, ${when}`);
  return {
    massPerMetreKg: tubeMassPerMetreKg(tube),
    criticalRpm,
    halfCriticalRpm,
    safeRpm: limit.value * criticalRpm,
    atComplaint: at(complaintRpm, 'at the complaint'),
    atTopSpeed: at(topRpm, 'at top speed'),
    nearHalfCritical: complaintRpm !== null && Math.abs(complaintRpm / halfCriticalRpm - 1) <= HALF_CRITICAL_BAND,
  };
};
