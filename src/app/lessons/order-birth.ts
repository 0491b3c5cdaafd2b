/** The pull of a turning shaft: a heavy spot once a turn, a push twice a turn, and both sorted by the spectrum. */
import { forceOfUnbalanceN } from '../../core/driveline/balance/balance-grade.ts';
import { interpolateHann } from '../../core/signal/numeric/peak-interpolation.ts';
import type { AmplitudeSpectrum } from '../../core/signal/spectra/spectrum.ts';
import { welchAmplitude } from '../../core/signal/spectra/welch.ts';
import { hzFromRpm, radFromDeg } from '../../core/units.ts';
import type { Point } from '../plot/plot.ts';
import { sampled } from './sampled.ts';

export interface ShaftPull {
  readonly rpm: number;
  /** Heavy spot, g·mm. */
  readonly unbalanceGmm: number;
  /** Size of the push twice a turn, N. */
  readonly pushN: number;
}

export interface PullParts {
  readonly spotN: number;
  readonly pushN: number;
  readonly totalN: number;
}

/** Upward pull when the heavy spot stands at this angle from the top. */
export function pullAt({ rpm, unbalanceGmm, pushN }: ShaftPull, angleDeg: number): PullParts {
  const spot = forceOfUnbalanceN(unbalanceGmm, rpm) * Math.cos(radFromDeg(angleDeg));
  const push = pushN * Math.cos(2 * radFromDeg(angleDeg));
  return { spotN: spot, pushN: push, totalN: spot + push };
}

/** Greatest pull there can be: both at their peak. Steps in which the picture's axis grows start from it. */
export const greatestPullN = ({ rpm, unbalanceGmm, pushN }: ShaftPull): number =>
  forceOfUnbalanceN(unbalanceGmm, rpm) + pushN;

/** Pull over two turns, every 5°. */
export function pullTraces(pull: ShaftPull): Readonly<Record<keyof PullParts, readonly Point[]>> {
  const angles = Array.from({ length: 145 }, (_, index) => 5 * index);
  const of = (part: keyof PullParts): Point[] => angles.map((angle) => [angle, pullAt(pull, angle)[part]]);
  return { spotN: of('spotN'), pushN: of('pushN'), totalN: of('totalN') };
}

const RATE_HZ = 512;
const SAMPLES = 4096;

/** Eight seconds of the pull through the analysis. Its values are newtons here, whatever the name says. */
export function pullSpectrum(pull: ShaftPull): AmplitudeSpectrum {
  const degPerS = 360 * hzFromRpm(pull.rpm);
  const motion = sampled(RATE_HZ, SAMPLES, (timeS) => pullAt(pull, degPerS * timeS).totalN);
  return welchAmplitude(motion, { segmentLength: SAMPLES });
}

export interface FoundLine {
  readonly frequencyHz: number;
  readonly order: number;
  readonly forceN: number;
}

/** Lines that stand in the spectrum, read from it alone and divided by the turning speed. */
export function linesIn({ amplitudeMps2: level, stepHz }: AmplitudeSpectrum, rpm: number): FoundLine[] {
  const least = Math.max(...level) * 1e-3;
  const found: FoundLine[] = [];
  for (let bin = 1; bin < level.length - 1; bin++) {
    const here = level[bin] ?? 0;
    if (here <= least || here <= (level[bin - 1] ?? 0) || here < (level[bin + 1] ?? 0)) continue;
    const { bin: place, gain } = interpolateHann(level, bin);
    const frequencyHz = place * stepHz;
    found.push({ frequencyHz, order: frequencyHz / hzFromRpm(rpm), forceN: here * gain });
  }
  return found;
}
