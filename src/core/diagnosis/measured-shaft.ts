/** The shaft and wheel at the speed of a finding, for judging what a measurement would do there. */
import type { JudgedNumber } from '../driveline/limit.ts';
import type { JointPlace } from '../driveline/measurement.ts';
import { pieceMassKg } from '../driveline/shaft-tube.ts';
import { rpmFromHz } from '../units.ts';
import type { Vehicle } from '../vehicle/vehicle.ts';
import type { FindingBasis } from './case.ts';

export interface ShaftAtSpeed {
  /** Driveshaft speed of the finding, rev/min; null where the finding is of another part. */
  readonly rpm: number | null;
  /** Wheel speed of the finding, rev/min; null likewise. */
  readonly wheelRpm: number | null;
  /** True where a once-a-turn force of the driveshaft, or of a wheel, is what the finding shows. */
  readonly once: boolean;
  /** Number of joints, two where the shaft is not described. */
  readonly joints: number;
  /** Mass of the piece at a joint, kg; null where neither mass nor tube is known. */
  readonly massKgAt: (joint: JointPlace) => number | null;
}

export function shaftAtSpeed({ part, order, frequencyHz }: FindingBasis, vehicle: Vehicle): ShaftAtSpeed {
  const pieces = vehicle.driveshaftPieces ?? [];
  const turning = order ? rpmFromHz(frequencyHz / order) : null;
  const massKgAt = (joint: JointPlace): number | null => {
    const piece = joint === 'rear' ? pieces.at(-1) : pieces[0];
    return piece === undefined ? null : (pieceMassKg(piece)?.massKg ?? null);
  };
  return {
    rpm: part === 'driveshaft' ? turning : null,
    wheelRpm: part === 'tire' ? turning : null,
    once: order === 1,
    joints: pieces.length === 0 ? 2 : pieces.length + 1,
    massKgAt,
  };
}

/** 'Companion flange runout, radial or face is 0.05 mm, inside its limit of 0.13 mm (common practice, no source)'. */
export function numberText({ title, measured, limit, inside }: JudgedNumber): string {
  const unit = limit.unit === '°' ? '°' : ` ${limit.unit}`;
  const figure = (value: number): string => `${Number(value.toPrecision(value >= 100 ? 3 : 2))}${unit}`;
  const head = title.charAt(0).toUpperCase() + title.slice(1);
  return `${head}: ${figure(measured)}, ${inside ? 'inside' : 'outside'} the limit of ${figure(limit.value)} (${limit.source})`;
}
