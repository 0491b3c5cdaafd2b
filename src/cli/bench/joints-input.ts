/** Words of `perrev joints` → angle readings and distances. */
import { slopeOfReading } from '../../core/driveline/angles/inclinometer.ts';
import type { AngleGeometry } from '../../core/driveline/angles/angle-change.ts';
import type { ShaftReading, WorkingAnglesMeasurement } from '../../core/driveline/measurement.ts';
import { LENGTHS } from '../../core/quantity/plausible.ts';
import { LENGTH_MM, TORQUE_NM } from '../../core/quantity/quantity-kinds.ts';
import { parseAngleDeg, parseQuantity } from '../../core/quantity/quantity.ts';
import type { JointKind } from '../../core/vehicle/vehicle.ts';
import type { Arguments } from '../arguments.ts';
import { choiceOf, valueOf } from '../arguments.ts';
import type { OptionRow } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import { bareUnit, numberOf, quantityOf } from './bench-options.ts';
import { saidReading } from './slope-reading.ts';

export const ANGLE_ROWS: readonly OptionRow[] = [
  {
    name: 'transmission',
    value: '"3 rear down"',
    help: 'slope of the output, degrees: "3 rear down", "3 rear up"; "3 down" means its rear end',
  },
  { name: 'transfer-case', value: '"3 rear down"', help: 'the same for a transfer case output' },
  {
    name: 'shaft',
    value: '"6.2 rear down 1.5 right"',
    many: true,
    help: 'slope, and plan angle of the rear end, of each shaft piece; repeat front to rear',
  },
  {
    name: 'pinion',
    value: '"2.4 nose up"',
    help: 'slope of the pinion: "2.4 nose up", "2.4 nose down"; without the word its rear end is meant',
  },
  { name: 'reference', value: '"0.8 down"', help: 'reading on the surface the others are measured from' },
  {
    name: 'front-driveshaft',
    help: 'the shaft runs to a front axle: its pinion is the front end, its nose points rearward',
  },
  { name: 'one-joint', help: 'the driveline has this one joint only, as with a torque tube' },
  { name: 'phasing', value: '0', many: true, help: 'fork twist of each piece in degrees (0 = forks in line)' },
  {
    name: 'joint',
    value: 'cross',
    many: true,
    help: 'each joint, front to rear (with --front-driveshaft the one at the pinion first): cross, double-cardan, constant-velocity, flexible-disc',
  },
  { name: 'split-error', value: '0.2', many: true, help: 'centering error of each joint (double-cardan), degrees' },
];

export const GEOMETRY_ROWS: readonly OptionRow[] = [
  { name: 'length', value: '1400mm', many: true, help: 'each piece, joint center to joint center' },
  { name: 'mount-span', value: '900mm', help: 'front mounts to the mount at the transmission or transfer case' },
  { name: 'mount-to-joint', value: '1150mm', help: 'front mounts to the joint at the transmission or transfer case' },
  { name: 'pinion-length', value: '280mm', help: 'axle center to the joint at the pinion' },
  { name: 'spline-teeth', value: '16', help: 'teeth of the slip spline, the step in which forks can be turned' },
  { name: 'torque', value: '300Nm', help: 'driveshaft torque, for the bending couple' },
  { name: 'bearing-span', value: '400mm', help: 'distance of the bearings that take the couple' },
];

const JOINT_KINDS: readonly JointKind[] = ['cross', 'double-cardan', 'constant-velocity', 'flexible-disc'];
export interface SaidAngles {
  readonly measured: WorkingAnglesMeasurement;
  /** Whether it was said which end of the pinion is up or down. */
  readonly pinionEndSaid: boolean;
  /** The options that can only have been read on a face square to the shaft, as they were typed. */
  readonly upright: readonly string[];
}

const anglesOf = (given: Arguments, name: string): number[] =>
  given.texts(name).map((text) => valueOf(name, parseAngleDeg(text, '°')));

/** Readings from options; null where there are none (a job file may have them). */
export function angleReadings(given: Arguments): SaidAngles | null {
  const front = given.flag('front-driveshaft');
  const zero = saidReading('reference', given.text('reference') ?? '0').reading;
  let pinionEndSaid = true;
  const upright: string[] = [];
  const readingOf = (option: string, text: string, part: ShaftReading['part']): ShaftReading => {
    const said = saidReading(option, text, part !== 'pinion' ? undefined : front ? 'rear' : 'front');
    if (part === 'pinion') pinionEndSaid = said.endSaid;
    if (said.reading.held === 'across') upright.push(`--${option} "${text}"`);
    const { planDeg } = said;
    const slopeDeg = valueOf(option, slopeOfReading(said.reading, zero));
    return { part, slopeDeg, ...(planDeg !== undefined && { planDeg }) };
  };
  const single = (name: 'transmission' | 'transfer-case' | 'pinion'): ShaftReading[] => {
    const text = given.text(name);
    return text === undefined ? [] : [readingOf(name, text, name)];
  };
  const pieces = given.texts('shaft').map((text) => readingOf('shaft', text, 'shaft'));
  const driving = [...single('transmission'), ...single('transfer-case')];
  const pinion = single('pinion');
  const shafts = front ? [...pinion, ...pieces, ...driving] : [...driving, ...pieces, ...pinion];
  if (shafts.length === 0) return null;
  const phasingDeg = anglesOf(given, 'phasing');
  const splitErrorDeg = anglesOf(given, 'split-error');
  const joints = given.texts('joint').map((text) => choiceOf('joint', text, JOINT_KINDS));
  const measured: WorkingAnglesMeasurement = {
    kind: 'working-angles',
    shafts,
    ...(phasingDeg.length > 0 ? { phasingDeg } : {}),
    ...(joints.length > 0 ? { joints } : {}),
    ...(splitErrorDeg.length > 0 ? { splitErrorDeg } : {}),
    ...(front ? { driveshaft: 'front-driveshaft' as const } : {}),
  };
  return { measured, pinionEndSaid, upright };
}

/** Distances from options, piece lengths else from the job's vehicle. */
export function geometryOf(given: Arguments, { job }: Bench): AngleGeometry {
  const unit = bareUnit(given, LENGTH_MM);
  const lengths = given.texts('length').map((text) => valueOf('length', parseQuantity(text, LENGTHS.piece, unit)));
  return {
    pieceLengthsMm: lengths.length > 0 ? lengths : job.vehicle.driveshaftPieces?.map(({ lengthMm }) => lengthMm),
    mountSpanMm: quantityOf(given, 'mount-span', LENGTHS.distance),
    frontMountToJointMm: quantityOf(given, 'mount-to-joint', LENGTHS.distance),
    pinionLengthMm: quantityOf(given, 'pinion-length', LENGTHS.distance),
  };
}

/** Load on the joints, and the step of the spline. */
export const loadOf = (given: Arguments) => ({
  torqueNm: quantityOf(given, 'torque', TORQUE_NM),
  bearingSpanMm: quantityOf(given, 'bearing-span', LENGTHS.distance),
  splineTeeth: numberOf(given, 'spline-teeth'),
});
