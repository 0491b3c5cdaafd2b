/** What end play and rings of a joint do: how the cross sits, the unbalance and force, and the rings to fit. */
import type { Centring, JointOffset } from '../../../core/driveline/rings/centring.ts';
import { centringEffect, jointOffset, offsetOfWholeAllowanceMm } from '../../../core/driveline/rings/centring.ts';
import { limitOf } from '../../../core/driveline/limits/limit.ts';
import type { JointPlace } from '../../../core/driveline/measurement.ts';
import type { RingSelection, RingStock } from '../../../core/driveline/rings/ring-selection.ts';
import { selectRings } from '../../../core/driveline/rings/ring-selection.ts';
import type { SeatedAxis } from '../../../core/driveline/rings/ring-seat.ts';
import { seatAxis } from '../../../core/driveline/rings/ring-seat.ts';
import type { Job } from '../../../core/job/job.ts';
import type { Result } from '../../../core/note.ts';
import type { FilledForm } from '../entry.ts';
import { massOf } from '../forms/facts.ts';
import { bareAxis } from '../forms/joint.ts';
import { speedsInJob } from '../judge-in-job.ts';

export interface JointFacts {
  readonly joint: JointPlace;
  readonly seats: readonly SeatedAxis[];
  /** Play along each axis, mm, where it was read by dial. */
  readonly playMm: readonly [number, number] | null;
  readonly offset: JointOffset | null;
  /** Offset that counts: as the rings hold it, or as far as the play lets it go. */
  readonly offsetMm: number | null;
  readonly setting: BenchSetting | null;
  readonly centring: Centring | null;
  readonly wholeAllowanceMm: number | null;
  readonly selection: Result<RingSelection> | null;
}

export interface BenchSetting {
  readonly massKg: number;
  readonly endMassKg?: number | undefined;
  readonly rpm: number;
  readonly gradeMmps: number;
  readonly estimated: boolean;
}

/** Speed, mass and grade: as typed, else as the job tells; null where speed or mass is not known. */
export function settingOf({ entry }: FilledForm, job: Job, joint: JointPlace): BenchSetting | null {
  const speeds = speedsInJob(job, undefined, entry.number('rpm'));
  const rpm = speeds.ok ? speeds.value.driveshaftRpm : null;
  const mass = massOf(entry, job, joint);
  if (rpm === null || rpm <= 0 || mass === null) return null;
  const gradeMmps = entry.number('grade') ?? limitOf('driveshaft-grade', job.limits).value;
  return { ...mass, endMassKg: entry.number('endMass'), rpm, gradeMmps };
}

/** Null while neither play nor an axis is known. */
export function jointFacts(filled: FilledForm, job: Job): JointFacts | null {
  const { entry, measurement } = filled;
  const joint = entry.choice('joint') as JointPlace;
  const seats = measurement?.kind === 'rings' ? measurement.axes.map(seatAxis) : [];
  const playMm = measurement?.kind === 'end-play' ? measurement.axisPlayMm : null;
  const bare = [1, 2].map((axis) => bareAxis(entry, axis)).filter((axis) => axis !== null);
  const stock = entry.list('stock')?.map(({ value, count }): RingStock => ({ thicknessMm: value, count }));
  const selection = stock === undefined || bare.length === 0 ? null : selectRings(bare, stock, job.limits);
  if (seats.length === 0 && playMm === null && selection === null) return null;
  const offset = seats.length > 0 ? jointOffset(seats) : null;
  const offsetMm = offset?.offsetMm ?? (playMm && Math.hypot(...playMm) / 2);
  const setting = settingOf(filled, job, joint);
  return {
    joint,
    seats,
    playMm,
    offset,
    offsetMm,
    setting,
    centring: setting === null || offsetMm === null ? null : centringEffect({ ...setting, offsetMm }),
    wholeAllowanceMm: setting === null ? null : offsetOfWholeAllowanceMm(setting),
    selection,
  };
}
