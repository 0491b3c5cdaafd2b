/** Working angles as the bench shows them: what is worked out from, curves over speed, and the picture's places. */
import type { AngleChange, AngleGeometry } from '../../../core/driveline/angles/angle-change.ts';
import { applyChange, completeGeometry } from '../../../core/driveline/angles/angle-change.ts';
import type { AngleSetup } from '../../../core/driveline/angles/angle-chain.ts';
import { limitOf } from '../../../core/driveline/limits/limit.ts';
import type { ShaftReading } from '../../../core/driveline/measurement.ts';
import type { WorkingAngles, WorkingAnglesInput } from '../../../core/driveline/angles/working-angles.ts';
import { residualOverSpeeds } from '../../../core/driveline/angles/working-angles.ts';
import type { Job } from '../../../core/job/job.ts';
import { radFromDeg } from '../../../core/units.ts';
import type { PlotSeries } from '../../plot/plot.ts';
import { roundUp } from '../../plot/plot.ts';
import type { FilledForm } from '../entry.ts';
import { speedsInJob } from '../judge-in-job.ts';

export interface AngleQuestion {
  readonly input: WorkingAnglesInput;
  readonly geometry: AngleGeometry;
  readonly splineTeeth?: number;
}

/** What the form asks; null while readings are missing or the suspension hung. */
export function angleQuestion({ entry, measurement }: FilledForm, job: Job): AngleQuestion | null {
  if (measurement?.kind !== 'working-angles' || measurement.atRideHeight === false) return null;
  const { shafts, phasingDeg, joints, splitErrorDeg, driveshaft } = measurement;
  const speeds = speedsInJob(job, driveshaft, entry.number('rpm'));
  const teeth = entry.number('teeth');
  const pieces = shafts.slice(1, -1).map((_, piece) => entry.number(`shaft${piece + 1}.length`));
  return {
    input: {
      shafts,
      phasingDeg,
      joints,
      splitErrorDeg,
      driveshaftRpm: speeds.ok ? speeds.value.driveshaftRpm : null,
      torqueNm: entry.number('torque'),
      bearingSpanMm: entry.number('bearingSpan'),
      limits: job.limits,
    },
    geometry: {
      pieceLengthsMm: pieces.map((mm, piece) => mm ?? job.vehicle.driveshaftPieces?.[piece]?.lengthMm),
      mountSpanMm: entry.number('mountSpan'),
      frontMountToJointMm: entry.number('mountToJoint'),
      pinionLengthMm: entry.number('pinionLength'),
    },
    ...(teeth !== undefined && { splineTeeth: teeth }),
  };
}

/** The driveline after all changes, one after the other. */
export function afterChanges({ input, geometry }: AngleQuestion, changes: readonly AngleChange[]): WorkingAnglesInput {
  const complete = completeGeometry(geometry, input);
  return changes.reduce<WorkingAnglesInput>(
    (setup, change) => (change.amount === 0 ? setup : { ...setup, ...applyChange(setup, complete, change) }),
    input,
  );
}

/** Reach of the speed axis where no speed is known, rev/min. */
const USUAL_TOP_RPM = 5000;

/** Top of the speed axis: half as much again as the complaint. */
export const topRpmOf = (rpm: number | null): number => (rpm ? roundUp(1.5 * rpm) : USUAL_TOP_RPM);

export interface RippleWords {
  readonly residual: string;
  readonly drive: string;
  readonly coast: string;
  readonly after: string;
}

const STEPS = 40;

/** Residual and the more uneven of the two inertia figures over speed, and the residual after a change. */
export function rippleSeries(
  angles: WorkingAngles,
  after: WorkingAngles | null,
  topRpm: number,
  words: RippleWords,
): PlotSeries[] {
  const rpms = Array.from({ length: STEPS + 1 }, (_, step) => (topRpm * step) / STEPS);
  const curve = (name: string, ripple: WorkingAngles['residual'], look: PlotSeries['look']): PlotSeries => ({
    name,
    look,
    points: residualOverSpeeds(ripple, rpms).map(({ rpm, accelerationRadPerS2 }) => [rpm, accelerationRadPerS2]),
  });
  const { inertiaDrive, inertiaCoast } = angles;
  const worse = inertiaDrive.doubleAmplitudeRad >= inertiaCoast.doubleAmplitudeRad;
  return [
    curve(words.residual, angles.residual, 'main'),
    curve(worse ? words.drive : words.coast, worse ? inertiaDrive : inertiaCoast, 'faint'),
    ...(after ? [curve(words.after, after.residual, 'second')] : []),
  ];
}

/** Top of the acceleration axis: both limits in sight, and not so high that the residual lies on the floor. */
export const topAcceleration = (limits: Job['limits']): number =>
  1.25 * Math.max(limitOf('residual-acceleration', limits).value, limitOf('inertia-drive', limits).value);

export interface DrivelinePoint {
  readonly alongMm: number;
  readonly downMm: number;
  readonly rightMm: number;
}

/** Length of the stubs that stand for transmission and pinion in the picture, mm. */
const STUB_MM = 420;

/** Where shafts begin and end, from the front: one point more than there are shafts. */
export function drivelinePoints(
  setup: AngleSetup,
  lengthsMm: readonly number[],
): readonly [DrivelinePoint, ...DrivelinePoint[]] {
  const points: [DrivelinePoint, ...DrivelinePoint[]] = [{ alongMm: 0, downMm: 0, rightMm: 0 }];
  let at = points[0];
  for (const [index, shaft] of setup.shafts.entries()) {
    const isOuter = index === 0 || index === setup.shafts.length - 1;
    at = stepAlong(at, shaft, isOuter ? STUB_MM : (lengthsMm[index - 1] ?? STUB_MM));
    points.push(at);
  }
  return points;
}

const stepAlong = (from: DrivelinePoint, { slopeDeg, planDeg = 0 }: ShaftReading, mm: number): DrivelinePoint => ({
  alongMm: from.alongMm + mm,
  downMm: from.downMm + mm * Math.sin(radFromDeg(slopeDeg)),
  rightMm: from.rightMm + mm * Math.sin(radFromDeg(planDeg)),
});

const MOST_STRETCH = 6;

/** How many times the height is drawn too large, so that small angles are seen: whole, and no more than fits. */
export function stretchOf(spreadMm: number, roomMm: number): number {
  if (!(spreadMm > 0)) return 1;
  return Math.min(MOST_STRETCH, Math.max(1, Math.floor(roomMm / spreadMm)));
}

/** Half a name's width, px: a sloping line rises so far under it. */
const HALF_NAME_PX = 34;

/** Where the name of a part stands: over its middle; the names of the ends stay inside the picture. */
export function nameOver(
  ends: readonly (readonly [x: number, y: number])[],
  index: number,
  width: number,
): { readonly x: number; readonly y: number; readonly anchor: 'start' | 'middle' | 'end' } {
  const [from = [0, 0] as const, to = from] = [ends[index], ends[index + 1]];
  const slope = Math.abs((to[1] - from[1]) / Math.max(1, to[0] - from[0]));
  const y = (from[1] + to[1]) / 2 - 14 - HALF_NAME_PX * slope;
  if (index === 0) return { x: 0, y, anchor: 'start' };
  return index === ends.length - 2 ? { x: width, y, anchor: 'end' } : { x: (from[0] + to[0]) / 2, y, anchor: 'middle' };
}
