/** `perrev joints`: working angles of a driveline, against the limits, and what would better them. */
import { angleSensitivity } from '../../core/driveline/angles/angle-sensitivity.ts';
import { partsNotRead } from '../../core/driveline/angles/driveline-names.ts';
import { pinionOtherWay } from '../../core/driveline/angles/pinion-doubt.ts';
import { angleWhatIf } from '../../core/driveline/angles/angle-what-if.ts';
import type { WorkingAnglesMeasurement } from '../../core/driveline/measurement.ts';
import { workingAngles } from '../../core/driveline/angles/working-angles.ts';
import { pinionDoubtText, readingLines } from '../../core/report/angle-read-text.ts';
import { rpmText } from '../../core/report/format.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { optionHelp } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import { benchOf, OUTPUT_ROWS, readBenchArguments, shaftRpmOf, SPEED_ROWS, benchProblemText } from './bench-options.ts';
import type { SaidAngles } from './joints-input.ts';
import { ANGLE_ROWS, angleReadings, GEOMETRY_ROWS, geometryOf, loadOf } from './joints-input.ts';
import { assumedLines, jointTable, residualLines, sensitivityTable, whatIfLines } from './joints-text.ts';
import { Sheet } from './sheet.ts';

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readBenchArguments(args, [...ANGLE_ROWS, ...GEOMETRY_ROWS, ...SPEED_ROWS, ...OUTPUT_ROWS]);
  const bench = await benchOf(given, io);
  if (bench === null) return 1;
  const said = angleReadings(given);
  const measured = said?.measured ?? readingsOfJob(bench);
  const problem = given.flag('one-joint') ? null : notReadProblem(measured);
  if (problem !== null) throw new UsageError(problem);
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
    io.stderr(benchProblemText(angles.problem));
    return 1;
  }
  // Where the reading may be the wrong way round, no advice follows that would spoil a sound axle.
  const otherWay = said?.pinionEndSaid === false ? pinionOtherWay(input) : null;
  const whatIf = angleWhatIf(input, geometry, { splineTeeth });
  const sensitivity = angleSensitivity(input, geometry);
  if (!whatIf.ok || !sensitivity.ok) throw new Error('angles that were worked out once must work out again');
  if (given.flag('json')) {
    const advice =
      otherWay === null ? { whatIf: whatIf.value, sensitivity: sensitivity.value } : { pinionOtherWay: otherWay };
    io.stdout(`${JSON.stringify({ input, angles: angles.value, ...advice })}\n`);
    return 0;
  }
  const { verdict, driveshaftRpm, judged, advisory, notes } = angles.value;
  const { shafts } = input;
  const at = driveshaftRpm === null ? '' : ` at ${rpmText(driveshaftRpm)} of the driveshaft`;
  const words = { inside: 'inside the limits', outside: 'OUTSIDE the limits', 'cannot-tell': 'not judged' };
  const sheet = new Sheet(io, bench.units);
  if (otherWay !== null) {
    const confirm = 'Look, and say “nose up” or “nose down” with --pinion: advice on the axle waits for that.';
    sheet.block('First', [`${pinionDoubtText(shafts, angles.value, otherWay)} ${confirm}`]);
  }
  sheet
    .block('Read as', [...readingLines(shafts), ...(said ? howRead(said) : [])])
    .block(`Working angles${at}: ${words[verdict]}`, [
      jointTable(angles.value, shafts, bench.units),
      ...residualLines(angles.value),
    ])
    .judged('Against the limits', judged)
    .judged('To know', advisory, false);
  if (otherWay === null && verdict !== 'cannot-tell') {
    sheet.block('What would bring it inside', whatIfLines(whatIf.value, angles.value, shafts, bench.units));
  }
  if (otherWay === null && verdict === 'outside') {
    const { value } = sensitivity;
    const lines = [sensitivityTable(value, shafts, bench.units), ...assumedLines(value)];
    sheet.block('What a step does to the residual', lines);
  }
  io.stdout(sheet.notes(notes).cautions('working-angles').text());
  return 0;
}

const END_NOT_SAID = 'It was not said which end of the pinion that is, so its rear end is meant.';

/** What had to be taken for granted in reading the options. */
const howRead = ({ pinionEndSaid, upright }: SaidAngles): string[] => [
  ...(pinionEndSaid ? [] : [END_NOT_SAID]),
  ...upright.map((said) => `${said} is over 45°: taken as read on an upright face, such as a flange.`),
];

/** What is missing for joints that could cancel each other; null where nothing is. */
function notReadProblem({ shafts }: WorkingAnglesMeasurement): string | null {
  const missing = partsNotRead(shafts);
  if (missing.length === 0) return null;
  const list = missing.map((part) => (part === 'transmission' ? 'the transmission or transfer case' : `the ${part}`));
  const options = missing.map((part) => `--${part}`).join(' and ');
  const verb = missing.length === 1 ? 'was' : 'were';
  return `${list.join(' and ')} (${options}) ${verb} not read. Joints cancel each other, so one end alone says nothing: add it, or --one-joint where the driveline has no second joint.`;
}

function readingsOfJob({ job, fromFile }: Bench): WorkingAnglesMeasurement {
  const measured = job.measurements.findLast((one) => one.kind === 'working-angles');
  if (measured !== undefined) return measured;
  throw new UsageError(
    fromFile
      ? 'the job file holds no working angles; add a measurement of the kind "working-angles", or give them as options.'
      : 'give the slopes front to rear, as in --transmission "3 rear down" --shaft "6.2 rear down" --pinion "2.4 nose up".',
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

  perrev joints --transmission "3 rear down" --shaft "6.2 rear down 1.5 right" --pinion "2.4 nose up" --shaft-rpm 3000
  perrev joints recordings/mount-sagged.job.json --mount-span 900mm --pinion-length 280mm

${optionHelp('Angles', ANGLE_ROWS)}

${optionHelp('Distances and load', GEOMETRY_ROWS)}

${optionHelp('Speed', SPEED_ROWS)}

${optionHelp('Output', OUTPUT_ROWS)}`,
  run,
};
