/**
 * A pull-up or coast-down found blind: the path of one base frequency whose multiples stand out of the noise frame by
 * frame. A hidden Markov model: the evidence is a proper likelihood ratio against noise, so that the probability of
 * noise reaching a ratio of R is at most 1/R (Ville's inequality, J. Ville, Étude critique de la notion de collectif,
 * 1939), as far as the noise is what the floor says.
 */
import { steadiestPath } from '../numeric/best-path.ts';
import type { Blocks } from '../prepare/blocks.ts';
import type { SpeedTrack } from './equal-angle.ts';
import { smoothPath } from '../numeric/smooth-path.ts';
import { frameEnergies, type FrameEnergies } from '../noise/frame-energies.ts';

export interface RampSearch {
  /** Frequencies that may be present over the base frequency (orders of the wheel, say). */
  readonly multiples: readonly number[];
  /** Range the base frequency may run through, Hz. */
  readonly lowestBaseHz: number;
  readonly highestBaseHz: number;
  readonly highestHz: number;
}

export interface FoundRamp {
  readonly track: SpeedTrack;
  /** ln likelihood ratio of the moving path over both no lines and lines that stand still. */
  readonly logRatio: number;
}

/** Step of the base frequency, relative. */
const STEP = 0.0025;
/** Greatest change of the speed per second, relative: hard braking from town speed is more, and no test drive. */
const MOST_CHANGE_PER_S = 0.08;
/** Typical change per second of a pull or a coast, for the start. */
const USUAL_CHANGE_PER_S = 0.02;
/** Probability that the rate changes by 0, 1, 2, 3 steps each way from frame to frame. */
const RATE_CHANGE = [0.6, 0.14, 0.045, 0.015] as const;
/** Frames: short for quick ramps, longer for slow ones. */
const FRAME_LENGTHS_S = [1, 2] as const;
/** Prior probability that a given multiple is there in a given frame, and strengths it may have, over the noise. */
const PRESENT = 0.1;
const STRENGTHS = [3, 10, 30, 100] as const;
const FULL_EVIDENCE = 12;
/** Lowest frequency in which a multiple counts, Hz: below, the road moves the body. */
const LOWEST_HZ = 4;
/** Overlapped frames repeat each other. */
const WORTH = 0.66;

/** ln of the ratio 'this multiple may be here' over 'noise' for an energy over all axes: Gaussian line of some strength. */
const evidenceOf = (energy: number, axes: number): number => {
  let sum = 0;
  for (const g of STRENGTHS) sum += Math.exp(Math.min(500, (energy * g) / (1 + g)) - axes * Math.log1p(g));
  const log = Math.log(1 - PRESENT + (PRESENT * sum) / STRENGTHS.length);
  // One strong line must not outvote the rest, but its top must stay the top.
  return log <= FULL_EVIDENCE ? log : FULL_EVIDENCE + Math.log1p(log - FULL_EVIDENCE + Math.log1p(energy));
};

/** Multiples less than 2 % apart would count one line twice. */
export const apart = (multiples: readonly number[]): number[] => {
  const kept: number[] = [];
  for (const multiple of [...multiples].sort((a, b) => a - b))
    if (kept.length === 0 || multiple > 1.02 * kept[kept.length - 1]!) kept.push(multiple);
  return kept;
};

/** Bins of a frame (padded twice) that the main lobe of a line fills to each side. */
const LOBE = 4;

/** Evidence of each bin; beside the top of a lobe it falls with the root of the power, so that a strong line is narrow. */
const sharpened = ({ energy, bins }: FrameEnergies, axes: number): Float64Array => {
  const none = Math.log(1 - PRESENT);
  return energy.map((e, i) => {
    if (e <= 1.5) return none;
    const evidence = evidenceOf(e, axes);
    if (evidence <= 0) return evidence;
    const row = i - (i % bins);
    let top = e;
    for (let k = Math.max(row, i - LOBE); k <= Math.min(row + bins - 1, i + LOBE); k++) top = Math.max(top, energy[k]!);
    return evidence * Math.sqrt(e / top);
  });
};

const baseEvidence = (frames: FrameEnergies, axes: number, search: RampSearch, states: number): Float64Array => {
  const multiples = apart(search.multiples);
  const count = frames.timeS.length;
  const table = new Float64Array(count * states);
  // Evidence per bin first: each is read by many bases.
  const perBin = sharpened(frames, axes);
  for (let s = 0; s < states; s++) {
    const base = search.lowestBaseHz * (1 + STEP) ** s;
    for (const m of multiples) {
      const hz = m * base;
      if (hz < LOWEST_HZ || hz > search.highestHz) continue;
      const bin = Math.round(hz / frames.stepHz);
      if (bin >= frames.bins) continue;
      for (let f = 0; f < count; f++) table[f * states + s]! += WORTH * perBin[f * frames.bins + bin]!;
    }
  }
  return table;
};

const searchWith = (blocks: Blocks, search: RampSearch, lengthS: number): FoundRamp | null => {
  const frames = frameEnergies(blocks, lengthS, LOWEST_HZ, search.highestHz);
  const count = frames.timeS.length;
  if (count < 6) return null;
  const states = Math.ceil(Math.log(search.highestBaseHz / search.lowestBaseHz) / Math.log1p(STEP)) + 1;
  const table = baseEvidence(frames, blocks.axisCount, search, states);
  const perHop = frames.hopS / STEP;
  const most = Math.min(60, Math.max(1, Math.round(MOST_CHANGE_PER_S * perHop)));
  const usual = Math.max(1, USUAL_CHANGE_PER_S * perHop);
  const start = Float64Array.from({ length: most + 1 }, (_, r) => r / usual);
  const norm = Math.log(start.reduce((sum, c, r) => sum + (r === 0 ? 1 : 2) * Math.exp(-c), 0));
  const path = steadiestPath(
    table,
    states,
    most,
    Float64Array.from(RATE_CHANGE, (p) => -Math.log(p)),
    start.map((c) => c + norm),
  );
  let still = -Infinity;
  for (let s = 0; s < states; s++) {
    let sum = 0;
    for (let f = 0; f < count; f++) sum += table[f * states + s]!;
    still = Math.max(still, sum);
  }
  const relative = Float64Array.from(path.states, (s) => search.lowestBaseHz * (1 + STEP) ** s);
  return {
    track: { timeS: frames.timeS, relative },
    // Both pay for the choice of where to begin; the moving path has paid for its moves.
    logRatio: path.score - Math.max(still, 0) - Math.log(states),
  };
};

/** A state read by its frame alone is off by a few steps, at random: relative standard deviation. */
const STATE_SD = 0.006;
/** Roughness of the speed's rate, per s³, from a coast to a foot that comes and goes. */
const ROUGHNESSES = [1e-8, 1e-7, 1e-6, 1e-5, 1e-4, 1e-3] as const;
/** Spread at the start of the speed (ln) and of its rate (per s). */
const START_SD = { speed: 1, rate: 0.1 } as const;

/** The states' path as smooth as it is likely to be: no vehicle's speed jumps by a percent from frame to frame. */
const smoothed = ({ timeS, relative }: SpeedTrack): SpeedTrack => {
  const middle = Math.log(relative[relative.length >> 1]!);
  const readings = Array.from(timeS, (t, k) => ({
    timeS: t,
    component: 1 as const,
    value: Math.log(relative[k]!) - middle,
    variance: STATE_SD ** 2,
  }));
  const { value } = smoothPath(readings, ROUGHNESSES, [0, START_SD.speed, START_SD.rate]);
  return { timeS, relative: value.map((v) => Math.exp(middle + v)) };
};

/** The likelier of the searches with short and longer frames; relative speed is left as the base frequency in Hz. */
export const findRamp = (blocks: Blocks, search: RampSearch): FoundRamp | null => {
  const found = FRAME_LENGTHS_S.map((lengthS) => searchWith(blocks, search, lengthS)).filter((ramp) => ramp !== null);
  if (found.length === 0) return null;
  const best = found.reduce((one, other) => (other.logRatio > one.logRatio ? other : one));
  return { ...best, track: smoothed(best.track) };
};
