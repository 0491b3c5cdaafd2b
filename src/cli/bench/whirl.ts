/** `perrev whirl`: critical speed of each driveshaft piece and the margin at speed. */
import { benchSpeeds } from '../../core/driveline/judging/judge-measurement.ts';
import type { WhirlPiece } from '../../core/driveline/whirl.ts';
import { whirl } from '../../core/driveline/whirl.ts';
import { DRIVESHAFT_RPM, LENGTHS } from '../../core/quantity/plausible.ts';
import { LENGTH_MM, SPEED, type QuantityKind } from '../../core/quantity/quantity-kinds.ts';
import { parseQuantity } from '../../core/quantity/quantity.ts';
import { judgedText } from '../../core/report/bench-text.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { frequencyText, rpmText } from '../../core/report/format.ts';
import { whirlAdvice } from '../../core/report/whirl-text.ts';
import { table } from '../../core/report/wrap.ts';
import { hzFromRpm } from '../../core/units.ts';
import type { ShaftPiece } from '../../core/vehicle/vehicle.ts';
import type { Arguments } from '../arguments.ts';
import { choiceOf, valueOf } from '../arguments.ts';
import type { Command, ExitCode, Io } from '../io.ts';
import { UsageError } from '../io.ts';
import type { OptionRow } from '../option-table.ts';
import { optionHelp } from '../option-table.ts';
import type { Bench } from './bench-options.ts';
import {
  bareUnit,
  benchOf,
  OUTPUT_ROWS,
  readBenchArguments,
  quantityOf,
  shaftRpmOf,
  SPEED_ROWS,
  benchProblemText,
} from './bench-options.ts';
import { Sheet } from './sheet.ts';

const ROWS: readonly OptionRow[] = [
  {
    name: 'length',
    value: '1320mm',
    many: true,
    help: 'joint center to joint center; repeat for each piece, front to rear',
  },
  { name: 'outer', value: '76.2mm', many: true, help: 'outer diameter of the tube' },
  { name: 'wall', value: '1.65mm', many: true, help: 'wall thickness of the tube' },
  { name: 'material', value: 'steel', many: true, help: 'steel or aluminum (default steel)' },
  { name: 'top-rpm', value: '4800', help: 'driveshaft speed at top speed' },
  { name: 'top-speed', value: '100mph', help: 'top speed of the vehicle, instead' },
];

/** By either spelling; the job file has the longer one. */
const materialOf = (text: string): 'steel' | 'aluminium' => {
  const said = /^\s*aluminium\s*$/iu.test(text) ? 'aluminum' : text;
  return choiceOf('material', said, ['steel', 'aluminum'] as const) === 'steel' ? 'steel' : 'aluminium';
};

function piecesOf(given: Arguments, { job }: Bench): readonly ShaftPiece[] {
  const unit = bareUnit(given, LENGTH_MM);
  const lengths = (name: string, kind: QuantityKind) =>
    given.texts(name).map((text) => valueOf(name, parseQuantity(text, kind, unit)));
  const [length, outer, wall] = [
    lengths('length', LENGTHS.piece),
    lengths('outer', LENGTHS.tube),
    lengths('wall', LENGTHS.wall),
  ];
  const materials = given.texts('material').map((text) => materialOf(text));
  if (length.length === 0 && outer.length === 0 && wall.length === 0) {
    const pieces = job.vehicle.driveshaftPieces ?? [];
    if (pieces.length > 0) return pieces;
    throw new UsageError(
      'give each piece as in --length 1320mm --outer 76.2mm --wall 1.65mm, or a job file that holds them.',
    );
  }
  for (const [name, values] of [
    ['outer', outer],
    ['wall', wall],
    ['material', materials],
  ] as const) {
    if (values.length > 1 && values.length !== length.length) {
      throw new UsageError(
        `--${name} was given ${values.length} times for ${length.length} pieces; give it once for all, or once for each.`,
      );
    }
  }
  return length.map((lengthMm, piece): ShaftPiece => {
    const tubeOuterMm = outer[piece] ?? outer[0];
    const wallMm = wall[piece] ?? wall[0];
    const material = materials[piece] ?? materials[0];
    return {
      lengthMm,
      ...(tubeOuterMm === undefined ? {} : { tubeOuterMm }),
      ...(wallMm === undefined ? {} : { wallMm }),
      ...(material === undefined ? {} : { material }),
    };
  });
}

/** Driveshaft speed at top speed, rev/min; null where not known. */
function topRpmOf(given: Arguments, { job }: Bench): number | null {
  const rpm = quantityOf(given, 'top-rpm', DRIVESHAFT_RPM, 'rpm');
  if (rpm !== undefined) return rpm;
  const speedMps = quantityOf(given, 'top-speed', SPEED, 'mph');
  if (speedMps === undefined) return null;
  const speeds = valueOf('tire', benchSpeeds(job.vehicle, { speedMps, speedSource: 'gps' }));
  if (speeds.driveshaftRpm !== null) return speeds.driveshaftRpm;
  throw new UsageError('--top-speed needs --tire and --axle, to know how fast the driveshaft turns then.');
}

async function run(args: string[], io: Io): Promise<ExitCode> {
  const given = readBenchArguments(args, [...ROWS, ...SPEED_ROWS, ...OUTPUT_ROWS]);
  const bench = await benchOf(given, io);
  if (bench === null) return 1;
  const pieces = piecesOf(given, bench);
  const speeds = { complaintRpm: shaftRpmOf(given, bench), topRpm: topRpmOf(given, bench) };
  const result = whirl(pieces, { ...speeds, limits: bench.limits });
  if (!result.ok) {
    io.stderr(benchProblemText(result.problem));
    return 1;
  }
  if (given.flag('json')) {
    io.stdout(`${JSON.stringify({ input: { pieces, ...speeds }, pieces: result.value })}\n`);
    return 0;
  }
  const sheet = new Sheet(io, bench.units).block('Critical speeds', [speedTable(result.value)]);
  for (const [index, piece] of result.value.entries())
    sheet.block(`Piece ${index + 1}`, pieceLines(piece, result.value.length, bench.units));
  const text =
    'Real shafts are lower than this figure for a bare tube between two pins: yokes, soft mounts and dents all take from it.';
  io.stdout(
    sheet
      .notes([{ code: 'bare-tube', severity: 'info', text }])
      .cautions('whirl')
      .text(),
  );
  return 0;
}

const speedTable = (pieces: readonly WhirlPiece[]): string =>
  table(
    [
      ['', 'critical', '', 'half-critical', 'safe below', 'tube'],
      ...pieces.map((piece, index) => [
        `piece ${index + 1}`,
        rpmText(piece.criticalRpm),
        frequencyText(hzFromRpm(piece.criticalRpm)),
        rpmText(piece.halfCriticalRpm),
        rpmText(piece.safeRpm),
        `${piece.massPerMetreKg.toFixed(2)} kg/m`,
      ]),
    ],
    ['left', 'right', 'right', 'right', 'right', 'right'],
  );

function pieceLines(piece: WhirlPiece, pieceCount: number, units: UnitSystem): string[] {
  const margins = [piece.atComplaint, piece.atTopSpeed].filter((number) => number !== null);
  return [...margins.map((number) => judgedText(number, units)), ...whirlAdvice(piece, pieceCount)];
}

export const whirlCommand: Command = {
  name: 'whirl',
  summary: 'work out the critical speed of each driveshaft piece and the margin at speed',
  usage: `Works out at what speed each driveshaft piece would whirl, how near the complaint and top speed come, and where 2× drives it.

  perrev whirl --length 1524mm --outer 88.9mm --wall 2.11mm --shaft-rpm 3100 --top-rpm 4800
  perrev whirl recordings/comeback.job.json --top-speed 100mph

${optionHelp('Pieces', ROWS)}

${optionHelp('Speed', SPEED_ROWS)}

${optionHelp('Output', OUTPUT_ROWS)}`,
  run,
};
