/** On which findings and vehicles a cause can be: small questions the cause files share. */
import type { CaseContext, FindingBasis } from './case.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import type { Part } from '../../vehicle/line.ts';

type Applies = (basis: FindingBasis, context: CaseContext) => boolean;

/** The part at one of the orders; all of its orders where none is given. */
export const at =
  (part: Part, ...orders: readonly number[]): Applies =>
  (basis) =>
    basis.part === part && basis.role !== 'mesh' && (orders.length === 0 || orders.includes(basis.order ?? -1));

/** The multiples of a knock once a turn of the part. */
export const knocks =
  (part: Part): Applies =>
  (basis) =>
    basis.part === part && basis.role === 'knock';

export const either =
  (...conditions: readonly Applies[]): Applies =>
  (basis, context) =>
    conditions.some((condition) => condition(basis, context));

export const both =
  (...conditions: readonly Applies[]): Applies =>
  (basis, context) =>
    conditions.every((condition) => condition(basis, context));

/** The front driveshaft of a four-wheel drive: one piece, and not the shaft whose pieces the job describes. */
export const isFrontShaft = ({ name }: FindingBasis): boolean => name === 'front driveshaft';

/** Whether the driveshaft can be of more than one piece: true also where it was not said. */
export const mayBeTwoPiece: Applies = (basis, { vehicle }) => !isFrontShaft(basis) && piecesOf(vehicle) !== 'one';

/** Whether a double-Cardan joint can be in the vehicle. Where joints are described and none is one, it cannot. */
export const mayHaveDoubleCardan: Applies = (basis, { vehicle }) =>
  isFrontShaft(basis) || hasDoubleCardan(vehicle) !== false;

/** Half-shafts with joints of their own turn with the wheels of some axle. */
export const hasHalfShafts: Applies = (_, { vehicle }) =>
  vehicle.layout !== 'rear-drive' || vehicle.tripodJoints === true;

export const isFourWheelDrive: Applies = (_, { vehicle }) => vehicle.layout === 'four-wheel-drive';
export const isElectric: Applies = (_, { vehicle }) => vehicle.layout === 'electric';
export const burnsFuel: Applies = (_, { vehicle }) => vehicle.layout !== 'electric';

/** 'one', 'several', or null where the job does not say. */
export function piecesOf(vehicle: Vehicle): 'one' | 'several' | null {
  const count = vehicle.driveshaftPieces?.length ?? 0;
  return count === 0 ? null : count === 1 ? 'one' : 'several';
}

/** True or false where every joint is described, or one is a double-Cardan; null where the job does not say. */
export function hasDoubleCardan(vehicle: Vehicle): boolean | null {
  const joints = (vehicle.driveshaftPieces ?? []).flatMap(({ frontJoint, rearJoint }) => [frontJoint, rearJoint]);
  if (joints.includes('double-cardan')) return true;
  const known = joints.filter((joint) => joint !== undefined).length;
  // Between pieces one joint may be written at either side, so n + 1 of 2n entries describe them all.
  return known > 0 && known >= (vehicle.driveshaftPieces?.length ?? 0) + 1 ? false : null;
}

/** The same reason for a joint replaced at any place. */
export const afterJoint = (
  reason: string,
): Readonly<Record<'joint-replaced-front' | 'joint-replaced-rear' | 'joint-replaced-center', string>> => ({
  'joint-replaced-front': reason,
  'joint-replaced-rear': reason,
  'joint-replaced-center': reason,
});

/** An order that falls between whole turns of the crankshaft: ½×, 1½×, 2½×. */
export const isHalfOrder = (order: number | null): boolean => order !== null && Math.abs((order % 1) - 0.5) < 1e-6;
