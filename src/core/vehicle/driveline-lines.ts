/** Lines of the parts that turn with the road: tires, driveshafts, half-shafts, and the final drive's gear mesh. */
import { lineTemplate } from './line-template.ts';
import type { LineTemplate } from './line-template.ts';
import { axleRatioOf, counted, frontAxleRatioOf } from './ratios.ts';
import type { Vehicle } from './vehicle.ts';

/** A tire's force variation has parts at 1, 2, 3 … per turn (Pottinger, Tire Sci. Technol. 38(1), 2010). */
const TIRE_ORDERS = [1, 2, 3, 4];

export const tireTemplates = (): LineTemplate[] => TIRE_ORDERS.map((order) => lineTemplate('tire', order, 'road', 1));

/** 1× unbalance and runout, 2× joint angle; 4× is the second term of the joint's series and only goes with 2×. */
const oneDriveshaft = (ratio: number, name?: string): LineTemplate[] => {
  const named = name === undefined ? {} : { name };
  return [
    lineTemplate('driveshaft', 1, 'road', ratio, named),
    lineTemplate('driveshaft', 2, 'road', ratio, named),
    lineTemplate('driveshaft', 4, 'road', ratio, { ...named, role: 'companion' }),
  ];
};

export const driveshaftTemplates = (vehicle: Vehicle): LineTemplate[] => {
  const rear = axleRatioOf(vehicle);
  const front = frontAxleRatioOf(vehicle);
  return [
    ...(rear === null ? [] : oneDriveshaft(rear)),
    ...(front === null ? [] : oneDriveshaft(front, 'front driveshaft')),
  ];
};

/**
 * A tripod joint under torque pushes the shaft to and fro three times a turn (Sugiura et al., J. System Design and
 * Dynamics 3(6), 2009). Half-shafts turn with the wheel.
 */
export const halfShaftTemplates = (vehicle: Vehicle): LineTemplate[] => {
  const tripod = vehicle.tripodJoints ?? (vehicle.layout === 'front-drive' || vehicle.layout === 'electric');
  return tripod ? [lineTemplate('half-shaft', 3, 'road', 1)] : [];
};

/**
 * Mesh of pinion and ring gear, z_pinion per driveshaft turn or z_ring per wheel turn. Where there is no driveshaft
 * it is counted in turns of the half-shaft, which the ring gear drives.
 */
export const meshTemplates = (vehicle: Vehicle): LineTemplate[] => {
  const pinion = counted(vehicle.pinionTeeth);
  const ring = counted(vehicle.ringTeeth);
  const axle = axleRatioOf(vehicle);
  if (axle !== null) {
    // z_ring / ratio is z_pinion again, and a whole number only where teeth and ratio agree.
    const teeth = pinion ?? (ring === null ? null : Math.round(ring / axle));
    return teeth === null || teeth < 1 ? [] : [lineTemplate('driveshaft', teeth, 'road', axle, { role: 'mesh' })];
  }
  return ring === null ? [] : [lineTemplate('half-shaft', ring, 'road', 1, { role: 'mesh' })];
};
