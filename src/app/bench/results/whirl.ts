/** Critical speeds as the bench shows them. */
import { benchSpeeds } from '../../../core/driveline/judging/judge-measurement.ts';
import { limitOf } from '../../../core/driveline/limits/limit.ts';
import { tubeOf } from '../../../core/driveline/shaft-tube.ts';
import type { WhirlPiece } from '../../../core/driveline/whirl.ts';
import { longestTubeMm, whirl } from '../../../core/driveline/whirl.ts';
import type { Job } from '../../../core/job/job.ts';
import type { Result } from '../../../core/note.ts';
import type { ShaftPiece } from '../../../core/vehicle/vehicle.ts';
import { roundUp } from '../../plot/plot.ts';
import type { FilledForm } from '../entry.ts';
import { piecesOf } from '../forms/whirl.ts';
import { speedsInJob } from '../judge-in-job.ts';

export interface WhirlFacts {
  readonly pieces: readonly ShaftPiece[];
  readonly result: Result<readonly WhirlPiece[]>;
  readonly complaintRpm: number | null;
  readonly topRpm: number | null;
  /** Longest tube of each piece that stays under the limit at top speed, mm; null where top speed is not known. */
  readonly longestMm: readonly (number | null)[];
}

/** Null while no size at all is known, or where one was typed that cannot be: the vehicle's would stand in its place. */
export function whirlFacts({ entry, problems }: FilledForm, job: Job): WhirlFacts | null {
  if (problems.size > 0) return null;
  const pieces = piecesOf(entry, job.vehicle.driveshaftPieces ?? []);
  if (!pieces.some((piece) => tubeOf(piece) !== null)) return null;
  const speeds = speedsInJob(job, undefined, entry.number('rpm'));
  const complaintRpm = speeds.ok ? speeds.value.driveshaftRpm : null;
  const topRpm = topRpmOf(entry.number('topRpm'), entry.number('topSpeed'), job);
  const limit = limitOf('whirl-share', job.limits).value;
  return {
    pieces,
    result: whirl(pieces, { complaintRpm, topRpm, limits: job.limits }),
    complaintRpm,
    topRpm,
    longestMm: pieces.map((piece) => {
      const tube = tubeOf(piece);
      return tube === null || topRpm === null || topRpm <= 0 ? null : longestTubeMm(tube, topRpm / limit);
    }),
  };
}

function topRpmOf(rpm: number | undefined, speedMps: number | undefined, job: Job): number | null {
  if (rpm !== undefined || speedMps === undefined) return rpm ?? null;
  const speeds = benchSpeeds(job.vehicle, { speedMps, speedSource: 'gps' });
  return speeds.ok ? speeds.value.driveshaftRpm : null;
}

/** End of the scale on which all speeds are seen, rev/min. */
export const whirlScaleRpm = (pieces: readonly WhirlPiece[], topRpm: number | null): number =>
  roundUp(1.08 * Math.max(...pieces.map(({ criticalRpm }) => criticalRpm), topRpm ?? 0));
