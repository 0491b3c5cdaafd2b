/**
 * The forces of all orders over time. Each part's angle is summed from its own speed, step by step; amplitudes wander
 * slowly and are renewed once a block of a few milliseconds.
 */
import type { Excitation } from './excitation.ts';
import { forceFactor } from './excitation.ts';
import { PORTS } from './body.ts';
import type { RandomSource } from './random.ts';
import { smoothWander } from './slow-process.ts';
import type { Entry } from './transfer.ts';
import type { Turning } from './turning.ts';
import { turningHz } from './turning.ts';

/** Corners 0..3 come first, then the ports. */
export const ENTRY_COUNT = 4 + PORTS.length;
const entryIndex = (entry: Entry): number => (typeof entry === 'number' ? entry : 4 + PORTS.indexOf(entry));

/** Wander of an order's amplitude about its mean: relative standard deviation, and time constants drawn from these, s. */
const AMPLITUDE_WANDER = 0.08;
const AMPLITUDE_TIME_S = [3, 12] as const;
const TORQUE_WANDER = 0.12;
const TORQUE_TIME_S = 5;

export interface OrderForces {
  /** Renews amplitudes and speeds for the block that begins at the one speed and ends at the other. */
  readonly startBlock: (speedMps: number, endSpeedMps: number) => void;
  /** Adds all forces of one time step at the given road speed into `forces` (one number an entry) and moves on. */
  readonly step: (speedMps: number, forces: Float64Array) => void;
  /** Turning speed of a part in this block over what road speed and ratios alone would make it. */
  readonly relativeSpeed: (part: Turning) => number;
}

/** The orders of one turning part, gathered by entry and harmonic of the part's base. */
interface PartTerms {
  readonly part: Turning;
  readonly entry: Int32Array;
  readonly harmonic: Int32Array;
  readonly re: Float64Array;
  readonly im: Float64Array;
  readonly harmonics: number;
  readonly own: boolean;
  readonly speedWander: { value: number };
  readonly members: readonly Member[];
  angle: number;
  perStep: number;
  meanStep: number;
  turnRe: number;
  turnIm: number;
  pointerRe: number;
  pointerIm: number;
}

interface Member {
  readonly excitation: Excitation;
  readonly wander: () => number;
  /** Place in the part's lists of each of the excitation's forces. */
  readonly slots: readonly number[];
}

/**
 * @param torqueShare Mean drive torque, share of full.
 * @param streams Named random sources; the same names whichever faults are present.
 */
export const orderForces = (
  parts: readonly Turning[],
  excitations: readonly Excitation[],
  torqueShare: number,
  blockSteps: number,
  stepS: number,
  streams: (name: string) => RandomSource,
): OrderForces => {
  const blockS = blockSteps * stepS;
  const speedWanders = new Map<string, { value: number; readonly next: () => number }>();
  const speedWanderOf = (part: Turning): { value: number; readonly next: () => number } => {
    const key = part.wanderWith || part.id;
    const known = speedWanders.get(key);
    if (known !== undefined) return known;
    const fresh = { value: 0, next: smoothWander(part.wanderTimeS, blockS, streams(`speed of ${key}`)) };
    speedWanders.set(key, fresh);
    return fresh;
  };
  for (const part of parts) speedWanderOf(part);
  const all = parts
    .map((part) => gather(part, excitations, blockS, streams, speedWanderOf(part)))
    .filter((p) => p.members.length > 0);
  const most = Math.max(1, ...all.map((p) => p.harmonics));
  const cosH = new Float64Array(most + 1).fill(1);
  const sinH = new Float64Array(most + 1);
  const torqueWander = smoothWander(TORQUE_TIME_S, blockS, streams('torque'));

  const startBlock = (speedMps: number, endSpeedMps: number): void => {
    const torque = torqueShare * (1 + TORQUE_WANDER * torqueWander());
    for (const wander of speedWanders.values()) wander.value = wander.next();
    for (const p of all) renew(p, (speedMps + endSpeedMps) / 2, torque, stepS);
  };
  const step = (speedMps: number, forces: Float64Array): void => {
    for (let k = 0; k < all.length; k++) advance(all[k]!, speedMps, forces, cosH, sinH);
  };
  const relativeSpeed = (part: Turning): number => 1 + part.wander * speedWanderOf(part).value;
  return { startBlock, step, relativeSpeed };
};

const gather = (
  part: Turning,
  excitations: readonly Excitation[],
  blockS: number,
  streams: (name: string) => RandomSource,
  speedWander: { value: number },
): PartTerms => {
  const mine = excitations.filter((e) => e.turning === part.id);
  const keyOf = (e: Excitation, entry: Entry): number => entryIndex(entry) * 1000 + Math.round(e.order / part.base);
  const keys = [...new Set(mine.flatMap((e) => e.forces.map((f) => keyOf(e, f.entry))))].sort((a, b) => a - b);
  const seen = new Map<string, number>();
  const members = mine.map((e): Member => {
    const key = `amplitude ${e.origin} ${e.turning} ${e.order}`;
    const repeat = seen.get(key) ?? 0;
    seen.set(key, repeat + 1);
    const random = streams(`${key} ${repeat}`);
    const wander = smoothWander(random.between(...AMPLITUDE_TIME_S), blockS, random);
    return { excitation: e, wander, slots: e.forces.map((f) => keys.indexOf(keyOf(e, f.entry))) };
  });
  return {
    part,
    entry: Int32Array.from(keys, (k) => Math.floor(k / 1000)),
    harmonic: Int32Array.from(keys, (k) => k % 1000),
    re: new Float64Array(keys.length),
    im: new Float64Array(keys.length),
    harmonics: Math.max(1, ...keys.map((k) => k % 1000)),
    own: part.perMetre === null,
    speedWander,
    members,
    angle: 2 * Math.PI * streams(`angle of ${part.id}`).uniform(),
    perStep: 0,
    meanStep: 0,
    turnRe: 1,
    turnIm: 0,
    pointerRe: 1,
    pointerIm: 0,
  };
};

const renew = (p: PartTerms, speedMps: number, torque: number, stepS: number): void => {
  const relative = 1 + p.part.wander * p.speedWander.value;
  p.perStep = 2 * Math.PI * stepS * p.part.base * relative * (p.part.perMetre ?? p.part.ownHz);
  p.meanStep = p.own ? p.perStep : p.perStep * speedMps;
  p.turnRe = Math.cos(p.meanStep);
  p.turnIm = Math.sin(p.meanStep);
  p.pointerRe = Math.cos(p.angle);
  p.pointerIm = Math.sin(p.angle);
  const turnHz = turningHz(p.part, speedMps) * relative;
  p.re.fill(0);
  p.im.fill(0);
  for (const member of p.members) {
    const size = Math.max(0.3, 1 + AMPLITUDE_WANDER * member.wander()) * forceFactor(member.excitation, turnHz, torque);
    member.slots.forEach((slot, i) => {
      const { forceN } = member.excitation.forces[i]!;
      p.re[slot] = p.re[slot]! + size * forceN.re;
      p.im[slot] = p.im[slot]! + size * forceN.im;
    });
  }
};

/**
 * Force Re(F·e^(jhθ)) of every term. Within a block the pointer e^(jθ) is turned by the block's mean step and the small
 * rest of this step, exact to the square of the rest; each block starts anew from the angle itself.
 */
const advance = (
  p: PartTerms,
  speedMps: number,
  forces: Float64Array,
  cosH: Float64Array,
  sinH: Float64Array,
): void => {
  const { entry, harmonic, re, im, pointerRe: c1, pointerIm: s1 } = p;
  let c = c1;
  let s = s1;
  cosH[1] = c;
  sinH[1] = s;
  for (let h = 2; h <= p.harmonics; h++) {
    const next = c * c1 - s * s1;
    s = s * c1 + c * s1;
    c = next;
    cosH[h] = c;
    sinH[h] = s;
  }
  const count = entry.length;
  for (let i = 0; i < count;) {
    const e = entry[i]!;
    let force = 0;
    while (i < count && entry[i] === e) {
      const h = harmonic[i]!;
      force += re[i]! * cosH[h]! - im[i]! * sinH[h]!;
      i++;
    }
    forces[e] = forces[e]! + force;
  }
  const turned = p.own ? p.perStep : p.perStep * speedMps;
  p.angle += turned;
  const rest = turned - p.meanStep;
  const cr = c1 - rest * s1;
  const sr = s1 + rest * c1;
  p.pointerRe = cr * p.turnRe - sr * p.turnIm;
  p.pointerIm = sr * p.turnRe + cr * p.turnIm;
};
