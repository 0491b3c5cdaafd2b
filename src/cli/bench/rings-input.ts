/** Words of `perrev rings` → play, ring axes, rings at hand, and the mass they carry. */
import { americanWord } from '../../core/job/migrate.ts';
import type { JointPlace, RingAxis } from '../../core/driveline/measurement.ts';
import type { BareAxis, RingStock } from '../../core/driveline/rings/ring-selection.ts';
import { pieceAtJoint, pieceMassKg } from '../../core/driveline/shaft-tube.ts';
import { LENGTHS, SHAFT_MASS_KG } from '../../core/quantity/plausible.ts';
import { LENGTH_MM } from '../../core/quantity/quantity-kinds.ts';
import { parseQuantity } from '../../core/quantity/quantity.ts';
import type { Arguments } from '../arguments.ts';
import { choiceOf, valueOf } from '../arguments.ts';
import { UsageError } from '../io.ts';
import type { OptionRow } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import { bareUnit, quantityOf } from './bench-options.ts';
import { countedListOf, listOf } from './number-lists.ts';

export const RING_ROWS: readonly OptionRow[] = [
  { name: 'at', value: 'rear', help: 'which joint: front, center or rear (default rear)' },
  { name: 'play', value: '0.03/0.06mm', help: 'dial reading along each of the two axes' },
  { name: 'groove', value: '81.85mm', many: true, help: 'span between the ring grooves; repeat for the second axis' },
  { name: 'cross', value: '78.60mm', many: true, help: 'cross with its cups; repeat for the second axis' },
  { name: 'rings', value: '1.55/1.65mm', many: true, help: 'the two rings of an axis; repeat for the second axis' },
  {
    name: 'groove-offset',
    value: '0.02mm',
    many: true,
    help: 'middle of the grooves off the shaft axis, towards the first ring',
  },
  { name: 'available', value: '"1.50x2/1.55 mm"', help: 'rings at hand to choose from; xN says how many' },
];

export const MASS_ROWS: readonly OptionRow[] = [
  { name: 'mass', value: '9kg', help: 'mass of the shaft piece' },
  { name: 'end-mass', value: '0.8kg', help: 'mass of yoke and joint at this end' },
  { name: 'grade', value: '16', help: 'balance grade of ISO 21940-11 for the allowance (default 16)' },
];

export interface RingInput {
  readonly axes: readonly RingAxis[];
  /** The same axes without rings, for choosing. */
  readonly bare: readonly BareAxis[];
  readonly stock: readonly RingStock[];
  readonly playMm: readonly [number, number] | null;
}

export const jointOf = (given: Arguments): JointPlace =>
  choiceOf('at', americanWord(given.text('at') ?? 'rear'), ['front', 'center', 'rear']);

/** From options; what they leave out from the job's measurements of this joint. */
export function ringInput(given: Arguments, { job }: Bench, joint: JointPlace): RingInput {
  const unit = bareUnit(given, LENGTH_MM);
  const lengths = (name: 'groove' | 'cross' | 'groove-offset') =>
    given.texts(name).map((text) => valueOf(name, parseQuantity(text, LENGTHS[name], unit)));
  const [grooves, crosses, offsets] = [lengths('groove'), lengths('cross'), lengths('groove-offset')];
  const pairs = given.texts('rings').map((text) => listOf('rings', text, LENGTHS.ring, unit));
  if (pairs.some((pair) => pair.length !== 2))
    throw new UsageError('--rings needs two thicknesses, as in --rings 1.55/1.65mm.');
  if (crosses.length !== grooves.length || (pairs.length > 0 && pairs.length !== grooves.length)) {
    throw new UsageError('give --groove, --cross and --rings once for each axis, as many times each.');
  }
  const held = job.measurements.findLast((one) => one.kind === 'rings' && one.joint === joint);
  const fromJob = held?.kind === 'rings' && grooves.length === 0 ? held.axes : [];
  const bare = grooves.map((grooveSpanMm, axis): BareAxis => {
    const grooveOffsetMm = offsets[axis];
    return {
      grooveSpanMm,
      crossAndCupsMm: crosses[axis] ?? 0,
      ...(grooveOffsetMm === undefined ? {} : { grooveOffsetMm }),
    };
  });
  const axes = pairs.flatMap(([ring1Mm = 0, ring2Mm = 0], axis) => {
    const one = bare[axis];
    return one === undefined ? [] : [{ ...one, ring1Mm, ring2Mm }];
  });
  const stock = given.texts('available').flatMap((text) => countedListOf('available', text, LENGTHS.ring, unit));
  return {
    axes: axes.length > 0 ? axes : fromJob,
    bare: bare.length > 0 ? bare : fromJob,
    stock: stock.map(({ value, count }) => ({ thicknessMm: value, count })),
    playMm: playOf(given, job.measurements, joint, unit),
  };
}

function playOf(
  given: Arguments,
  measurements: Bench['job']['measurements'],
  joint: JointPlace,
  unit: string | undefined,
): readonly [number, number] | null {
  const text = given.text('play');
  if (text === undefined) {
    const held = measurements.findLast((one) => one.kind === 'end-play' && one.joint === joint);
    return held?.kind === 'end-play' ? held.axisPlayMm : null;
  }
  const [one, two, more] = listOf('play', text, LENGTHS.play, unit);
  if (one === undefined || more !== undefined)
    throw new UsageError('--play needs one reading for each of the two axes.');
  return [one, two ?? 0];
}

/** Mass of the piece at the joint: as given, else from the job's vehicle; null where not known. */
export function massOf(
  given: Arguments,
  { job }: Bench,
  joint: JointPlace,
): { readonly massKg: number; readonly endMassKg?: number | undefined; readonly estimated: boolean } | null {
  const endMassKg = quantityOf(given, 'end-mass', SHAFT_MASS_KG);
  const weighed = quantityOf(given, 'mass', SHAFT_MASS_KG);
  if (weighed !== undefined) {
    if (weighed <= 0) throw new UsageError('--mass must be greater than zero.');
    return { massKg: weighed, endMassKg, estimated: false };
  }
  const piece = pieceAtJoint(job.vehicle, joint);
  const known = piece === undefined ? null : pieceMassKg(piece);
  return known === null ? null : { ...known, endMassKg };
}
