/** Each described fault as the orders it makes, with how they depend on speed and torque. */
import type { Vehicle } from '../vehicle/vehicle.ts';
import { complex, scale } from '../complex.ts';
import { HALF_ORDERS, cylinderTorque, firingPhasor } from './engine-torque.ts';
import type { OrderPlan } from './excitation.ts';
import type { Fault, Wheel } from './fault.ts';
import { WHEELS } from './fault.ts';
import type { TurningId } from './turning.ts';

/** Looks up a part's turning speed and the torque share at the condition a level is stated for. */
export type AtReference = (turning: TurningId) => { readonly turnHz: number; readonly torque: number };

type Shape = OrderPlan['shape'];
const ONE = complex(1);
const QUARTER_TURN = complex(0, -1);

const cornerOf = (wheel: Wheel): number => WHEELS.indexOf(wheel);
const SHAFT_TURNING: Shape = [
  { entry: 'shaft-side', factor: ONE },
  { entry: 'shaft-up', factor: QUARTER_TURN },
];
/** A joint's couple and the shaft's uneven speed shake the cross-member up and down more than sideways. */
const SHAFT_SHAKING: Shape = [
  { entry: 'shaft-up', factor: ONE },
  { entry: 'shaft-side', factor: complex(0.3, 0.2) },
  { entry: 'fore-aft', factor: complex(0.15, 0) },
];
export const ENGINE_ROLLING: Shape = [
  { entry: 'engine-roll', factor: ONE },
  { entry: 'engine-up', factor: complex(0.25, 0.1) },
];
export const ENGINE_TURNING: Shape = [
  { entry: 'engine-roll', factor: ONE },
  { entry: 'engine-up', factor: QUARTER_TURN },
];
/** Share of the second harmonic of a joint's 2× (4× of the shaft); q/2 by the exact series would be less still. */
const JOINT_FOURTH = 0.05;

const single = (order: number): OrderPlan['orders'] => [{ order, relative: ONE }];

/**
 * @returns The plans of one fault; empty for a resonance, which is no order.
 */
export const faultPlans = (fault: Fault, index: number, vehicle: Vehicle, at: AtReference): readonly OrderPlan[] => {
  const plan = (
    part: OrderPlan['part'],
    turning: TurningId,
    order: number,
    shape: Shape,
    speedExponent: number,
    torqueShare: number,
    more: Partial<OrderPlan> = {},
  ): OrderPlan => {
    const { turnHz, torque } = at(turning);
    return {
      origin: 'fault',
      part,
      turning,
      orders: single(order),
      levelOrder: order,
      levelMps2: fault.levelMps2,
      referenceHz: turnHz,
      referenceTorque: torque,
      shape,
      speedExponent,
      torqueShare,
      ...more,
    };
  };
  switch (fault.kind) {
    case 'tire-unbalance':
      return [plan('tire', fault.wheel, 1, wheelForce(fault.wheel, 0.6), 2, 0, { name: fault.wheel })];
    case 'tire-force-variation': {
      const largest = Math.max(...fault.orders);
      return fault.orders.map((share, i) =>
        plan('tire', fault.wheel, i + 1, wheelForce(fault.wheel, 0.2), 0.3, 0, {
          name: fault.wheel,
          levelMps2: (fault.levelMps2 * share) / largest,
        }),
      );
    }
    case 'rotor-thickness':
      return [plan('tire', fault.wheel, 1, [{ entry: 'fore-aft', factor: ONE }], 0, 1, { name: fault.wheel })];
    case 'driveshaft-unbalance': {
      const shaft = fault.shaft ?? 'rear';
      return [plan('driveshaft', `${shaft}-shaft`, 1, SHAFT_TURNING, 2, 0, { name: shaft })];
    }
    case 'driveshaft-angle': {
      const shaft = fault.shaft ?? 'rear';
      const couple = fault.coupleShare ?? 0.3;
      const turning: TurningId = `${shaft}-shaft`;
      const orders: OrderPlan['orders'] = [
        { order: 2, relative: ONE },
        { order: 4, relative: complex(JOINT_FOURTH) },
      ];
      return [
        plan('driveshaft', turning, 2, SHAFT_SHAKING, 2, 0, {
          name: shaft,
          orders,
          levelMps2: fault.levelMps2 * (1 - couple),
        }),
        plan('driveshaft', turning, 2, SHAFT_SHAKING, 0, 1, { name: shaft, levelMps2: fault.levelMps2 * couple }),
      ].filter((p) => p.levelMps2 > 0);
    }
    case 'misfire':
      return [plan('engine', 'engine', 0.5, ENGINE_ROLLING, 0, 0.7, { orders: misfireOrders(vehicle, fault) })];
    case 'engine-unbalance':
      return [plan('engine', 'engine', 1, ENGINE_TURNING, 2, 0)];
    case 'firing-through-mounts':
      return [plan('engine', 'engine', (vehicle.cylinders ?? 4) / 2, ENGINE_ROLLING, 0, 0.7)];
    case 'half-shaft-tripod': {
      const wheel: Wheel = `${vehicle.layout === 'front-drive' ? 'front' : 'rear'}-${fault.side}`;
      const shape: Shape = [
        { entry: 'shaft-side', factor: ONE },
        { entry: 'fore-aft', factor: complex(0.3) },
      ];
      return [plan('half-shaft', wheel, 3, shape, 0, 1, { name: fault.side })];
    }
    case 'accessory-unbalance': {
      const name = vehicle.accessories?.[fault.accessory]?.name ?? 'accessory';
      return [plan('accessory', `accessory-${fault.accessory}`, 1, ENGINE_TURNING, 2, 0, { name })];
    }
    case 'fixed-tone':
      return [plan('fixed', `tone-${index}`, 1, [{ entry: 'shaker', factor: ONE }], 0, 0)];
    case 'resonance':
      return [];
  }
};

/** Up and down through the corner, and lengthwise a quarter turn later. */
export const wheelForce = (wheel: Wheel, lengthwise: number): Shape => [
  { entry: cornerOf(wheel), factor: ONE },
  { entry: 'fore-aft', factor: scale(QUARTER_TURN, lengthwise * 0.2) },
];

/** What one weak cylinder adds: all half orders that the even firing does not have. */
const misfireOrders = (vehicle: Vehicle, fault: Fault & { readonly kind: 'misfire' }): OrderPlan['orders'] => {
  const n = vehicle.cylinders ?? 4;
  const strengths = Array.from({ length: n }, (_, i) => (i === fault.cylinder % n ? fault.strength : 1));
  return HALF_ORDERS.filter((o) => (2 * o) % n !== 0).map((order) => ({
    order,
    relative: scale(firingPhasor(strengths, order), cylinderTorque(order) * n),
  }));
};
