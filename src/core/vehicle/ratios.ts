/** Ratios between wheel, driveshaft and crankshaft. All kinematic identities. */
import type { RunCondition, Vehicle } from './vehicle.ts';

/** Smaller or greater is no speed or ratio of a vehicle, and would only overflow further on. */
const LEAST = 1e-6;
const MOST = 1e9;

/** The number where it can be a speed or ratio, else null: a form may hand over nothing, zero or not-a-number. */
export const positive = (value: number | undefined): number | null =>
  value !== undefined && value >= LEAST && value <= MOST ? value : null;

/** The number where it is a count from 1 up, else null. */
export const counted = (value: number | undefined): number | null =>
  value !== undefined && Number.isInteger(value) && value >= 1 && value <= MOST ? value : null;

/** A ratio is quoted to two decimals; teeth that give it within this are the exact ratio. */
const ROUNDING = 0.004;

/** Ring over pinion teeth (i = z_ring/z_pinion); null where a count is missing. */
const toothRatio = (vehicle: Vehicle): number | null => {
  const ring = counted(vehicle.ringTeeth);
  const pinion = counted(vehicle.pinionTeeth);
  return ring === null || pinion === null ? null : ring / pinion;
};

/** The ratio by the teeth where it is the given one unrounded or none is given, else the given one. */
const exactRatio = (given: number | null, vehicle: Vehicle): number | null => {
  const byTeeth = toothRatio(vehicle);
  if (given === null || byTeeth === null) return given ?? byTeeth;
  return Math.abs(byTeeth / given - 1) < ROUNDING ? byTeeth : given;
};

/** True where tooth counts and given ratio contradict each other. */
export const teethContradictRatio = (vehicle: Vehicle): boolean => {
  const given = positive(vehicle.layout === 'front-drive' ? vehicle.finalDrive : vehicle.axleRatio);
  const byTeeth = toothRatio(vehicle);
  return given !== null && byTeeth !== null && Math.abs(byTeeth / given - 1) >= ROUNDING;
};

/** Driveshaft turns per wheel turn: ring over pinion teeth where they agree with the given ratio or stand alone. */
export const axleRatioOf = (vehicle: Vehicle): number | null =>
  hasDriveshaft(vehicle) ? exactRatio(positive(vehicle.axleRatio), vehicle) : null;

/**
 * Front driveshaft turns per wheel turn of a four-wheel drive: its own ratio where another is given, else the rear's.
 * Teeth are the rear's: where both axles were given one figure they must not make two of it.
 */
export const frontAxleRatioOf = (vehicle: Vehicle): number | null => {
  if (vehicle.layout !== 'four-wheel-drive') return null;
  const given = positive(vehicle.frontAxleRatio);
  return given === null || given === positive(vehicle.axleRatio) ? axleRatioOf(vehicle) : given;
};

/** By what share the ratios of a four-wheel drive's axles differ; null where not both were given. */
export const axleRatiosApart = (vehicle: Vehicle): number | null => {
  const [front, rear] = [positive(vehicle.frontAxleRatio), axleRatioOf(vehicle)];
  if (vehicle.layout !== 'four-wheel-drive' || front === null || rear === null) return null;
  return Math.abs((frontAxleRatioOf(vehicle) ?? front) / rear - 1);
};

/** From this share on locked axles fight each other; common practice, no source. */
export const AXLES_APART = 0.01;

export const hasDriveshaft = (vehicle: Vehicle): boolean =>
  vehicle.layout === 'rear-drive' || vehicle.layout === 'four-wheel-drive';

/** Transmission output (or electric motor) turns per wheel turn; null where a ratio is missing. */
const outputTurnsPerWheelTurn = (vehicle: Vehicle): number | null => {
  if (hasDriveshaft(vehicle)) {
    const axle = axleRatioOf(vehicle);
    return axle === null ? null : axle * (positive(vehicle.transferRatio) ?? 1);
  }
  // An electric reduction has two stages, so one pair of tooth counts does not make its ratio.
  if (vehicle.layout === 'electric') return positive(vehicle.finalDrive);
  return exactRatio(positive(vehicle.finalDrive), vehicle);
};

/**
 * Crankshaft (or motor) turns per wheel turn with nothing slipping; null where the gear or a ratio is not known, and
 * in neutral.
 *
 * Rear and four-wheel drive: axle × transfer case × gear; front drive: final drive × gear; electric: the reduction.
 */
export const engineTurnsPerWheelTurn = (vehicle: Vehicle, condition: RunCondition): number | null => {
  const output = outputTurnsPerWheelTurn(vehicle);
  if (output === null) return null;
  if (vehicle.layout === 'electric') return output;
  if (condition.load === 'neutral' || condition.load === 'standing') return null;
  const gear = positive(condition.gearRatio) ?? onlyGear(vehicle);
  return gear === null ? null : output * gear;
};

const onlyGear = (vehicle: Vehicle): number | null =>
  vehicle.gearRatios?.length === 1 ? positive(vehicle.gearRatios[0]) : null;
