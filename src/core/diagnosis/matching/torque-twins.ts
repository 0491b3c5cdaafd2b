/**
 * A half-shaft and the tires turn at one rate, and no frequency tells a tripod joint's three pushes a turn from a tire's.
 * The torque does: a joint pushes in proportion to it, a tire does not ask. So runs driven under different torque at
 * about one speed part the two by how the level went along.
 */
import { normalLogDensity, normalTail } from '../../signal/numeric/distributions.ts';
import { aliasOfHz } from '../../vehicle/alias.ts';
import type { Load } from '../../vehicle/vehicle.ts';
import { limitAt } from '../origins/absence.ts';
import type { RunInference } from './infer-run.ts';
import type { Match, OriginShare } from './match.ts';
import type { Origin } from '../origins/origin.ts';
import { expectedPlace } from './place.ts';
import { LIKE_SPEEDS } from '../speeds-apart.ts';
import { OWN_FROM } from './tone-of-order.ts';

/** Torque at the wheels over that of a cruise, and how well that is known (ln). Judgment. */
const TORQUE: Readonly<Partial<Record<Load, number>>> = { pull: 2.5, cruise: 1, coast: 0.4, neutral: 0.15 };
const TORQUE_SD = 0.6;
/** Spread of ln(level) of what does not ask for torque, from run to run; its growth with the square of the speed is taken out. */
const REPEAT_SD = 0.35;
/** No pair of runs says more than this. Judgment. */
const STRONGEST = 100;

const ORDER = 3;
const isTripod = ({ line }: Origin): boolean => line.part === 'half-shaft' && line.order === ORDER;
const isJoint = ({ origin }: OriginShare): boolean => isTripod(origin);
const isTire = ({ origin: { line } }: OriginShare): boolean => line.part === 'tire' && line.order === ORDER;

/** True where a run asks less of a joint than a cruise does: that it is quiet there says nothing against its being worn. */
export const restsUnder = (origin: Origin, load: Load | undefined): boolean =>
  isTripod(origin) && load !== undefined && (load === 'brake' || (TORQUE[load] ?? 1) < 1);

/** What a run says of the level that the two make together. */
interface LevelUnder {
  readonly torque: number;
  readonly speedMps: number;
  readonly logLevel: number;
  /** Only known to be less. */
  readonly hidden: boolean;
}

const levelUnder = (inference: RunInference): LevelUnder | null => {
  const { run, matches, origins } = inference;
  const { load, speedMps } = run.condition;
  const torque = load && TORQUE[load];
  if (!torque || !speedMps) return null;
  const theirs = matches.filter(
    ({ lines }) =>
      lines.filter((share) => isJoint(share) || isTire(share)).reduce((sum, { probability }) => sum + probability, 0) >
      OWN_FROM,
  );
  const level = theirs.reduce((most, { tone }) => Math.max(most, tone.peak.amplitudeMps2), 0);
  if (level > 0) return { torque, speedMps, logLevel: Math.log(level), hidden: false };
  const joint = origins.find(isTripod);
  if (!joint) return null;
  const hz = aliasOfHz(expectedPlace(inference, joint).hz, run.prepared.samplingRateHz);
  return { torque, speedMps, logLevel: Math.log(limitAt(run.limit, hz)), hidden: true };
};

/** Likelihood ratio of two levels, going with the torque over not asking for it. */
const ratioOf = (a: LevelUnder, b: LevelUnder): number => {
  if (a.torque === b.torque || (a.hidden && b.hidden)) return 1;
  const speeds = Math.log(a.speedMps / b.speedMps);
  if (Math.abs(speeds) > LIKE_SPEEDS) return 1;
  const [seen, other] = a.hidden ? [b, a] : [a, b];
  const drop = seen.logLevel - other.logLevel;
  const withTorque = { mean: Math.log(seen.torque / other.torque), sd: Math.SQRT2 * TORQUE_SD };
  const without = { mean: seen === a ? 2 * speeds : -2 * speeds, sd: Math.SQRT2 * REPEAT_SD };
  const likelihood = ({ mean, sd }: { mean: number; sd: number }): number =>
    other.hidden ? normalTail((drop - mean) / sd) : Math.exp(normalLogDensity((drop - mean) / sd)) / sd;
  const ratio = likelihood(withTorque) / Math.max(1e-300, likelihood(without));
  return Math.min(STRONGEST, Math.max(1 / STRONGEST, ratio));
};

/** A pair of runs that moves the odds less than this is not worth a sentence. */
const TOLD = 3;

/**
 * Why a tone at the common rate is held to be the joint's, or a tire's, by another run under other torque; null where that
 * says nothing for it.
 */
export const torqueReason = (chosen: OriginShare, own: RunInference, other: RunInference): string | null => {
  if (!isJoint(chosen) && !isTire(chosen)) return null;
  const [here, there] = [levelUnder(own), levelUnder(other)];
  if (!here || !there || here.hidden) return null;
  const ratio = ratioOf(here, there);
  if (isJoint(chosen) ? ratio < TOLD : ratio > 1 / TOLD) return null;
  const percent = `${(100 * Math.exp(there.logLevel - here.logLevel)).toFixed(0)} %`;
  const level = `In ${other.run.name} it has ${there.hidden ? 'less than ' : ''}${percent} of the level under other torque`;
  return isJoint(chosen)
    ? `${level}: it goes with the torque, as a tripod joint does and a tire does not.`
    : `${level}: it does not go with the torque, as a tripod joint would.`;
};

/** Joint and tire where a match holds both in the same way: seen directly, or each as an image. */
export const twinsIn = ({ lines }: Match): { joint: OriginShare; tire: OriginShare } | null => {
  for (const joint of lines.filter(isJoint)) {
    const tire = lines.find((share) => isTire(share) && share.image === joint.image);
    if (tire) return { joint, tire };
  }
  return null;
};

/** The match with the odds of joint against tire moved, their sum kept. */
const moved = (match: Match, ratio: number): Match => {
  const twins = twinsIn(match);
  if (!twins) return match;
  const { joint, tire } = twins;
  const both = joint.probability + tire.probability;
  const share = (joint.probability * ratio) / (joint.probability * ratio + tire.probability);
  const lines = match.lines
    .map((line) => {
      if (line === joint) return { ...line, probability: both * share };
      return line === tire ? { ...line, probability: both * (1 - share) } : line;
    })
    .sort((a, b) => b.probability - a.probability);
  return { ...match, lines };
};

/** All runs with joint and tire weighed by how their common level went with the torque. */
export const byTorque = (inferences: readonly RunInference[]): readonly RunInference[] => {
  const levels = inferences.map(levelUnder).filter((level) => level !== null);
  let ratio = 1;
  levels.forEach((a, i) => levels.slice(i + 1).forEach((b) => (ratio *= ratioOf(a, b))));
  ratio = Math.min(STRONGEST, Math.max(1 / STRONGEST, ratio));
  if (ratio === 1) return inferences;
  return inferences.map((inference) => ({
    ...inference,
    matches: inference.matches.map((match) => moved(match, ratio)),
  }));
};
