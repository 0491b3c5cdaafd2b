/**
 * What road texture and wind do above the wheel-hop band: a broadband force on the body, growing with speed and with
 * the road's roughness. The corner model passes almost nothing there, since its tire is a spring on one point.
 */
import { mountFilter, runningFilter } from './modes.ts';
import type { RandomSource } from './random.ts';

/** Force density, N²/Hz, one-sided, on a class A road (16e-6 m³) at 27 m/s. Gives 0.05..0.1 m/s² rms to 100 Hz. Judgment. */
const DENSITY_N2_PER_HZ = 20;
const AT_ROAD_M3 = 16e-6;
const AT_SPEED_MPS = 27;
/** The least there is on the smoothest road, by wind and engine, as a road roughness. */
const LEAST_M3 = 1e-6;
/** Rubber and bushings pass little above this, Hz. */
const CORNER_HZ = 220;

/** @returns A function that gives two independent forces, N, one time step after another. */
export const makeRoar = (
  roadM3: number,
  rateHz: number,
  random: RandomSource,
): ((speedMps: number, out: Float64Array) => void) => {
  const sd = Math.sqrt((DENSITY_N2_PER_HZ * (roadM3 + LEAST_M3) * rateHz) / (2 * AT_ROAD_M3));
  const corner = { frequencyHz: CORNER_HZ, damping: 0.7 };
  const up = runningFilter(mountFilter(corner, rateHz));
  const lengthwise = runningFilter(mountFilter(corner, rateHz));
  return (speedMps, out) => {
    const size = (sd * speedMps) / AT_SPEED_MPS;
    out[0] = up(size * random.normal());
    out[1] = lengthwise(size * random.normal());
  };
};
