/** Facts around a measurement that several forms ask for: speed and mass, where the job does not know them or better. */
import type { JointPlace, ShaftPlace } from '../../../core/driveline/measurement.ts';
import { pieceAtJoint, pieceMassKg } from '../../../core/driveline/shaft-tube.ts';
import type { Job } from '../../../core/job/job.ts';
import type { UnitSystem } from '../../../core/report/format.ts';
import { rpmText, significant, sizeText } from '../../../core/report/format.ts';
import { poundFromKg } from '../../../core/units.ts';
import { benchFacts as words } from '../../texts/bench-facts.ts';
import { speedsInJob } from '../judge-in-job.ts';
import type { Entry, MeasureRow, Surroundings } from '../measure-form.ts';
import { given } from '../measure-form.ts';

/** '1320 mm, from the vehicle'; undefined where the vehicle does not tell. */
export const ofVehicle = (mm: number | undefined, units: UnitSystem): string | undefined =>
  mm === undefined ? undefined : words.ofVehicle(sizeText(mm, units));

/** Asks for a speed of the driveshaft other than that of the complaint. */
export function speedRow({ job }: Surroundings, shaft?: ShaftPlace): MeasureRow {
  const speeds = speedsInJob(job, shaft);
  const rpm = speeds.ok ? speeds.value.driveshaftRpm : null;
  const hint = rpm === null ? words.noSpeed : words.ofComplaint(rpmText(rpm));
  return {
    heading: words.speed,
    fields: [{ id: 'rpm', label: words.driveshaftSpeed, kind: 'turning-speed', optional: true, hint }],
  };
}

/** Asks for the mass of the piece at a joint, and the balance grade that is asked of it. */
export function massRow({ job, units }: Surroundings, joint: JointPlace, withEnd = false): MeasureRow {
  const known = massInJob(job, joint);
  const text =
    known &&
    `${significant(units === 'us' ? poundFromKg(known.massKg) : known.massKg, 2)} ${units === 'us' ? 'lb' : 'kg'}`;
  const hint = text === null ? undefined : known?.estimated ? words.ofTube(text) : words.ofVehicle(text);
  return {
    heading: words.mass,
    fields: [
      { id: 'mass', label: words.pieceMass, kind: 'mass', optional: true, ...given('hint', hint) },
      ...(withEnd ? [{ id: 'endMass', label: words.endMass, kind: 'mass' as const, optional: true }] : []),
      { id: 'grade', label: words.grade, kind: 'grade', optional: true, hint: words.gradeHint },
    ],
  };
}

export interface KnownMass {
  readonly massKg: number;
  readonly estimated: boolean;
}

function massInJob(job: Job, joint: JointPlace): KnownMass | null {
  const piece = pieceAtJoint(job.vehicle, joint);
  return piece === undefined ? null : pieceMassKg(piece);
}

/** Mass of the piece: as typed, else as the vehicle tells. */
export function massOf(entry: Entry, job: Job, joint: JointPlace): KnownMass | null {
  const typed = entry.number('mass');
  return typed === undefined ? massInJob(job, joint) : { massKg: typed, estimated: false };
}
