/** Road and engine speed as a logger writes them, late and in steps. */
import { kmhFromMps, mphFromMps } from '../units.ts';
import type { RandomSource } from './random.ts';
import type { LogColumns } from './scenario.ts';

/** Fresh values with the time they were written, in the column's own unit. */
export interface LoggedTrack {
  readonly timeS: Float64Array;
  readonly value: Float64Array;
  readonly unit: string;
}

const inUnit = (mps: number, unit: 'km/h' | 'mph' | 'm/s'): number =>
  unit === 'km/h' ? kmhFromMps(mps) : unit === 'mph' ? mphFromMps(mps) : mps;

/** @param speedAt True road speed at a time, m/s. */
export const logSpeed = (
  how: NonNullable<LogColumns['speed']>,
  durationS: number,
  speedAt: (timeS: number) => number,
  random: RandomSource,
): LoggedTrack => {
  const phase = random.uniform() / how.rateHz;
  // One as the recording begins, then every interval from a phase of its own on.
  const count = Math.max(1, Math.floor((durationS - phase) * how.rateHz) + 2);
  const timeS = Float64Array.from({ length: count }, (_, i) => (i === 0 ? 0 : phase + (i - 1) / how.rateHz));
  const value = timeS.map((t) => {
    const shown = inUnit(how.factor * speedAt(Math.max(0, t - how.lagS)) + how.noiseMps * random.normal(), how.unit);
    return how.step > 0 ? Math.round(shown / how.step) * how.step : shown;
  });
  return { timeS, value, unit: how.unit };
};

/** @param rpmAt True engine speed at a time, rev/min. */
export const logEngine = (
  how: NonNullable<LogColumns['engine']>,
  durationS: number,
  rpmAt: (timeS: number) => number,
): LoggedTrack => {
  const count = Math.floor(durationS * how.rateHz) + 1;
  const timeS = Float64Array.from({ length: count }, (_, i) => i / how.rateHz);
  const value = timeS.map((t) => Math.round(rpmAt(Math.max(0, t - how.lagS)) / how.stepRpm) * how.stepRpm);
  return { timeS, value, unit: 'rpm' };
};
