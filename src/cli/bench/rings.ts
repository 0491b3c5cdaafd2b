/** `perrev rings`: end play, retaining rings and centering of a joint. */
import { centringEffect, jointOffset, offsetOfWholeAllowanceMm } from '../../core/driveline/rings/centring.ts';
import { judgeEndPlay } from '../../core/driveline/rings/end-play.ts';
import { limitOf } from '../../core/driveline/limits/limit.ts';
import { ringRemedy } from '../../core/driveline/rings/ring-remedy.ts';
import { judgeRings } from '../../core/driveline/rings/ring-seat.ts';
import { selectRings } from '../../core/driveline/rings/ring-selection.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { optionHelp } from '../option-table.ts';
import {
  benchOf,
  numberOf,
  OUTPUT_ROWS,
  readBenchArguments,
  shaftRpmOf,
  SPEED_ROWS,
  benchProblemText,
} from './bench-options.ts';
import { jointOf, MASS_ROWS, massOf, RING_ROWS, ringInput } from './rings-input.ts';
import { centringLines, choiceLines, seatTable, tightLines } from './rings-text.ts';
import { Sheet } from './sheet.ts';

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readBenchArguments(args, [...RING_ROWS, ...MASS_ROWS, ...SPEED_ROWS, ...OUTPUT_ROWS]);
  const bench = await benchOf(given, io);
  if (bench === null) return 1;
  const joint = jointOf(given);
  const { axes, bare, stock, playMm } = ringInput(given, bench, joint);
  if (axes.length === 0 && playMm === null && bare.length === 0) {
    throw new UsageError(
      bench.fromFile
        ? 'the job file holds no rings and no end play of this joint; add a measurement of the kind "rings" or "end-play", name another joint with --at, or give them as options.'
        : 'give rings as in --groove 81.85mm --cross 78.60mm --rings 1.55/1.65mm, or a dial reading as in --play 0.03/0.06mm.',
    );
  }
  if (stock.length > 0 && bare.length === 0) {
    throw new UsageError('--available needs --groove and --cross of each axis, to know what must fit.');
  }
  const play = playMm === null ? null : judgeEndPlay(playMm, bench.limits);
  const rings = axes.length === 0 ? null : judgeRings(axes, bench.limits);
  const selection = stock.length === 0 ? null : selectRings(bare, stock, bench.limits);
  for (const result of [play, rings, selection]) {
    if (result === null || result.ok) continue;
    io.stderr(benchProblemText(result.problem));
    return 1;
  }
  const seated = rings?.ok ? rings.value.axes : [];
  const offset = seated.length > 0 ? jointOffset(seated) : null;
  const offsetMm = offset?.offsetMm ?? (play?.ok ? play.value.freeOffsetMm : null);
  const rpm = shaftRpmOf(given, bench);
  const mass = massOf(given, bench, joint);
  const setting =
    mass === null || rpm === null || rpm <= 0
      ? null
      : { ...mass, rpm, gradeMmps: numberOf(given, 'grade') ?? limitOf('driveshaft-grade', bench.limits).value };
  const centring = setting === null || offsetMm === null ? null : centringEffect({ ...setting, offsetMm });
  const best = selection?.ok ? selection.value.best : null;
  const left = setting === null || best === null ? null : centringEffect({ ...setting, offsetMm: best.offsetMm });
  const wholeAllowanceMm = setting === null ? null : offsetOfWholeAllowanceMm(setting);
  const valueOf = <T>(result: { ok: true; value: T } | { ok: false } | null): T | null =>
    result?.ok ? result.value : null;
  if (given.flag('json')) {
    const result = { joint, play: valueOf(play), rings: valueOf(rings), offset, setting, centring, wholeAllowanceMm };
    io.stdout(`${JSON.stringify({ ...result, selection: valueOf(selection), left })}\n`);
    return 0;
  }
  // A joint typed in without saying which is not called the rear one.
  const place = given.text('at') === undefined && !bench.fromFile ? '' : `${joint} `;
  const inside = (play?.ok ? play.value.inside : true) && (rings?.ok ? rings.value.inside : true);
  const sheet = new Sheet(io, bench.units);
  if (play !== null || rings !== null) {
    const judged = [...(play?.ok ? play.value.axes : []), ...(rings?.ok ? rings.value.judged : [])];
    sheet.judged(`The ${place}joint: ${inside ? 'inside the limits' : 'OUTSIDE the limits'}`, judged);
  }
  if (rings?.ok && rings.value.tight) {
    sheet.block('How the cross sits', tightLines(seated, bench.units));
  } else {
    if (seated.length > 0) sheet.block('How the cross sits', [seatTable(seated, bench.units)]);
    const axisCount = seated.length;
    const facts = { offset, axisCount, offsetMm, centring, setting, wholeAllowanceMm, units: bench.units };
    sheet.block('What that does', centringLines(facts));
  }
  const remedy = selection === null && axes.length > 0 ? ringRemedy(axes, bench.limits) : null;
  if (remedy !== null) sheet.block('What puts it right', [remedy]);
  if (selection?.ok) sheet.block('Rings to fit', choiceLines(selection.value, left, bench.units));
  io.stdout(sheet.cautions('end-play', 'rings').text());
  return 0;
}

export const ringsCommand: Command = {
  name: 'rings',
  summary: 'judge end play and centering of a joint, and choose its retaining rings',
  usage: `Judges the end play of a joint, how its retaining rings center it, and the unbalance and force an off-center joint makes.

  perrev rings --groove 81.85mm --cross 78.60mm --rings 1.55/1.65mm --mass 9kg --shaft-rpm 3000
  perrev rings --groove 81.85mm --groove 81.88mm --cross 78.60mm --cross 78.61mm --available "1.50x2/1.55/1.60/1.65 mm"

${optionHelp('Joint', RING_ROWS)}

${optionHelp('Shaft', MASS_ROWS)}

${optionHelp('Speed', SPEED_ROWS)}

${optionHelp('Output', OUTPUT_ROWS)}`,
  run,
};
