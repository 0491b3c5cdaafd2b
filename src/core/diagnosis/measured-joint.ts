/** Angles, rings and play, as measured, turned into facts about checks. */
import { centringEffect, jointOffset } from '../driveline/centring.ts';
import { judgeEndPlay } from '../driveline/end-play.ts';
import type { JudgedNumber } from '../driveline/limit.ts';
import { judge, limitOf } from '../driveline/limit.ts';
import type {
  DoubleCardanMeasurement,
  EndPlayMeasurement,
  JointPlace,
  PlayMeasurement,
  RideHeightMeasurement,
  RingsMeasurement,
  WorkingAnglesMeasurement,
} from '../driveline/measurement.ts';
import { judgeRings } from '../driveline/ring-seat.ts';
import { workingAngles } from '../driveline/working-angles.ts';
import type { MeasuredFact } from './measured-fact.ts';
import { numberText, type ShaftAtSpeed } from './measured-shaft.ts';

/** Forks further out of line than this, degrees, count as out of phase (common practice, no source). */
const PHASE_LIMIT_DEG = 3;
/** End play over which belief in a tight joint turns, mm: about what a micrometer and a dial leave unsure. */
const TIGHT_BLUR_MM = 0.01;
/** Balance grade the share of the allowance is told in; its choice does not touch the force. */
const GRADE_MMPS = 16;

const worst = (numbers: readonly JudgedNumber[]): JudgedNumber | undefined =>
  numbers.reduce<JudgedNumber | undefined>((a, b) => (a && a.share >= b.share ? a : b), undefined);

const noForce = { forceN: null } as const;

export function angleFacts(measurement: WorkingAnglesMeasurement, { rpm }: ShaftAtSpeed): MeasuredFact[] {
  const { phasingDeg = [], atRideHeight, ...rest } = measurement;
  const facts: MeasuredFact[] = phasingDeg.length === 0 ? [] : [phaseFact(phasingDeg)];
  if (atRideHeight === false) return facts;
  const angles = workingAngles({ ...rest, phasingDeg, driveshaftRpm: rpm });
  if (!angles.ok) return facts;
  const decisive = worst(angles.value.judged);
  if (decisive) facts.push(factOf('working-angles', decisive, 1));
  const halves = worst(angles.value.advisory.filter(({ limit }) => limit.id === 'double-cardan-split'));
  if (halves) facts.push(factOf('double-cardan-play', halves, 1));
  return facts;
}

/** A half turn is the same phase: forks are symmetrical. */
function phaseFact(phasingDeg: readonly number[]): MeasuredFact {
  const twists = phasingDeg.map((twist) => Math.abs(((((twist + 90) % 180) + 180) % 180) - 90));
  const twist = Math.max(...twists);
  const text = `The forks stand ${twist.toFixed(1)}° out of line (limit ${PHASE_LIMIT_DEG}°)`;
  return { checkId: 'phasing-marks', share: twist / PHASE_LIMIT_DEG, text, coverage: 1, ...noForce };
}

export function doubleCardanFacts({ halfAnglesDeg: [one, two] }: DoubleCardanMeasurement): MeasuredFact[] {
  return [factOf('double-cardan-play', judge(Math.abs(one - two), limitOf('double-cardan-split')), 1)];
}

export function rideHeightFacts({ axle, measuredMm, specifiedMm }: RideHeightMeasurement): MeasuredFact[] {
  const number = judge(
    Math.abs(measuredMm - specifiedMm),
    limitOf('ride-height'),
    `${axle} ride height off the figure`,
  );
  return [factOf('ride-height', number, axle === 'rear' ? 0.7 : 0.5)];
}

export function endPlayFacts({ joint, axisPlayMm }: EndPlayMeasurement, shaft: ShaftAtSpeed): MeasuredFact[] {
  const judged = judgeEndPlay(axisPlayMm);
  if (!judged.ok) return [];
  const number = worst(judged.value.axes)!;
  const forceN = offsetForceN(judged.value.freeOffsetMm, joint, shaft);
  return [
    { ...factOf('joint-end-play', { ...number, title: `${joint} joint, ${number.title}` }, 1 / shaft.joints), forceN },
  ];
}

export function ringFacts({ joint, axes }: RingsMeasurement, shaft: ShaftAtSpeed): MeasuredFact[] {
  const judged = judgeRings(axes);
  if (!judged.ok) return [];
  const coverage = Math.min(1, axes.length / 2) / shaft.joints;
  const { axes: seated, judged: numbers } = judged.value;
  const named = (number: JudgedNumber): JudgedNumber => ({ ...number, title: `${joint} joint, ${number.title}` });
  const difference = worst(numbers.filter(({ limit }) => limit.id === 'ring-difference'))!;
  const play = worst(numbers.filter(({ limit }) => limit.id === 'end-play'))!;
  const least = Math.min(...seated.map(({ endPlayMm }) => endPlayMm));
  const forceN = offsetForceN(jointOffset(seated).offsetMm, joint, shaft);
  return [
    { ...factOf('ring-thickness', named(difference), coverage), forceN },
    factOf('joint-end-play', named(play), coverage),
    {
      checkId: 'ring-fit',
      share: Math.exp(-least / TIGHT_BLUR_MM),
      text: `The ${joint} joint’s rings leave ${least.toFixed(3)} mm of end play${least < 0 ? ': it is pressed together' : ''}`,
      coverage,
      ...noForce,
    },
  ];
}

export function playFacts({ place, playMm }: PlayMeasurement): MeasuredFact[] {
  return place === 'slip-yoke'
    ? [factOf('slip-yoke-play', judge(playMm, limitOf('slip-yoke-play')), 1)]
    : [factOf('centre-bearing-inspection', judge(playMm, limitOf('centre-bearing-play')), 0.7)];
}

const factOf = (checkId: MeasuredFact['checkId'], number: JudgedNumber, coverage: number): MeasuredFact => ({
  checkId,
  share: number.share,
  text: numberText(number),
  coverage,
  ...noForce,
});

/** Force in the plane of a joint that holds its piece off centre, N; null where mass or speed is not known. */
function offsetForceN(offsetMm: number, joint: JointPlace, { rpm, massKgAt }: ShaftAtSpeed): number | null {
  const massKg = massKgAt(joint);
  if (rpm === null || massKg === null || rpm <= 0) return null;
  return centringEffect({ offsetMm, massKg, rpm, gradeMmps: GRADE_MMPS }).near.forceN;
}
