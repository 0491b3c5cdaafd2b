/** `perrev balance`: correction weights from trial runs, with or without phase, and where to put them. */
import { benchSpeeds } from '../../core/driveline/judging/judge-measurement.ts';
import { weightNotes } from '../../core/driveline/balance/weight-checks.ts';
import { limitOf } from '../../core/driveline/limits/limit.ts';
import type { Problem } from '../../core/note.ts';
import { success } from '../../core/note.ts';
import { rpmText } from '../../core/report/format.ts';
import { choiceOf, valueOf } from '../arguments.ts';
import type { Arguments } from '../arguments.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { optionHelp } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import {
  benchOf,
  numberOf,
  OUTPUT_ROWS,
  readBenchArguments,
  shaftRpmOf,
  SPEED_ROWS,
  benchProblemText,
} from './bench-options.ts';
import { PLACING_ROWS, RUN_ROWS } from './balance-input.ts';
import { placingsOf, placingText } from './balance-placing.ts';
import type { BalancedPart } from './balance-solve.ts';
import { solve } from './balance-solve.ts';
import { allowanceLines, forceLines } from './balance-text.ts';
import { massOf, MASS_ROWS } from './rings-input.ts';
import { Sheet } from './sheet.ts';

const PART_ROW = {
  name: 'part',
  value: 'driveshaft',
  help: 'what is balanced: driveshaft or tire (default driveshaft)',
};
const ROWS = [...RUN_ROWS, PART_ROW, ...PLACING_ROWS, ...MASS_ROWS, ...SPEED_ROWS, ...OUTPUT_ROWS];

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readBenchArguments(args, ROWS);
  const bench = await benchOf(given, io);
  if (bench === null) return 1;
  const fail = (problem: Problem): ExitCode => {
    io.stderr(benchProblemText(problem));
    return 1;
  };
  const part = choiceOf('part', given.text('part') ?? 'driveshaft', ['driveshaft', 'tire'] as const);
  const solved = await solve(given, bench, io, part);
  if (solved !== null && !solved.ok) return fail(solved.problem);
  const setting = settingOf(given, bench, part);
  if (solved === null && setting === null) {
    throw new UsageError(
      'give runs as in --found 0.40 --trial 500g·mm --at 0=0.57 --at 120=0.64 --at 240=0.13, or --mass and --shaft-rpm for the allowance.',
    );
  }
  const [target] = solved?.value.corrections ?? [];
  const unit = solved?.value.unit ?? 'g·mm';
  const placings =
    target === undefined ? success([]) : placingsOf(given, { weight: target.size, angleDeg: target.angleDeg }, unit);
  if (!placings.ok) return fail(placings.problem);
  const inGmm = solved !== null && unit === 'g·mm';
  const found = inGmm ? solved.value.corrections.map(({ size }) => size) : [];
  const tooLarge = setting === null ? [] : weightNotes(inGmm ? solved.value.trials : [], found, setting);
  if (given.flag('json')) {
    io.stdout(
      `${JSON.stringify({ ...solved?.value.result, unit, placings: placings.value, allowance: setting, tooLarge })}\n`,
    );
    return 0;
  }
  const sheet = new Sheet(io, bench.units);
  sheet.block(
    'First',
    tooLarge.map(({ text }) => text),
  );
  if (solved !== null) sheet.block(solved.value.heading, solved.value.lines);
  sheet.block(
    'Where to put it',
    placings.value.map((placing) => placingText(placing, unit, bench.units)),
  );
  const rpm = rpmOf(given, bench, part);
  if (solved !== null && rpm !== null && rpm > 0) {
    sheet.block(`Forces at ${rpmText(rpm)}`, forceLines(solved.value, rpm, bench.units));
  }
  if (setting !== null) sheet.block('Allowance', allowanceLines(setting, found, bench.units));
  io.stdout(
    sheet
      .notes(solved?.value.notes ?? [])
      .cautions(solved?.value.procedure ?? 'balance-without-phase')
      .text(),
  );
  return 0;
}

const rpmOf = (given: Arguments, bench: Bench, part: BalancedPart): number | null =>
  part === 'tire'
    ? valueOf('tire', benchSpeeds(bench.job.vehicle, bench.condition)).wheelRpm
    : shaftRpmOf(given, bench);

/** Mass, speed and grade for the allowance; null where mass or speed is not known. */
function settingOf(given: Arguments, bench: Bench, part: BalancedPart) {
  const isTire = part === 'tire';
  const mass = isTire && given.text('mass') === undefined ? null : massOf(given, bench, 'rear');
  const rpm = rpmOf(given, bench, part);
  const limit = limitOf(isTire ? 'wheel-grade' : 'driveshaft-grade', bench.limits);
  if (mass === null || rpm === null || rpm <= 0) return null;
  return { massKg: mass.massKg, rpm, gradeMmps: numberOf(given, 'grade') ?? limit.value };
}

export const balanceCommand: Command = {
  name: 'balance',
  summary: 'work out correction weights from trial runs, and where to put them',
  usage: `Works out the correction weight from runs with a trial weight, by amplitude alone or with phase, and splits it over clamps, holes or weights at hand.

  perrev balance --found 0.40 --trial 500g·mm --at 0=0.57 --at 120=0.64 --at 240=0.13 --clamp 600g·mm
  perrev balance --found 0.42@65 --run 1:600g·mm@30=0.31@122 --mass 9kg --shaft-rpm 3000
  perrev balance --found found.csv --trial 25g --at 0=a.csv --at 120=b.csv --at 240=c.csv --tire 265/70R17 --axle 3.73 --speed 62mph

${optionHelp('Runs', [...RUN_ROWS, PART_ROW])}

${optionHelp('Placing', PLACING_ROWS)}

${optionHelp('Shaft', MASS_ROWS)}

${optionHelp('Speed', SPEED_ROWS)}

${optionHelp('Output', OUTPUT_ROWS)}`,
  run,
};
