/** Random vehicles: what the job says of them, and how they really are. */
import type { RandomSource } from '../../src/core/simulate/random.ts';
import type { Layout, Vehicle } from '../../src/core/vehicle/vehicle.ts';

export interface DrawnVehicle {
  readonly vehicle: Vehicle;
  /** By the size, 3.05 times the outer diameter, and as it really is, m. */
  readonly nominalM: number;
  readonly trueM: number;
  /** Gear in use at a cruise. */
  readonly gearRatio: number;
  readonly converterSlip: number;
  readonly speedMps: number;
}

/** Size as written, outer diameter in mm by width, aspect and rim (or as the flotation number says). */
const metric = (prefix: string, width: number, aspect: number, rim: number): readonly [string, number] => [
  `${prefix}${width}/${aspect}R${rim}`,
  25.4 * rim + (2 * width * aspect) / 100,
];
const CAR_TIRES = [
  metric('', 185, 65, 15),
  metric('', 195, 65, 15),
  metric('', 205, 55, 16),
  metric('P', 215, 60, 16),
  metric('', 225, 50, 17),
  metric('', 235, 45, 18),
  metric('P', 225, 65, 17),
];
const TRUCK_TIRES = [
  metric('P', 245, 70, 16),
  metric('', 265, 70, 17),
  metric('LT', 245, 75, 16),
  metric('', 275, 60, 20),
  metric('', 255, 70, 18),
  ['31x10.50R15LT', 25.4 * 31] as const,
  ['33x12.50R15LT', 25.4 * 33] as const,
];
const AXLES = [2.73, 3.08, 3.21, 3.42, 3.55, 3.73, 3.91, 4.1, 4.3];
const FINAL_DRIVES = [3.39, 3.63, 3.83, 3.94, 4.06, 4.31];
const GEARS = [4.17, 2.34, 1.52, 1.28, 1.14, 0.92, 0.87, 0.81, 0.74, 0.69, 0.63];
/** Engine speed a driver cruises at, rev/min. */
const CRUISE_RPM = [1250, 2900] as const;
/** Pulley ratios by name. */
const ACCESSORIES = [
  { name: 'alternator', ratio: [2.3, 3.1] },
  { name: 'water pump', ratio: [0.95, 1.35] },
  { name: 'power steering pump', ratio: [1.05, 1.5] },
] as const;

/** Not within 2.5 % of an engine order, which no analysis could part from it while the engine's own speed is unsure. */
const pulleyRatio = (random: RandomSource, low: number, high: number): number => {
  for (;;) {
    const ratio = Math.round(1000 * random.between(low, high)) / 1000;
    if (Math.abs(2 * ratio - Math.round(2 * ratio)) > 0.05 * ratio) return ratio;
  }
};

export interface VehicleWish {
  readonly layouts?: readonly Layout[];
  /** Direct gear, 1.00. */
  readonly direct?: boolean;
  readonly accessories?: boolean;
}

export const drawVehicle = (random: RandomSource, wish: VehicleWish = {}): DrawnVehicle => {
  const layout =
    wish.layouts !== undefined
      ? random.pick(wish.layouts)
      : random.pick([
          'rear-drive',
          'rear-drive',
          'rear-drive',
          'front-drive',
          'front-drive',
          'four-wheel-drive',
        ] as const);
  const [size, diameterMm] = random.pick(
    layout === 'front-drive' ? CAR_TIRES : random.chance(0.7) ? TRUCK_TIRES : CAR_TIRES,
  );
  const nominalM = (3.05 * diameterMm) / 1000;
  const flotation = size.includes('x') ? random.between(0, 15) / diameterMm : 0;
  const off = Math.max(-0.025, Math.min(0.025, -0.003 + 0.009 * random.normal()));
  const trueM = nominalM * (1 + off - flotation);
  const ratio = random.pick(layout === 'front-drive' ? FINAL_DRIVES : AXLES);
  const cylinders = random.pick(layout === 'front-drive' ? [3, 4, 4, 6] : [4, 6, 8, 8]);
  const speedMps = random.between(19.5, 33.5);
  const rpmOf = (gear: number): number => (60 * gear * ratio * speedMps) / trueM;
  const fitting = (wish.direct ? [1] : GEARS).filter((g) => rpmOf(g) > CRUISE_RPM[0] && rpmOf(g) < CRUISE_RPM[1]);
  const gearRatio = fitting.length > 0 ? random.pick(fitting) : wish.direct ? 1 : 0.74;
  const converter = random.chance(0.65);
  const locked = wish.direct || !converter || random.chance(0.55);
  const accessories =
    (wish.accessories ?? random.chance(0.4))
      ? ACCESSORIES.filter(() => random.chance(0.7)).map((a) => ({
          name: a.name,
          ratio: pulleyRatio(random, a.ratio[0], a.ratio[1]),
        }))
      : [];
  const vehicle: Vehicle = {
    tire: { kind: 'size', size },
    layout,
    ...(layout === 'front-drive' ? { finalDrive: ratio } : { axleRatio: ratio }),
    gearRatios: wish.direct ? [2.74, 1.57, 1] : GEARS,
    cylinders,
    converter,
    ...(accessories.length > 0 && { accessories }),
  };
  return { vehicle, nominalM, trueM, gearRatio, converterSlip: locked ? 0 : random.between(0.005, 0.03), speedMps };
};
