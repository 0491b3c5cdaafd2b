/** How fast wheel and engine turn in a run, and how surely. */
import { success } from '../note.ts';
import type { Result } from '../note.ts';
import { hzFromRpm } from '../units.ts';
import { engineTurnsPerWheelTurn, positive } from './ratios.ts';
import { rollingCircumference } from './rolling.ts';
import { engineSlip, wheelSlipSd } from './slip.ts';
import { speedPrior } from './speed-sources.ts';
import type { LoggedCondition, Vehicle } from './vehicle.ts';

/** Relative standard uncertainties, each by its origin. */
export interface Shares {
  readonly speed: number;
  readonly circumference: number;
  readonly slip: number;
  readonly engine: number;
}

export interface TurningSpeeds {
  /** Null where speed or tire is not known. */
  readonly wheel: { readonly hz: number; readonly shares: Shares } | null;
  /** Null where neither an engine speed nor the gear is known. */
  readonly engine: { readonly hz: number; readonly shares: Shares; readonly tiedToRoad: boolean } | null;
  readonly engineTurnsPerWheelTurn: number | null;
}

export const totalShare = (shares: Shares): number =>
  Math.hypot(shares.speed, shares.circumference, shares.slip, shares.engine);

/** A needle on a 100 or 50 rev/min mark was read to that mark; any other number comes off a screen. */
const readingStepRpm = (rpm: number): number => (rpm % 100 === 0 ? 100 : rpm % 50 === 0 ? 50 : 10);
/** Gauge error of a tachometer, and holding it steady (judgment). */
const ENGINE_HOLD_SD = 0.004;
/** Logged engine speed: 0.25 rev/min steps (SAE J1979), averaged; what is left is its lateness (judgment). */
const ENGINE_LOGGED_SD = 0.002;

const enginePart = (
  vehicle: Vehicle,
  condition: LoggedCondition,
  wheel: TurningSpeeds['wheel'],
  turns: number | null,
  engineLogged: boolean,
): TurningSpeeds['engine'] => {
  const rpm = positive(condition.engineRpm);
  if (rpm !== null) {
    const readSd = readingStepRpm(rpm) / Math.sqrt(12) / rpm;
    const engine = engineLogged
      ? Math.hypot(ENGINE_LOGGED_SD, condition.engineLogSd ?? 0)
      : Math.hypot(readSd, ENGINE_HOLD_SD);
    return { hz: hzFromRpm(rpm), shares: { speed: 0, circumference: 0, slip: 0, engine }, tiedToRoad: false };
  }
  if (wheel === null || turns === null) return null;
  const shares = { ...wheel.shares, engine: engineSlip(vehicle, condition).sd };
  return { hz: wheel.hz * turns, shares, tiedToRoad: true };
};

/**
 * Turning speeds of a run: wheel = speed / circumference; engine as given, else through the gear with no slip.
 *
 * The speed is the expected true one, so below the stated one where it was read from a dial.
 *
 * @returns The Problem of the tire where a tire was given that cannot be read; missing things are null instead.
 */
export const turningSpeeds = (
  vehicle: Vehicle,
  condition: LoggedCondition,
  engineLogged = false,
): Result<TurningSpeeds> => {
  const tire = vehicle.tire === undefined ? null : rollingCircumference(vehicle.tire);
  if (tire !== null && !tire.ok) return tire;
  const stated = positive(condition.speedMps);
  const prior = speedPrior(condition);
  const turns = engineTurnsPerWheelTurn(vehicle, condition);
  let wheel: TurningSpeeds['wheel'] = null;
  if (stated !== null && prior !== null && tire !== null) {
    const { circumferenceM, relativeSd } = tire.value;
    wheel = {
      hz: (stated * prior.centreRelative) / circumferenceM,
      shares: {
        speed: prior.sdRelative / prior.centreRelative,
        circumference: relativeSd,
        slip: wheelSlipSd(condition),
        engine: 0,
      },
    };
  }
  const engine = enginePart(vehicle, condition, wheel, turns, engineLogged);
  return success({ wheel, engine, engineTurnsPerWheelTurn: turns });
};
