/** Working angles of a driveline: true angles, what cancels, what is left, and how that stands against the limits. */
import type { Note, Result } from '../../note.ts';
import { failure, success } from '../../note.ts';
import { radPerSFromRpm } from '../../units.ts';
import type { AngleChain, AngleSetup } from './angle-chain.ts';
import { angleChain } from './angle-chain.ts';
import { judgeAngles } from './angle-limits.ts';
import { angleProblem } from './angle-problems.ts';
import { isFrontShaft } from './driveline-names.ts';
import { withForksInLine } from './forks.ts';
import type { Ripple, RippleAtSpeed } from './joint-chain.ts';
import { chainRipple, handResidualDeg } from './joint-chain.ts';
import type { JudgedNumber, LimitOverrides } from '../limits/limit.ts';
import type { SecondaryCouple } from './secondary-couple.ts';
import { secondaryCouple } from './secondary-couple.ts';
import type { JointKind } from '../../vehicle/vehicle.ts';

export interface WorkingAnglesInput extends AngleSetup {
  /** Driveshaft speed at the complaint, rev/min; null where it is not known. */
  readonly driveshaftRpm: number | null;
  /** Torque in the driveshaft, N·m, and the span of the bearings it works on, mm; for the secondary couple. */
  readonly torqueNm?: number | undefined;
  readonly bearingSpanMm?: number | undefined;
  readonly limits?: LimitOverrides | undefined;
}

export interface WorkingAngles {
  readonly driveshaftRpm: number | null;
  readonly joints: readonly {
    readonly kind: JointKind;
    readonly angleDeg: number;
    /** Angles of the crosses inside: one, two halves, or none. */
    readonly crossAnglesDeg: readonly number[];
    readonly planeTurnDeg: number;
    readonly couple: SecondaryCouple | null;
  }[];
  /** Unevenness of each shaft piece: while the front end of the driveline turns steadily, and while the rear does. */
  readonly pieces: readonly { readonly fromFront: RippleAtSpeed; readonly fromRear: RippleAtSpeed }[];
  /** What is left at the far end: the torsional residual. */
  readonly residual: RippleAtSpeed;
  /** The same by the squared-angle rule worked by hand, degrees. */
  readonly handResidualDeg: number;
  /**
   * Most uneven piece while driving (the engine's end steady: the front one, of a front driveshaft the rear one) and
   * while coasting (the axle's end steady). One piece: its one joint.
   */
  readonly inertiaDrive: RippleAtSpeed;
  readonly inertiaCoast: RippleAtSpeed;
  /** Numbers that decide, and numbers to know. */
  readonly judged: readonly JudgedNumber[];
  readonly advisory: readonly JudgedNumber[];
  /** Speed at which the residual reaches its limit, rev/min; null where there is no residual. */
  readonly residualLimitRpm: number | null;
  readonly verdict: 'inside' | 'outside' | 'cannot-tell';
  readonly notes: readonly Note[];
}

/**
 * Work out a driveline.
 * @returns a problem where readings are missing, too many, or not angles
 */
export const workingAngles = (input: WorkingAnglesInput): Result<WorkingAngles> => {
  const wrong = angleProblem(input) ?? speedProblem(input);
  if (wrong !== null) return failure(wrong);
  const chain = angleChain(input);
  const { driveshaftRpm, torqueNm, bearingSpanMm } = input;
  const atSpeed = (ripple: Ripple): RippleAtSpeed => ({
    ...ripple,
    accelerationRadPerS2:
      driveshaftRpm === null ? null : ripple.peakAccelerationRatio * radPerSFromRpm(driveshaftRpm) ** 2,
  });
  const pieces = chain.joints.slice(1).map((_, index) => ({
    fromFront: atSpeed(chainRipple(crossesBetween(chain, 0, index + 1))),
    fromRear: atSpeed(chainRipple(crossesBetween(chain, index + 1, chain.joints.length))),
  }));
  const residual = atSpeed(chainRipple(chain.crosses));
  const fromFront = mostUneven(pieces.map((piece) => piece.fromFront)) ?? residual;
  const fromRear = mostUneven(pieces.map((piece) => piece.fromRear)) ?? residual;
  // The end that the engine turns steadily: on a front driveshaft, whose pinion comes first, it is the rear one.
  const [inertiaDrive, inertiaCoast] = isFrontShaft(input.shafts) ? [fromRear, fromFront] : [fromFront, fromRear];
  const residualInLine = chainRipple(angleChain(withForksInLine(input)).crosses);
  const facts = { chain, residual, inertiaDrive, inertiaCoast, residualInLine };
  const judgment = judgeAngles(facts, input);
  return success({
    driveshaftRpm,
    joints: chain.joints.map(({ kind, angleDeg, planeTurnDeg, crosses }) => ({
      kind,
      angleDeg,
      planeTurnDeg,
      crossAnglesDeg: crosses.map((cross) => cross.angleDeg),
      couple:
        torqueNm === undefined || crosses.length === 0
          ? null
          : secondaryCouple(torqueNm, Math.max(...crosses.map((cross) => cross.angleDeg)), bearingSpanMm),
    })),
    pieces,
    residual,
    handResidualDeg: handResidualDeg(chain.crosses),
    inertiaDrive: facts.inertiaDrive,
    inertiaCoast: facts.inertiaCoast,
    ...judgment,
  });
};

/** Peak residual acceleration, rad/s², at each of these driveshaft speeds: it grows with speed squared. */
export const residualOverSpeeds = (
  residual: Ripple,
  driveshaftRpms: readonly number[],
): { readonly rpm: number; readonly accelerationRadPerS2: number }[] =>
  driveshaftRpms.map((rpm) => ({
    rpm,
    accelerationRadPerS2: residual.peakAccelerationRatio * radPerSFromRpm(rpm) ** 2,
  }));

const crossesBetween = (chain: AngleChain, from: number, to: number) =>
  chain.joints.slice(from, to).flatMap((joint) => joint.crosses);

const mostUneven = (ripples: readonly RippleAtSpeed[]): RippleAtSpeed | undefined =>
  ripples.reduce<RippleAtSpeed | undefined>(
    (most, ripple) => (most === undefined || ripple.doubleAmplitudeRad > most.doubleAmplitudeRad ? ripple : most),
    undefined,
  );

const speedProblem = ({ driveshaftRpm, torqueNm, bearingSpanMm }: WorkingAnglesInput) => {
  const wrong = [driveshaftRpm ?? 0, torqueNm ?? 0].some((value) => !Number.isFinite(value));
  if (!wrong && (driveshaftRpm ?? 0) >= 0 && (bearingSpanMm ?? 1) > 0) return null;
  return {
    code: 'speed-not-a-number',
    key: 'driveshaftRpm',
    message: 'The driveshaft speed, the torque or the bearing span is not a usable number.',
    remedy: 'Give the driveshaft speed in rev/min, the torque in N·m and the span in mm, or leave them out.',
  };
};
