/** Mass and stiffness of a shaft piece from its tube. */
import type { ShaftPiece, Vehicle } from '../vehicle/vehicle.ts';
import type { JointPlace } from './measurement.ts';

/** Young's modulus, Pa, and density, kg/m³, as handbooks give them for structural steel and aluminium alloy. */
export const MATERIALS = {
  steel: { youngPa: 207e9, densityKgPerM3: 7850 },
  aluminium: { youngPa: 69e9, densityKgPerM3: 2700 },
} as const;

/** A piece whose tube and length are known. */
export interface Tube {
  readonly lengthMm: number;
  readonly outerMm: number;
  readonly wallMm: number;
  readonly material: 'steel' | 'aluminium';
}

/** The tube of a piece; null where a size is missing or makes no tube. Steel where the material is not said. */
export const tubeOf = (piece: ShaftPiece): Tube | null => {
  const { lengthMm, tubeOuterMm: outerMm, wallMm, material = 'steel' } = piece;
  if (lengthMm === undefined || outerMm === undefined || wallMm === undefined) return null;
  const makesATube = lengthMm > 0 && wallMm > 0 && outerMm >= 2 * wallMm && Number.isFinite(lengthMm * outerMm);
  return makesATube ? { lengthMm, outerMm, wallMm, material } : null;
};

/** Mass of a metre of tube, kg/m. */
export const tubeMassPerMetreKg = ({ outerMm, wallMm, material }: Tube): number => {
  const innerMm = outerMm - 2 * wallMm;
  return (Math.PI / 4) * (outerMm ** 2 - innerMm ** 2) * 1e-6 * MATERIALS[material].densityKgPerM3;
};

/** Yokes and weld ends on top of the bare tube, as a share of its mass; judgment, no source. */
const ENDS_SHARE = 0.5;

/** Mass of a piece, kg: as weighed, or estimated from its tube; null where neither is known. */
export const pieceMassKg = (piece: ShaftPiece): { readonly massKg: number; readonly estimated: boolean } | null => {
  if (piece.massKg !== undefined && piece.massKg > 0) return { massKg: piece.massKg, estimated: false };
  const tube = tubeOf(piece);
  if (tube === null) return null;
  return { massKg: tubeMassPerMetreKg(tube) * (tube.lengthMm / 1000) * (1 + ENDS_SHARE), estimated: true };
};

/** The piece whose end a joint carries: the last at the rear joint, else the first; undefined where none is described. */
export const pieceAtJoint = ({ driveshaftPieces = [] }: Vehicle, joint: JointPlace): ShaftPiece | undefined =>
  joint === 'rear' ? driveshaftPieces.at(-1) : driveshaftPieces[0];
