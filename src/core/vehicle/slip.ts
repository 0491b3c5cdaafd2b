/** Slip between road and wheel, and between wheel and engine. */
import type { Load, RunCondition, Vehicle } from './vehicle.ts';

/**
 * Driven wheels turn 0.5…1.5 % faster than they roll at steady cruise (common practice). Free wheels do not, and the
 * same scale serves both, so the slip is not added to the frequency but to its uncertainty.
 */
const WHEEL_SLIP_SD: Readonly<Record<Load, number>> = {
  cruise: 0.003,
  pull: 0.01,
  coast: 0.003,
  neutral: 0.002,
  brake: 0.01,
  standing: 0.003,
};

/** Relative standard uncertainty of the wheel's turning speed from slip. */
export const wheelSlipSd = (condition: RunCondition): number => {
  // The diagnostic socket's speed is itself counted from turning parts.
  if (condition.speedSource === 'obd') return 0;
  return WHEEL_SLIP_SD[condition.load ?? 'cruise'];
};

/** One-sided slip of a torque converter: how much faster the engine turns than the gears say. */
export interface EngineSlip {
  /** Least and greatest (engine − turbine)/engine. */
  readonly least: number;
  readonly most: number;
  /** Relative standard uncertainty it adds to an engine speed computed through the gear with no slip. */
  readonly sd: number;
}

/** An open converter at cruise slips up to about 3 % (common practice); locked it does not slip at all. */
const CRUISE_MOST = 0.03;
/** Under a hard pull a converter opens further (judgment). */
const PULL_MOST = 0.08;

/** Root-mean-square of a slip spread evenly over 0…most, since the frequency is computed with none. */
const rmsOfEven = (most: number): number => most / Math.sqrt(3);

/** Slip to reckon with between gear and engine. */
export const engineSlip = (vehicle: Vehicle, condition: RunCondition): EngineSlip => {
  if (vehicle.layout === 'electric' || vehicle.converter === false) return { least: 0, most: 0, sd: 0 };
  const most = condition.load === 'pull' ? PULL_MOST : CRUISE_MOST;
  // With lock-up the slip is often nil: half the probability stands there when it is not known whether there is one.
  return { least: 0, most, sd: vehicle.converter === true ? rmsOfEven(most) : rmsOfEven(most) / Math.SQRT2 };
};
