/** Measurements of angles, rings and play, judged. */
import type { Note, Result } from '../../note.ts';
import { success } from '../../note.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import { centringEffect, jointOffset } from '../rings/centring.ts';
import { judgeEndPlay } from '../rings/end-play.ts';
import type { BenchConditions, JudgedMeasurement, Prediction } from './judged-measurement.ts';
import { judgedAs } from './judged-measurement.ts';
import type { JudgedNumber } from '../limits/limit.ts';
import { judge, limitOf } from '../limits/limit.ts';
import type * as m from '../measurement.ts';
import { ringRemedy } from '../rings/ring-remedy.ts';
import { judgeRings } from '../rings/ring-seat.ts';
import { pieceAtJoint, pieceMassKg } from '../shaft-tube.ts';
import { workingAngles } from '../angles/working-angles.ts';

export const judgeAngleMeasurement = (
  measurement: m.WorkingAnglesMeasurement,
  { driveshaftRpm, limits }: BenchConditions,
): Result<JudgedMeasurement> => {
  const angles = workingAngles({ ...measurement, driveshaftRpm, limits });
  if (!angles.ok) return angles;
  const { judged, advisory, verdict, notes, residual, inertiaDrive, inertiaCoast } = angles.value;
  if (measurement.atRideHeight === false) {
    const text =
      'The suspension hung when the angles were taken, so they say nothing of the road. Measure at ride height.';
    const hung = { code: 'not-at-ride-height', severity: 'warning', text } as const;
    return success(judgedAs('working-angles', 'working-angles', [], { notes: [hung] }));
  }
  const ripples = [
    ['residual, at the far end', residual],
    ['inertia on drive', inertiaDrive],
    ['inertia on coast', inertiaCoast],
  ] as const;
  const predicted = ripples.flatMap(([where, { accelerationRadPerS2 }]): Prediction[] =>
    accelerationRadPerS2 === null
      ? []
      : [
          {
            part: 'driveshaft',
            order: 2,
            quantity: 'acceleration',
            value: accelerationRadPerS2,
            unit: 'rad/s²',
            where,
          },
        ],
  );
  return success(judgedAs('working-angles', 'working-angles', judged, { verdict, advisory, notes, predicted }));
};

export const judgeDoubleCardan = (
  { halfAnglesDeg: [front, rear] }: m.DoubleCardanMeasurement,
  { limits }: BenchConditions,
): JudgedMeasurement =>
  judgedAs('double-cardan', 'double-cardan', [judge(Math.abs(front - rear), limitOf('double-cardan-split', limits))]);

export const judgeRideHeight = (
  { axle, measuredMm, specifiedMm }: m.RideHeightMeasurement,
  { limits }: BenchConditions,
): JudgedMeasurement => {
  const title = `${axle} ride height off the maker’s figure`;
  return judgedAs('ride-height', 'ride-height', [
    judge(Math.abs(measuredMm - specifiedMm), limitOf('ride-height', limits), title),
  ]);
};

export const judgeRadialPlay = ({ place, playMm }: m.PlayMeasurement, { limits }: BenchConditions): JudgedMeasurement =>
  judgedAs('radial-play', 'radial-play', [
    judge(Math.abs(playMm), limitOf(place === 'slip-yoke' ? 'slip-yoke-play' : 'center-bearing-play', limits)),
  ]);

/** End play lets the shaft's end sit half the play off center: the force that would make at speed. */
export const judgeEndPlayMeasurement = (
  { joint, axisPlayMm }: m.EndPlayMeasurement,
  vehicle: Vehicle,
  conditions: BenchConditions,
): Result<JudgedMeasurement> => {
  const judged = judgeEndPlay(axisPlayMm, conditions.limits);
  if (!judged.ok) return judged;
  const effect = offsetEffect(judged.value.freeOffsetMm, joint, vehicle, conditions);
  return success(judgedAs('end-play', 'end-play', judged.value.axes, effect));
};

const JOINT_TIGHT: Note = {
  code: 'joint-tight',
  severity: 'warning',
  text: 'The parts need more room than the grooves leave: the joint is tight and will bind.',
};
const NO_END_PLAY: Note = {
  code: 'no-end-play',
  severity: 'warning',
  text: 'The rings leave less end play than a joint needs to move freely: it may bind. Feel it by hand before it runs.',
};

const remedyNotes = (axes: readonly m.RingAxis[], limits: BenchConditions['limits']): Note[] => {
  const text = ringRemedy(axes, limits);
  return text === null ? [] : [{ code: 'ring-remedy', severity: 'info', text }];
};

export const judgeRingsMeasurement = (
  { joint, axes }: m.RingsMeasurement,
  vehicle: Vehicle,
  conditions: BenchConditions,
): Result<JudgedMeasurement> => {
  const judged = judgeRings(axes, conditions.limits);
  if (!judged.ok) return judged;
  const { judged: numbers, tight, axes: seated } = judged.value;
  return success(
    judgedAs('rings', 'rings', numbers, {
      verdict: judged.value.inside ? 'inside' : 'outside',
      ...offsetEffect(jointOffset(seated).offsetMm, joint, vehicle, conditions),
      notes: [
        ...(tight ? [JOINT_TIGHT] : numbers.some(({ limit }) => limit.id === 'end-play-least') ? [NO_END_PLAY] : []),
        ...remedyNotes(axes, conditions.limits),
      ],
    }),
  );
};

interface OffsetEffect {
  readonly predicted: readonly Prediction[];
  /** Share of the near plane's allowance; to know, as rings and play have their own limits. */
  readonly advisory: readonly JudgedNumber[];
}

/** Forces in both planes of a piece held off center at one joint; nothing where speed or mass is not known. */
const offsetEffect = (
  offsetMm: number,
  joint: m.JointPlace,
  vehicle: Vehicle,
  { driveshaftRpm: rpm, limits }: BenchConditions,
): OffsetEffect => {
  const piece = pieceAtJoint(vehicle, joint);
  const mass = piece === undefined ? null : pieceMassKg(piece);
  if (rpm === null || rpm <= 0 || mass === null) return { predicted: [], advisory: [] };
  const gradeMmps = limitOf('driveshaft-grade', limits).value;
  const { near, far } = centringEffect({ offsetMm, massKg: mass.massKg, rpm, gradeMmps });
  const force = (value: number, where: string): Prediction => ({
    part: 'driveshaft',
    order: 1,
    quantity: 'force',
    value,
    unit: 'N',
    where,
  });
  return {
    predicted: [force(near.forceN, `at the ${joint} joint`), force(far.forceN, 'at the other end of the piece')],
    advisory: [judge(near.shareOfAllowance, limitOf('unbalance-share', limits))],
  };
};
