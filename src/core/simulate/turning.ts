/**
 * What turns, and how fast. Each part is either tied to the road (turns per metre) or runs by itself (turns per
 * second); its angle is the running sum of its own speed, so every order of it keeps its phase.
 */
import type { Load, Vehicle } from '../vehicle/vehicle.ts';
import type { Wheel } from './fault.ts';
import { WHEELS } from './fault.ts';
import type { Drive, Scenario } from './scenario.ts';
import type { RandomSource } from './random.ts';

export type TurningId = Wheel | 'rear-shaft' | 'front-shaft' | 'engine' | `accessory-${number}` | `tone-${number}`;

export interface Turning {
  readonly id: TurningId;
  /** Turns per metre of road, or null where it does not follow the road. */
  readonly perMetre: number | null;
  /** Turns per second where it does not follow the road. */
  readonly ownHz: number;
  /** Relative wander of its speed about that, and its time constant: converter slip, idle, a pump's load. */
  readonly wander: number;
  readonly wanderTimeS: number;
  /** Parts with the same name wander together (an accessory with its engine). */
  readonly wanderWith: string;
  /** Smallest fraction of a turn its orders come in: 0.5 for a four-stroke engine. */
  readonly base: number;
}

/** Share of full drive torque in each load. Judgment. */
export const TORQUE_SHARE: Readonly<Record<Load, number>> = {
  cruise: 0.35,
  pull: 1,
  coast: -0.25,
  neutral: 0,
  brake: -0.3,
  standing: 0,
};
/** Slip of the driven tires at full torque (about 0.35 % at cruise; trade figure 0.5..1.5 % under way). */
const FULL_TORQUE_SLIP = 0.01;

/** No road is quite straight: left and right wheels differ by this, relative (bends of 1500 m radius). */
const CURVE_WANDER = 0.0005;
const CURVE_TIME_S = 3;

/** The wheels' true circumferences for one vehicle, m, in the order of WHEELS. */
export const wheelCircumferences = (scenario: Scenario, random: RandomSource): readonly number[] => {
  const off = WHEELS.map(() => random.normal() * (scenario.wheelSpread ?? 0.002));
  const mean = off.reduce((a, b) => a + b, 0) / off.length;
  return off.map((o) => scenario.rollingCircumferenceM * (1 + o - mean));
};

const drivenWheels = (vehicle: Vehicle): readonly number[] => {
  switch (vehicle.layout) {
    case 'rear-drive':
    case 'electric':
      return [2, 3];
    case 'front-drive':
      return [0, 1];
    case 'four-wheel-drive':
      return [0, 1, 2, 3];
  }
};

/**
 * All turning parts of a run. Differentials are open: a shaft turns with the mean of its two wheels.
 * @param circumferencesM In the order of WHEELS.
 */
export const turningParts = (
  vehicle: Vehicle,
  drive: Drive,
  circumferencesM: readonly number[],
): readonly Turning[] => {
  const driven = drivenWheels(vehicle);
  const slip = FULL_TORQUE_SLIP * TORQUE_SHARE[drive.load];
  const steady = { ownHz: 0, wander: 0, wanderTimeS: 1, wanderWith: '', base: 1 };
  const wheels = circumferencesM.map((c, i) => (driven.includes(i) ? (1 + slip) / c : 1 / c));
  const parts: Turning[] = WHEELS.map((id, i) => ({
    ...steady,
    id,
    perMetre: wheels[i]!,
    wander: (i % 2 === 0 ? -1 : 1) * CURVE_WANDER,
    wanderTimeS: CURVE_TIME_S,
    wanderWith: 'curve',
  }));
  const rear = (wheels[2]! + wheels[3]!) / 2;
  const front = (wheels[0]! + wheels[1]!) / 2;
  const hasShaft = vehicle.layout === 'rear-drive' || vehicle.layout === 'four-wheel-drive';
  if (hasShaft && vehicle.axleRatio !== undefined) {
    parts.push({ ...steady, id: 'rear-shaft', perMetre: rear * vehicle.axleRatio });
    if (vehicle.layout === 'four-wheel-drive')
      parts.push({ ...steady, id: 'front-shaft', perMetre: front * (vehicle.frontAxleRatio ?? vehicle.axleRatio) });
  }
  const input = inputPerMetre(vehicle, drive, rear, front);
  const converterSlip = drive.converterSlip ?? 0;
  const engine: Turning =
    input === null
      ? {
          ...steady,
          id: 'engine',
          perMetre: null,
          ownHz: (drive.idleRpm ?? 750) / 60,
          wander: 0.006,
          wanderTimeS: 2,
          wanderWith: 'engine',
          base: 0.5,
        }
      : {
          ...steady,
          id: 'engine',
          perMetre: input / (1 - converterSlip),
          wander: converterSlip * 0.3,
          wanderTimeS: 6,
          wanderWith: 'engine',
          base: 0.5,
        };
  if (vehicle.layout !== 'electric' || input !== null) parts.push(engine);
  (vehicle.accessories ?? []).forEach((accessory, i) => {
    const perMetre = engine.perMetre === null ? null : engine.perMetre * accessory.ratio;
    parts.push({ ...engine, id: `accessory-${i}`, perMetre, ownHz: engine.ownHz * accessory.ratio, base: 1 });
  });
  return parts;
};

/** Transmission input (or motor) turns per metre, or null out of gear. */
const inputPerMetre = (vehicle: Vehicle, drive: Drive, rear: number, front: number): number | null => {
  if (vehicle.layout === 'electric') return vehicle.finalDrive === undefined ? null : rear * vehicle.finalDrive;
  if (drive.gearRatio === undefined || drive.load === 'neutral' || drive.load === 'standing') return null;
  if (vehicle.layout === 'front-drive')
    return vehicle.finalDrive === undefined ? null : front * vehicle.finalDrive * drive.gearRatio;
  if (vehicle.axleRatio === undefined) return null;
  return rear * vehicle.axleRatio * (vehicle.transferRatio ?? 1) * drive.gearRatio;
};

/** Turns per second at a road speed. */
export const turningHz = (part: Turning, speedMps: number): number =>
  part.perMetre === null ? part.ownHz : part.perMetre * speedMps;
