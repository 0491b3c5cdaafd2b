/** Putting one correction where weights can actually go: two clamps, two fixed holes, or weights at hand. Derived. */
import { degFromRad, radFromDeg } from '../../units.ts';
import type { Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import type { Complex } from '../../complex.ts';
import { add, angleDegOf, polar, scale, size, subtract, wrapDeg, ZERO } from '../../complex.ts';

/** A weight in a sentence: four figures. */
const figure = (weight: number): string => String(Number(weight.toPrecision(4)));

export interface Placed {
  readonly weight: number;
  readonly angleDeg: number;
}

/**
 * Two equal clamps about the target: ±γ, cos γ = target/(2·clamp).
 * @param clampWeight unbalance or weight of one clamp's screw, in the target's unit
 */
export const splitBetweenClamps = (
  target: Placed,
  clampWeight: number,
): Result<{ readonly spreadDeg: number; readonly clamps: readonly [Placed, Placed] }> => {
  if (!(clampWeight > 0) || !(target.weight >= 0) || target.weight > 2 * clampWeight) {
    return failure({
      code: 'clamps-too-light',
      key: 'clampWeight',
      message: `Two clamps of ${figure(clampWeight)} make at most ${figure(2 * clampWeight)}, and ${figure(target.weight)} is wanted.`,
      remedy: 'Use heavier clamps or a pair more, or correct at a larger radius.',
    });
  }
  const spreadDeg = degFromRad(Math.acos(target.weight / (2 * clampWeight)));
  const clampAt = (angleDeg: number): Placed => ({ weight: clampWeight, angleDeg: wrapDeg(angleDeg) });
  return success({
    spreadDeg,
    clamps: [clampAt(target.angleDeg - spreadDeg), clampAt(target.angleDeg + spreadDeg)],
  });
};

/** A target this near a hole is at the hole. */
const ROUNDING_DEG = 1e-9;

/**
 * Two fixed holes with the target between them, less than half a turn apart:
 * wₐ = R·sin(b − c)/sin(b − a), w_b = R·sin(c − a)/sin(b − a).
 */
export const splitBetweenHoles = (
  target: Placed,
  holeOneDeg: number,
  holeTwoDeg: number,
): Result<readonly [Placed, Placed]> => {
  const apart = wrapDeg(holeTwoDeg - holeOneDeg);
  const toTarget = wrapDeg(target.angleDeg - holeOneDeg);
  // Either way round: the holes may have been given in the other order.
  const forward = apart < 180 && toTarget <= apart + ROUNDING_DEG;
  const backward = apart > 180 && toTarget >= apart - ROUNDING_DEG;
  const atHole = Math.min(toTarget, 360 - toTarget) < ROUNDING_DEG;
  if (apart === 0 || apart === 180 || !(forward || backward || atHole)) {
    return failure({
      code: 'target-not-between-holes',
      key: 'holes',
      message: `The target at ${target.angleDeg.toFixed(1)}° does not lie between holes at ${holeOneDeg.toFixed(1)}° and ${holeTwoDeg.toFixed(1)}°, less than half a turn apart.`,
      remedy: 'Choose the two holes on either side of the target.',
    });
  }
  const sine = Math.sin(radFromDeg(holeTwoDeg - holeOneDeg));
  const one = (target.weight * Math.sin(radFromDeg(holeTwoDeg - target.angleDeg))) / sine;
  const two = (target.weight * Math.sin(radFromDeg(target.angleDeg - holeOneDeg))) / sine;
  return success([
    { weight: one, angleDeg: holeOneDeg },
    { weight: two, angleDeg: holeTwoDeg },
  ]);
};

export interface BestPlacing {
  /** What to put where; empty where leaving things as they are is best. */
  readonly placed: readonly Placed[];
  /** What stays uncorrected, in the target's unit. */
  readonly left: number;
  readonly leftAngleDeg: number;
}

/** A weight more must take off this share of the target to be worth fitting; judgment. */
const WORTH_SHARE = 0.05;
/** More combinations than this are refused rather than let run. */
const MOST_COMBINATIONS = 2_000_000;

/**
 * Best use of weights at hand in places at hand: each place takes none or one of them. Fewer weights are preferred
 * until a weight more takes off a worthwhile share of the target.
 * @param sitesDeg places, degrees
 * @param weights kinds at hand, each as often as wanted
 */
export const placeAvailable = (
  target: Placed,
  sitesDeg: readonly number[],
  weights: readonly number[],
  worthShare = WORTH_SHARE,
): Result<BestPlacing> => {
  const combinations = (weights.length + 1) ** sitesDeg.length;
  if (sitesDeg.length === 0 || weights.length === 0 || combinations > MOST_COMBINATIONS) {
    return failure({
      code: 'placing-not-possible',
      key: 'sites',
      message: `${weights.length} weights in ${sitesDeg.length} places cannot be searched through.`,
      remedy: 'Give at least one weight and one place, and not more places than lie near the target.',
    });
  }
  const wanted = polar(target.weight, target.angleDeg);
  const sites = sitesDeg.map((angleDeg) => polar(1, angleDeg));
  // Best placing for each number of weights.
  const best: { placed: readonly Placed[]; left: number; rest: Complex }[] = [
    { placed: [], left: target.weight, rest: wanted },
  ];
  const visit = (site: number, sum: Complex, placed: readonly Placed[]): void => {
    const rest = subtract(wanted, sum);
    const left = size(rest);
    if (left < (best[placed.length]?.left ?? Infinity)) best[placed.length] = { placed, left, rest };
    for (let next = site; next < sites.length; next++) {
      for (const weight of weights) {
        const withIt = add(sum, scale(sites[next]!, weight));
        visit(next + 1, withIt, [...placed, { weight, angleDeg: sitesDeg[next]! }]);
      }
    }
  };
  visit(0, ZERO, []);
  const chosen = best.find(({ left }, count) =>
    best.slice(count + 1).every((more, index) => left - more.left <= worthShare * target.weight * (index + 1)),
  )!;
  return success({ placed: chosen.placed, left: chosen.left, leftAngleDeg: angleDegOf(chosen.rest) });
};
