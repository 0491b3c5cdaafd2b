/** `perrev runout`: dial readings told apart into runout and ovality, held to limits, with indexing and unbalance. */
import { judgeAt, benchSpeeds } from '../../core/driveline/judging/judge-measurement.ts';
import type { JudgedMeasurement } from '../../core/driveline/judging/judged-measurement.ts';
import { placeText } from '../../core/driveline/judging/judge-runout.ts';
import type { RunoutMeasurement } from '../../core/driveline/measurement.ts';
import { pieceAtJoint, pieceMassKg } from '../../core/driveline/shaft-tube.ts';
import { matchMounting } from '../../core/driveline/runout/match-mounting.ts';
import type { Problem } from '../../core/note.ts';
import { SHAFT_MASS_KG } from '../../core/quantity/plausible.ts';
import { MATCH_MOUNTING, matchMountingLines } from '../../core/report/match-mounting-text.ts';
import type { Vehicle } from '../../core/vehicle/vehicle.ts';
import type { Arguments } from '../arguments.ts';
import { choiceOf, valueOf } from '../arguments.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { optionHelp } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import {
  benchOf,
  numberOf,
  OUTPUT_ROWS,
  readBenchArguments,
  quantityOf,
  shaftRpmOf,
  SPEED_ROWS,
  benchProblemText,
} from './bench-options.ts';
import type { Turned } from '../../core/driveline/runout/runout-places.ts';
import { fitsOf, indexing, tubePlanes } from '../../core/driveline/runout/runout-places.ts';
import { INDEX_ROWS, PLACE_ROWS, readingsOf, runoutMeasurements } from './runout-input.ts';
import { harmonicsTable, indexLines, predictionLines, tubeLines } from './runout-text.ts';
import { Sheet } from './sheet.ts';

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readBenchArguments(args, [...PLACE_ROWS, ...INDEX_ROWS, ...SPEED_ROWS, ...OUTPUT_ROWS]);
  const bench = await benchOf(given, io);
  if (bench === null) return 1;
  const fail = (problem: Problem): ExitCode => {
    io.stderr(benchProblemText(problem));
    return 1;
  };
  const measurements = runoutMeasurements(given, bench);
  const driveshaftRpm = shaftRpmOf(given, bench);
  const wheelRpm = valueOf('tire', benchSpeeds(bench.job.vehicle, bench.condition)).wheelRpm;
  const vehicle = weighed(given, bench);
  const judged: (readonly [RunoutMeasurement, JudgedMeasurement])[] = [];
  for (const measurement of measurements) {
    const one = judgeAt(measurement, vehicle, { driveshaftRpm, wheelRpm, limits: bench.limits });
    if (!one.ok) return fail(one.problem);
    judged.push([measurement, one.value]);
  }
  const fits = fitsOf(measurements);
  if (!fits.ok) return fail(fits.problem);
  const bolts = boltsOf(given);
  const end = `tube-${choiceOf('flange-at', given.text('flange-at') ?? 'rear', ['front', 'rear'] as const)}` as const;
  const positions = bolts === null ? null : indexing(fits.value, end, bolts, turnedOf(given, bolts));
  if (positions !== null && !positions.ok) return fail(positions.problem);
  const piece = pieceAtJoint(vehicle, 'rear');
  const mass = piece === undefined ? null : pieceMassKg(piece);
  const tube = mass === null ? null : tubePlanes(fits.value, mass.massKg, driveshaftRpm);
  const match = matchMounting(fits.value, bench.limits);
  if (given.flag('json')) {
    const places = judged.map(([{ place }, one]) => ({ place, ...one, fit: fits.value.get(place) ?? null }));
    io.stdout(`${JSON.stringify({ places, positions: positions?.value ?? null, tube, matchMounting: match })}\n`);
    return 0;
  }
  const has = (verdict: JudgedMeasurement['verdict']) => judged.some(([, one]) => one.verdict === verdict);
  const verdict = has('outside')
    ? 'OUTSIDE the limits'
    : has('cannot-tell')
      ? 'not told by these readings'
      : 'inside the limits';
  // Three stations together say more than each alone.
  const alone = judged.filter(([{ place }]) => tube === null || !place.startsWith('tube'));
  const predictions = alone.flatMap(([{ place }, one]) => one.predicted.map((p) => [placeText(place), p] as const));
  const sheet = new Sheet(io, bench.units)
    .judged(
      `Runout: ${verdict}`,
      judged.flatMap(([, one]) => one.judged),
    )
    .block('Once and twice round', fits.value.size === 0 ? [] : [harmonicsTable(fits.value, bench.units)])
    .block('What that would do', predictionLines(predictions, bench.units));
  if (bolts !== null && positions?.value)
    sheet.block('Shaft turned on its flange', indexLines(positions.value, bolts, bench.units));
  if (tube !== null) sheet.block('Unbalance that the tube’s runout implies', tubeLines(tube, bench.units));
  if (match !== null) sheet.block(MATCH_MOUNTING, matchMountingLines(match, bench.units));
  const notes = judged.flatMap(([, one]) => one.notes);
  const missing = bolts !== null && positions?.value === null;
  const text = `Indexing needs readings around the clock at the ${end.replace('-', ' ')}, and the flange’s own (--flange-radial) or a second set with the shaft turned (--turned).`;
  sheet.notes(missing ? [...notes, { code: 'indexing-needs', severity: 'info', text }] : notes);
  io.stdout(sheet.cautions('runout', ...(match?.pays ? ['match-mounting' as const] : [])).text());
  return 0;
}

/** The vehicle with a weighed shaft where its mass was given. */
function weighed(given: Arguments, { job }: Bench): Vehicle {
  const massKg = quantityOf(given, 'mass', SHAFT_MASS_KG);
  if (massKg === undefined) return job.vehicle;
  if (massKg <= 0) throw new UsageError('--mass must be greater than zero.');
  const pieces = job.vehicle.driveshaftPieces ?? [{}];
  return { ...job.vehicle, driveshaftPieces: pieces.map((piece) => ({ ...piece, massKg })) };
}

function boltsOf(given: Arguments): number | null {
  const bolts = numberOf(given, 'bolts');
  if (bolts === undefined) return null;
  if (!Number.isInteger(bolts) || bolts < 2 || bolts > 48)
    throw new UsageError('--bolts must be a whole number from 2 to 48.');
  return bolts;
}

function turnedOf(given: Arguments, bolts: number): Turned | null {
  const readingsMm = readingsOf(given, 'turned');
  const steps = numberOf(given, 'turned-by');
  if (readingsMm === undefined && steps === undefined) return null;
  if (readingsMm === undefined || steps === undefined || !Number.isInteger(steps) || steps % bolts === 0) {
    throw new UsageError(
      '--turned and --turned-by go together: the readings, and by how many bolt positions the shaft was turned.',
    );
  }
  return { readingsMm, steps };
}

export const runoutCommand: Command = {
  name: 'runout',
  summary: 'judge dial readings, tell runout from ovality, foretell re-indexing and match mounting',
  usage: `Judges runout by dial, tells runout from ovality, foretells what turning the shaft on its flange or the tire on its rim leaves, and the unbalance it implies.

  perrev runout --tube-middle 0.5mm --flange-radial 0.10mm --mass 9kg --shaft-rpm 3000
  perrev runout --bolts 4 --tube-rear "0/.06/.15/.22/.24/.18/.09/.02 mm" --flange-radial "0/.02/.06/.09/.10/.08/.04/.01 mm"

  perrev runout --tire-radial "0/.4/.7/.8/.6/.3/.0/-.1 mm" --wheel-radial "0/.1/.2/.2/.1/0/-.1/-.1 mm"

${optionHelp('Places', PLACE_ROWS)}

${optionHelp('Shaft', INDEX_ROWS)}

${optionHelp('Speed', SPEED_ROWS)}

${optionHelp('Output', OUTPUT_ROWS)}`,
  run,
};
