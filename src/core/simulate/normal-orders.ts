/**
 * The small orders every sound vehicle has: tire force variation on four wheels, what is left after balancing the
 * shaft, small joint angles, even firing, slightly uneven cylinders, accessories. Levels at 27 m/s in cruise, judgment:
 * below what a seat feels, above what a good recording shows.
 */
import type { Vehicle } from '../vehicle/vehicle.ts';
import { complex } from '../complex.ts';
import { ENGINE_ROLLING, ENGINE_TURNING, wheelForce } from './fault-orders.ts';
import type { AtReference } from './fault-orders.ts';
import type { OrderPlan } from './excitation.ts';
import { WHEELS } from './fault.ts';
import type { RandomSource } from './random.ts';
import type { Turning, TurningId } from './turning.ts';

/** Least and most 0-to-peak level at the sensor, m/s². */
const LEVEL = {
  tire: [0.0015, 0.005],
  shaftOnce: [0.002, 0.01],
  shaftTwice: [0.0015, 0.008],
  firing: [0.005, 0.03],
  crank: [0.0015, 0.008],
  halfOrder: [0.0005, 0.003],
  accessory: [0.001, 0.005],
} as const satisfies Record<string, readonly [number, number]>;

/** Tire harmonics 2, 3, 4 against the first. */
const TIRE_HARMONICS: readonly (readonly [number, number])[] = [
  [1, 1],
  [0.2, 0.7],
  [0.1, 0.5],
  [0.05, 0.35],
];

/**
 * @param parts Turning parts there are. @param random Stream of the vehicle, so that runs of one vehicle share them.
 * @param factor On all levels.
 */
export const normalPlans = (
  vehicle: Vehicle,
  parts: readonly Turning[],
  at: AtReference,
  random: RandomSource,
  factor: number,
): readonly OrderPlan[] => {
  const plans: OrderPlan[] = [];
  const push = (
    part: OrderPlan['part'],
    turning: TurningId,
    order: number,
    level: number,
    shape: OrderPlan['shape'],
    speedExponent: number,
    torqueShare: number,
  ): void => {
    const { turnHz, torque } = at(turning);
    const phase = 2 * Math.PI * random.uniform();
    plans.push({
      origin: 'normal',
      part,
      turning,
      orders: [{ order, relative: complex(Math.cos(phase), Math.sin(phase)) }],
      levelOrder: order,
      levelMps2: level * factor,
      referenceHz: turnHz,
      referenceTorque: torque,
      shape,
      speedExponent,
      torqueShare,
    });
  };
  for (const wheel of WHEELS) {
    const first = random.logBetween(...LEVEL.tire);
    TIRE_HARMONICS.forEach(([low, high], i) =>
      push('tire', wheel, i + 1, first * random.between(low, high), wheelForce(wheel, 0.4), 0.6, 0),
    );
  }
  for (const part of parts) {
    if (part.id === 'rear-shaft' || part.id === 'front-shaft') {
      push('driveshaft', part.id, 1, random.logBetween(...LEVEL.shaftOnce), SHAFT_ROUND, 2, 0);
      push('driveshaft', part.id, 2, random.logBetween(...LEVEL.shaftTwice), SHAFT_UP, 1, 0.5);
    }
    if (part.id === 'engine') pushEngine(vehicle, random, push);
    if (part.id.startsWith('accessory'))
      push('accessory', part.id, 1, random.logBetween(...LEVEL.accessory), ENGINE_TURNING, 2, 0);
  }
  return plans;
};

const SHAFT_ROUND: OrderPlan['shape'] = [
  { entry: 'shaft-side', factor: complex(1) },
  { entry: 'shaft-up', factor: complex(0, -1) },
];
const SHAFT_UP: OrderPlan['shape'] = [
  { entry: 'shaft-up', factor: complex(1) },
  { entry: 'shaft-side', factor: complex(0.3) },
];

type Push = (
  part: OrderPlan['part'],
  turning: TurningId,
  order: number,
  level: number,
  shape: OrderPlan['shape'],
  speedExponent: number,
  torqueShare: number,
) => void;

const pushEngine = (vehicle: Vehicle, random: RandomSource, push: Push): void => {
  push('engine', 'engine', 1, random.logBetween(...LEVEL.crank), ENGINE_TURNING, 1, 0);
  if (vehicle.layout === 'electric') return;
  const firing = (vehicle.cylinders ?? 4) / 2;
  const level = random.logBetween(...LEVEL.firing);
  push('engine', 'engine', firing, level, ENGINE_ROLLING, 0, 0.6);
  push('engine', 'engine', 2 * firing, level * random.between(0.1, 0.4), ENGINE_ROLLING, 0, 0.6);
  for (let order = 0.5; order < firing; order += 0.5)
    push('engine', 'engine', order, random.logBetween(...LEVEL.halfOrder), ENGINE_ROLLING, 0, 0.6);
};
