/**
 * The vehicle's body as the sensor knows it: resonances in the usual bands, each moving the sensor in its own
 * direction, and ports through which forces enter. Drawn at random around usual values, one draw a vehicle.
 *
 * Bands: body bounce and wheel hop come from the corner model; the others (power unit on its mounts 6–16 Hz, driveline
 * surge 2–8, first body bending 18–30, steering column 25–40, power unit and axle bending 60–200, tire cavity 190–250)
 * are usual figures from memory.
 */
import type { RandomSource } from './random.ts';
import type { Resonance } from './modes.ts';
import type { QuarterCar } from './quarter-car.ts';
import { USUAL_CORNER } from './quarter-car.ts';

/** Where forces enter. Corner forces act on the wheel; 'fore-aft' is what the wheels pass on lengthwise. */
export const PORTS = [
  'suspension',
  'fore-aft',
  'shaft-side',
  'shaft-up',
  'engine-roll',
  'engine-up',
  'shaker',
] as const;
export type Port = (typeof PORTS)[number];

export interface BodyMode extends Resonance {
  /** Acceleration at the sensor per unit of the mode's own, body axes. */
  readonly direction: readonly [number, number, number];
  /** How much of each port's force drives it, per kg. */
  readonly share: Readonly<Record<Port, number>>;
}

export interface Body {
  readonly corner: QuarterCar;
  /** Soft mounts between engine and body. */
  readonly mount: Resonance;
  readonly modes: readonly BodyMode[];
  /** Acceleration at the sensor of the body as one piece, per N at each port, body axes. */
  readonly rigid: Readonly<Record<Port, readonly [number, number, number]>>;
  /** Weight of each corner's sprung acceleration at the sensor, front-left, front-right, rear-left, rear-right. */
  readonly cornerWeight: readonly [number, number, number, number];
}

interface Band {
  readonly low: number;
  readonly high: number;
  readonly towards: readonly [number, number, number];
  readonly ports: readonly Port[];
}

const BANDS: readonly Band[] = [
  { low: 2.5, high: 7, towards: [1, 0.1, 0.2], ports: ['fore-aft', 'shaft-up'] },
  { low: 7, high: 15, towards: [0.2, 0.5, 1], ports: ['engine-up', 'engine-roll', 'suspension'] },
  { low: 18, high: 30, towards: [0.2, 0.2, 1], ports: ['suspension', 'engine-up', 'shaft-up', 'fore-aft'] },
  { low: 20, high: 32, towards: [0.2, 1, 0.4], ports: ['suspension', 'engine-roll', 'shaft-side'] },
  { low: 25, high: 40, towards: [0.6, 0.7, 0.6], ports: ['suspension', 'fore-aft', 'engine-roll'] },
  { low: 40, high: 60, towards: [0.3, 0.4, 1], ports: ['suspension', 'shaft-up', 'engine-up'] },
  { low: 60, high: 110, towards: [0.3, 1, 0.6], ports: ['shaft-side', 'shaft-up', 'engine-roll'] },
  { low: 110, high: 200, towards: [0.3, 0.5, 1], ports: ['shaft-side', 'shaft-up', 'engine-up', 'suspension'] },
  { low: 190, high: 250, towards: [0.4, 0.4, 1], ports: ['suspension', 'fore-aft'] },
];

const BODY_KG = 1600;
/** A band's own ports drive it this strongly; the others by a tenth. Relative to the whole body's mass. */
const OWN_SHARE = [0.15, 0.6] as const;

/** Draws one vehicle's body. */
export const drawBody = (random: RandomSource): Body => {
  const modes = BANDS.map((band): BodyMode => {
    const direction = unit(band.towards.map((c) => c * (0.5 + random.uniform()) * (random.chance(0.5) ? 1 : -1)));
    const share = {} as Record<Port, number>;
    for (const port of PORTS) {
      const own = random.between(...OWN_SHARE) * (random.chance(0.5) ? 1 : -1);
      share[port] = port === 'shaker' ? 0 : (own * (band.ports.includes(port) ? 1 : 0.1)) / BODY_KG;
    }
    return {
      frequencyHz: random.between(band.low, band.high),
      damping: random.logBetween(0.025, 0.09),
      direction,
      share,
    };
  });
  const tilt = (): number => 0.25 * random.normal();
  const near = (x: number, y: number, z: number): [number, number, number] => [
    (x + tilt()) / BODY_KG,
    (y + tilt()) / BODY_KG,
    (z + tilt()) / BODY_KG,
  ];
  const front = random.between(0.35, 0.6);
  const left = random.between(0.4, 0.6);
  return {
    corner: { ...USUAL_CORNER, damperNspm: random.between(1100, 1900), unsprungKg: random.between(35, 48) },
    mount: { frequencyHz: random.between(8, 13), damping: random.between(0.06, 0.15) },
    modes,
    rigid: {
      suspension: [0, 0, 0],
      'fore-aft': near(1, 0, 0.1),
      'shaft-side': near(0, 1, 0.1),
      'shaft-up': near(0.1, 0, 1),
      'engine-roll': near(0.1, 0.8, 0.5),
      'engine-up': near(0.1, 0.1, 1),
      shaker: unit([random.normal(), random.normal(), random.normal()]),
    },
    cornerWeight: [front * left, front * (1 - left), (1 - front) * left, (1 - front) * (1 - left)],
  };
};

const unit = (v: readonly number[]): [number, number, number] => {
  const length = Math.hypot(...v) || 1;
  return [v[0]! / length, v[1]! / length, v[2]! / length];
};
