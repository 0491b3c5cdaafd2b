/** Random faults that a vehicle can have. Levels are set later, to what a person would feel. */
import type { RandomSource } from '../../src/core/simulate/random.ts';
import { WHEELS } from '../../src/core/simulate/fault.ts';
import type { Fault } from '../../src/core/simulate/fault.ts';
import type { Vehicle } from '../../src/core/vehicle/vehicle.ts';

/** Stated as 1 m/s² until the level is set. */
const UNIT = { levelMps2: 1 };

const tireFault = (random: RandomSource): Fault => {
  const wheel = random.pick(WHEELS);
  const which = random.uniform();
  if (which < 0.4) return { ...UNIT, kind: 'tire-unbalance', wheel };
  if (which < 0.75)
    return {
      ...UNIT,
      kind: 'tire-force-variation',
      wheel,
      orders: [1, random.between(0.1, 0.5), random.between(0.05, 0.3)],
    };
  if (which < 0.9) return { ...UNIT, kind: 'tire-force-variation', wheel, orders: [0.25, 1, random.between(0.1, 0.4)] };
  return { ...UNIT, kind: 'tire-force-variation', wheel, orders: [0.25, 0.2, 1] };
};

const shaftFault = (random: RandomSource, vehicle: Vehicle): Fault => {
  const shaft = vehicle.layout === 'four-wheel-drive' && random.chance(0.4) ? ('front' as const) : ('rear' as const);
  return random.chance(0.5)
    ? { ...UNIT, kind: 'driveshaft-unbalance', shaft }
    : { ...UNIT, kind: 'driveshaft-angle', shaft, coupleShare: random.between(0.1, 0.6) };
};

const engineFault = (random: RandomSource, vehicle: Vehicle): Fault => {
  const which = random.uniform();
  if (which < 0.55)
    return {
      ...UNIT,
      kind: 'misfire',
      cylinder: Math.floor(random.uniform() * (vehicle.cylinders ?? 4)),
      strength: random.between(0, 0.7),
    };
  return which < 0.85 ? { ...UNIT, kind: 'engine-unbalance' } : { ...UNIT, kind: 'firing-through-mounts' };
};

const hasShaft = (vehicle: Vehicle): boolean =>
  vehicle.layout === 'rear-drive' || vehicle.layout === 'four-wheel-drive';

export type FaultGroup = 'tire' | 'shaft' | 'engine' | 'accessory';

/** Groups this vehicle can have a fault in. */
export const groupsOf = (vehicle: Vehicle): readonly FaultGroup[] => [
  'tire',
  ...(hasShaft(vehicle) ? (['shaft'] as const) : []),
  'engine',
  ...((vehicle.accessories ?? []).length > 0 ? (['accessory'] as const) : []),
];

export const drawFault = (random: RandomSource, vehicle: Vehicle, group: FaultGroup): Fault => {
  switch (group) {
    case 'tire':
      return tireFault(random);
    case 'shaft':
      return shaftFault(random, vehicle);
    case 'engine':
      return engineFault(random, vehicle);
    case 'accessory':
      return {
        ...UNIT,
        kind: 'accessory-unbalance',
        accessory: Math.floor(random.uniform() * (vehicle.accessories ?? []).length),
      };
  }
};
