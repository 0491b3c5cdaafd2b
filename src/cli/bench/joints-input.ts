/** Words of `perrev joints` → angle readings and distances. */
import { slopeOfReading } from '../../core/driveline/angles/inclinometer.ts';
import type { AngleGeometry } from '../../core/driveline/angles/angle-change.ts';
import type { ShaftReading, WorkingAnglesMeasurement } from '../../core/driveline/measurement.ts';
import { LENGTH_MM, TORQUE_NM } from '../../core/quantity/quantity-kinds.ts';
import { parseAngleDeg, parseLengthMm } from '../../core/quantity/quantity.ts';
import type { JointKind } from '../../core/vehicle/vehicle.ts';
import type { Arguments } from '../arguments.ts';
import { choiceOf, valueOf } from '../arguments.ts';
import { UsageError } from '../io.ts';
import type { OptionRow } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import { bareUnit, numberOf, quantityOf } from './bench-options.ts';

export const ANGLE_ROWS: readonly OptionRow[] = [
  {
    name: 'transmission',
    value: '"3.0 down"',
    help: 'slope of the output: degrees, and whether its rear end is down or up',
  },
  { name: 'transfer-case', value: '"3.0 down"', help: 'the same for a transfer case output' },
  {
    name: 'shaft',
    value: '"6.2 down 1.5 right"',
    many: true,
    help: 'slope, and plan angle of the rear end, of each shaft piece; repeat front to rear',
  },
  { name: 'pinion', value: '"2.4 down"', help: 'slope of the pinion' },
  { name: 'reference', value: '"0.8 down"', help: 'reading on the surface the others are measured from' },
  { name: 'front-driveshaft', help: 'the shaft runs to a front axle: the pinion comes first' },
  { name: 'phasing', value: '0', many: true, help: 'fork twist of each piece in degrees (0 = forks in line)' },
  {
    name: 'joint',
    value: 'cross',
    many: true,
    help: 'each joint, front to rear: cross, double-cardan, constant-velocity, flexible-disc',
  },
  { name: 'split-error', value: '0.2', many: true, help: 'centering error of each joint (double-cardan), degrees' },
];

export const GEOMETRY_ROWS: readonly OptionRow[] = [
  { name: 'length', value: '1400mm', many: true, help: 'each piece, joint center to joint center' },
  { name: 'mount-span', value: '900mm', help: 'front mounts to transmission mount' },
  { name: 'mount-to-joint', value: '1150mm', help: 'front mounts to the joint at the transmission' },
  { name: 'pinion-length', value: '280mm', help: 'axle center to the joint at the pinion' },
  { name: 'spline-teeth', value: '16', help: 'teeth of the slip spline, the step in which forks can be turned' },
  { name: 'torque', value: '300Nm', help: 'driveshaft torque, for the bending couple' },
  { name: 'bearing-span', value: '400mm', help: 'distance of the bearings that take the couple' },
];

const JOINT_KINDS: readonly JointKind[] = ['cross', 'double-cardan', 'constant-velocity', 'flexible-disc'];
const READING = /^\s*([^a-z]+?)\s*(?:deg)?\s*(down|up)?\s*(?:,?\s*([\d.,]+)\s*°?\s*(right|left))?\s*$/iu;

/** '6.2 down 1.5 right' → slope down to the rear and plan angle right to the rear. */
function readingOf(given: Arguments, option: string, text: string, part: ShaftReading['part']): ShaftReading {
  const [, shown, end, plan, side] = READING.exec(text) ?? [];
  if (shown === undefined) {
    throw new UsageError(
      `--${option} "${text}": write it like "6.2 down", or "6.2 down 1.5 right" where it runs sideways.`,
    );
  }
  const slope = (figure: string, word: string | undefined) => ({
    shownDeg: valueOf(option, parseAngleDeg(figure, '°')),
    ...(word === undefined ? {} : { lowEnd: word.toLowerCase() === 'down' ? ('rear' as const) : ('front' as const) }),
  });
  const reference = given.text('reference');
  const [, zero, zeroEnd] = READING.exec(reference ?? '0') ?? [];
  if (zero === undefined) throw new UsageError(`--reference "${reference}": write it like "0.8 down".`);
  const slopeDeg = valueOf(option, slopeOfReading(slope(shown, end), slope(zero, zeroEnd)));
  if (plan === undefined) return { part, slopeDeg };
  const planDeg = valueOf(option, parseAngleDeg(plan, '°')) * (side?.toLowerCase() === 'left' ? -1 : 1);
  return { part, slopeDeg, planDeg };
}

const anglesOf = (given: Arguments, name: string): number[] =>
  given.texts(name).map((text) => valueOf(name, parseAngleDeg(text, '°')));

/** Readings from options; null where there are none (a job file may have them). */
export function angleReadings(given: Arguments): WorkingAnglesMeasurement | null {
  const single = (name: 'transmission' | 'transfer-case' | 'pinion'): ShaftReading[] => {
    const text = given.text(name);
    return text === undefined ? [] : [readingOf(given, name, text, name)];
  };
  const pieces = given.texts('shaft').map((text) => readingOf(given, 'shaft', text, 'shaft'));
  const driving = [...single('transmission'), ...single('transfer-case')];
  const pinion = single('pinion');
  const front = given.flag('front-driveshaft');
  const shafts = front ? [...pinion, ...pieces, ...driving] : [...driving, ...pieces, ...pinion];
  if (shafts.length === 0) return null;
  const phasingDeg = anglesOf(given, 'phasing');
  const splitErrorDeg = anglesOf(given, 'split-error');
  const joints = given.texts('joint').map((text) => choiceOf('joint', text, JOINT_KINDS));
  return {
    kind: 'working-angles',
    shafts,
    ...(phasingDeg.length > 0 ? { phasingDeg } : {}),
    ...(joints.length > 0 ? { joints } : {}),
    ...(splitErrorDeg.length > 0 ? { splitErrorDeg } : {}),
    ...(front ? { driveshaft: 'front-driveshaft' as const } : {}),
  };
}

/** Distances from options, piece lengths else from the job's vehicle. */
export function geometryOf(given: Arguments, { job }: Bench): AngleGeometry {
  const unit = bareUnit(given, LENGTH_MM);
  const lengths = given.texts('length').map((text) => valueOf('length', parseLengthMm(text, unit)));
  return {
    pieceLengthsMm: lengths.length > 0 ? lengths : job.vehicle.driveshaftPieces?.map(({ lengthMm }) => lengthMm),
    mountSpanMm: quantityOf(given, 'mount-span', LENGTH_MM),
    frontMountToJointMm: quantityOf(given, 'mount-to-joint', LENGTH_MM),
    pinionLengthMm: quantityOf(given, 'pinion-length', LENGTH_MM),
  };
}

/** Load on the joints, and the step of the spline. */
export const loadOf = (given: Arguments) => ({
  torqueNm: quantityOf(given, 'torque', TORQUE_NM),
  bearingSpanMm: quantityOf(given, 'bearing-span', LENGTH_MM),
  splineTeeth: numberOf(given, 'spline-teeth'),
});
