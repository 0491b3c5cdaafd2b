/** `perrev joints`: working angles of a driveline, against the limits, and what would better them. */
import { angleSensitivity } from '../../core/driveline/angles/angle-sensitivity.ts';
import { angleWhatIf } from '../../core/driveline/angles/angle-what-if.ts';
import type { WorkingAnglesMeasurement } from '../../core/driveline/measurement.ts';
import { workingAngles } from '../../core/driveline/angles/working-angles.ts';
import { rpmText } from '../../core/report/format.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { problemText } from '../load.ts';
import { optionHelp } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import { benchOf, OUTPUT_ROWS, readBenchArguments, shaftRpmOf, SPEED_ROWS } from './bench-options.ts';
import { ANGLE_ROWS, angleReadings, GEOMETRY_ROWS, geometryOf, loadOf } from './joints-input.ts';
import { assumedLines, jointTable, residualLines, sensitivityTable, whatIfLines } from './joints-text.ts';
import { Sheet } from './sheet.ts';

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readBenchArguments(args, [...ANGLE_ROWS, ...GEOMETRY_ROWS, ...SPEED_ROWS, ...OUTPUT_ROWS]);
  const bench = await benchOf(given, io);
  if (bench === null) return 1;
  const measured = angleReadings(given) ?? readingsOfJob(bench);
  const kinds = measured.joints ?? kindsOfJob(bench, measured);
  const { splineTeeth, ...load } = loadOf(given);
  const input = {
    ...measured,
    ...(kinds === undefined ? {} : { joints: kinds }),
    ...load,
    driveshaftRpm: shaftRpmOf(given, bench, measured.driveshaft),
    limits: bench.limits,
  };
  const geometry = geometryOf(given, bench);
  const angles = workingAngles(input);
  if (!angles.ok) {
    io.stderr(problemText(angles.problem));
    return 1;
  }
  const whatIf = angleWhatIf(input, geometry, { splineTeeth });
  const sensitivity = angleSensitivity(input, geometry);
  if (!whatIf.ok || !sensitivity.ok) throw new Error('angles that were worked out once must work out again');
  if (given.flag('json')) {
    const result = { input, angles: angles.value, whatIf: whatIf.value, sensitivity: sensitivity.value };
    io.stdout(`${JSON.stringify(result)}\n`);
    return 0;
  }
  const { verdict, driveshaftRpm, judged, advisory, notes } = angles.value;
  const at = driveshaftRpm === null ? '' : ` at ${rpmText(driveshaftRpm)} of the driveshaft`;
  const words = { inside: 'inside the limits', outside: 'OUTSIDE the limits', 'cannot-tell': 'not judged' };
  io.stdout(
    new Sheet(io, bench.units)
      .block(`Working angles${at}: ${words[verdict]}`, [jointTable(angles.value), ...residualLines(angles.value)])
      .judged('Against the limits', judged)
      .judged('To know', advisory, false)
      .block('What would bring it inside', whatIfLines(whatIf.value, bench.units))
      .block('What a step does to the residual', [
        sensitivityTable(sensitivity.value, bench.units),
        ...assumedLines(sensitivity.value),
      ])
      .notes(notes)
      .cautions('working-angles')
      .text(),
  );
  return 0;
}

function readingsOfJob({ job, fromFile }: Bench): WorkingAnglesMeasurement {
  const measured = job.measurements.findLast((one) => one.kind === 'working-angles');
  if (measured !== undefined) return measured;
  throw new UsageError(
    fromFile
      ? 'the job file holds no working angles; add a measurement of the kind "working-angles", or give them as options.'
      : 'give the slopes front to rear, as in --transmission "3 down" --shaft "6.2 down" --pinion "2.4 down".',
  );
}

/** Kinds of the joints as the vehicle describes them; undefined where it does not describe this many. */
function kindsOfJob({ job }: Bench, { shafts }: WorkingAnglesMeasurement) {
  const pieces = job.vehicle.driveshaftPieces ?? [];
  if (pieces.length !== shafts.length - 2) return undefined;
  const last = pieces.at(-1)?.rearJoint;
  return [...pieces.map((piece) => piece.frontJoint ?? 'cross'), last ?? 'cross'];
}

export const jointsCommand: Command = {
  name: 'joints',
  summary: 'work out joint angles, what they leave, and what would better them',
  usage: `Works out the true joint angles of a driveline, what does not cancel, and the least change that cures it.

  perrev joints --transmission "3 down" --shaft "6.2 down 1.5 right" --pinion "2.4 down" --shaft-rpm 3000
  perrev joints recordings/mount-sagged.job.json --mount-span 900mm --pinion-length 280mm

${optionHelp('Angles', ANGLE_ROWS)}

${optionHelp('Distances and load', GEOMETRY_ROWS)}

${optionHelp('Speed', SPEED_ROWS)}

${optionHelp('Output', OUTPUT_ROWS)}`,
  run,
};
