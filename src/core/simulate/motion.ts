/** How the road speed runs over time. */
import type { RandomSource } from './random.ts';
import type { RampShape, SpeedProgram } from './scenario.ts';
import { smoothWander } from './slow-process.ts';

/** Air drag equals rolling drag at this speed, m/s (usual for cars, from memory); shapes the coast-down. */
const EQUAL_DRAG_MPS = 20;
/** Drift is drawn on this grid and joined by straight lines, s. */
const DRIFT_STEP_S = 0.05;

/** Speed of a ramp at the share `u` (0..1) of its time, m/s. */
export const rampSpeed = (shape: RampShape, fromMps: number, toMps: number, u: number): number => {
  switch (shape) {
    case 'linear':
      return fromMps + (toMps - fromMps) * u;
    case 'coast': {
      // dv/dt = −c·(1 + (v/v0)²) has the solution v = v0·tan(θ), θ falling evenly.
      const start = Math.atan(fromMps / EQUAL_DRAG_MPS);
      const end = Math.atan(toMps / EQUAL_DRAG_MPS);
      return EQUAL_DRAG_MPS * Math.tan(start + (end - start) * u);
    }
    case 'pull':
      return Math.sqrt(fromMps * fromMps + (toMps * toMps - fromMps * fromMps) * u);
    case 'ease':
      return fromMps + (toMps - fromMps) * u * u * (3 - 2 * u);
    case 'stages': {
      const early = Math.tanh((u - 0.3) / 0.12);
      const late = Math.tanh((u - 0.75) / 0.1);
      const share = (early + late - Math.tanh(-0.3 / 0.12) - Math.tanh(-0.75 / 0.1)) / 4;
      const all = (Math.tanh(0.7 / 0.12) + Math.tanh(0.25 / 0.1) - Math.tanh(-0.3 / 0.12) - Math.tanh(-0.75 / 0.1)) / 4;
      return fromMps + ((toMps - fromMps) * share) / all;
    }
  }
};

/** Mean speed a program aims at, m/s. */
export const programMeanMps = (program: SpeedProgram): number => {
  if (program.kind === 'steady') return program.meanMps;
  let sum = 0;
  for (let i = 0; i < 200; i++) sum += rampSpeed(program.shape, program.fromMps, program.toMps, (i + 0.5) / 200);
  return sum / 200;
};

/**
 * Speed at each time step, m/s.
 * @param random Draws the drift.
 */
export const speedHistory = (
  program: SpeedProgram,
  count: number,
  stepS: number,
  random: RandomSource,
): Float64Array => {
  const duration = count * stepS;
  const wander = smoothWander(program.driftTimeS, DRIFT_STEP_S, random);
  const drift = Float64Array.from({ length: Math.ceil(duration / DRIFT_STEP_S) + 2 }, () => wander());
  // The driver holds the aim on the whole: what is left is drift about it.
  const mean = drift.reduce((a, b) => a + b, 0) / drift.length;
  const out = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const at = (i * stepS) / DRIFT_STEP_S;
    const k = Math.floor(at);
    const now = drift[k]! - mean + (at - k) * (drift[k + 1]! - drift[k]!);
    const aim =
      program.kind === 'steady' ? program.meanMps : rampSpeed(program.shape, program.fromMps, program.toMps, i / count);
    out[i] = Math.max(0, aim * (1 + program.driftSd * now));
  }
  return out;
};
