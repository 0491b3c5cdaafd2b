/** `perrev orders`: the expected lines of a vehicle at a speed; no recording needed. */
import { durationText, frequencyText, frequencyWithSdText, rpmText } from '../../core/report/format.ts';
import { table, wrap } from '../../core/report/wrap.ts';
import { collisions } from '../../core/vehicle/collisions.ts';
import { expectedLines } from '../../core/vehicle/expected-lines.ts';
import { rpmFromHz } from '../../core/units.ts';
import { missingData } from '../../core/vehicle/missing-data.ts';
import { vehicleNotes } from '../../core/vehicle/vehicle-notes.ts';
import type { Line } from '../../core/vehicle/line.ts';
import { readArguments } from '../arguments.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { isJobFile, loadJob, problemText } from '../load.ts';
import type { OptionRow } from '../option-table.ts';
import { RUN_OPTIONS, VEHICLE_OPTIONS, optionHelp } from '../option-table.ts';
import { conditionOf, jobWithOptions, vehicleOf } from '../options.ts';
import type { RunCondition, Vehicle } from '../../core/vehicle/vehicle.ts';

const JSON_OPTION: OptionRow = { name: 'json', help: 'print the lines as one JSON object' };
/** Length that most recordings have, s. */
const USUAL_LENGTH_S = 60;
const ROWS = [...VEHICLE_OPTIONS, ...RUN_OPTIONS, JSON_OPTION];

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readArguments(args, ROWS);
  const [file, more] = given.files;
  if (more !== undefined || (file !== undefined && !isJobFile(file))) {
    throw new UsageError('orders takes no recording, only options or one job file.');
  }
  let vehicle: Vehicle = vehicleOf(given);
  let condition: RunCondition & { samplingRateHz?: number } = conditionOf(given, {}, 0, 1);
  if (file !== undefined) {
    const read = await loadJob(io, file);
    if (!read.ok) {
      io.stderr(problemText(read.problem));
      return 1;
    }
    const job = jobWithOptions(given, read.value);
    vehicle = job.vehicle;
    condition = { ...(job.runs[0] ?? condition) };
  }
  const { samplingRateHz } = condition;
  const expected = expectedLines(vehicle, condition, samplingRateHz === undefined ? {} : { samplingRateHz });
  if (!expected.ok) {
    io.stderr(problemText(expected.problem));
    return 1;
  }
  io.stdout(
    given.flag('json')
      ? `${JSON.stringify(expected.value)}\n`
      : `${[linesTable(expected.value.lines), ...remarks(vehicle, condition, expected.value.lines)].join('\n')}\n`,
  );
  return 0;
}

/** Parts of one group turn in one ratio in every gear; those of road and engine in another one in the next gear. */
const whatParts = (first: Line, second: Line): string =>
  first.group === second.group
    ? 'no gear or speed parts them; another load, or one of them taken out or let run free, may'
    : 'another gear parts them';

/** What the lines rest on, what would complete them, and which of them a recording could not part. */
function remarks(vehicle: Vehicle, condition: RunCondition, lines: readonly Line[]): string[] {
  const together = collisions(lines, USUAL_LENGTH_S).map(({ first, second, recordLengthS }) =>
    recordLengthS === null
      ? `${first.label} and ${second.label} fall on one frequency: ${whatParts(first, second)}.`
      : `${first.label} and ${second.label} need ${durationText(recordLengthS)} of steady speed to be told apart.`,
  );
  const missing = missingData(vehicle, condition).map(({ text }) => text);
  return [...vehicleNotes(vehicle).map(({ text }) => text), ...together, ...missing].map((text) =>
    wrap(text, 96, '- '),
  );
}

function linesTable(lines: readonly Line[]): string {
  const rows = [...lines]
    .sort((a, b) => a.frequencyHz - b.frequencyHz)
    .map((line) => [
      line.label,
      frequencyWithSdText(line.frequencyHz, line.frequencySdHz),
      rpmText(rpmFromHz(line.frequencyHz / line.order)),
      line.aliasHz === undefined ? '' : `above half the rate, image at ${frequencyText(line.aliasHz)}`,
    ]);
  return table([['part and order', 'expected', 'part turns at', ''], ...rows], ['left', 'right', 'right', 'left'], '');
}

export const ordersCommand: Command = {
  name: 'orders',
  summary: 'print where each part and order of a vehicle is expected',
  usage: `Prints the expected lines of a vehicle at a speed, lowest first. No recording needed.

  perrev orders --tire 265/70R17 --axle 3.73 --gear 0.70 --cylinders 8 --speed 62mph
  perrev orders recordings/joint-replaced.job.json --speed 50mph

${optionHelp('Vehicle', VEHICLE_OPTIONS)}

${optionHelp('Run', RUN_OPTIONS)}

${optionHelp('Output', [JSON_OPTION])}`,
  run,
};
