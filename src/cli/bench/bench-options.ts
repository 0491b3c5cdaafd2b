/** Options all bench commands share: speed of the shaft, limits, units, output. */
import type { LimitId, LimitOverrides } from '../../core/driveline/limits/limit.ts';
import { allLimits } from '../../core/driveline/limits/limit.ts';
import { benchSpeeds } from '../../core/driveline/judging/judge-measurement.ts';
import type { Problem } from '../../core/note.ts';
import type { ShaftPlace } from '../../core/driveline/measurement.ts';
import type { Job } from '../../core/job/job.ts';
import { JOB_SCHEMA_VERSION } from '../../core/job/job.ts';
import { americanWord } from '../../core/job/migrate.ts';
import { DRIVESHAFT_RPM } from '../../core/quantity/plausible.ts';
import type { QuantityKind } from '../../core/quantity/quantity-kinds.ts';
import { LENGTH_MM, MASS_KG, RATIO } from '../../core/quantity/quantity-kinds.ts';
import { parseQuantity } from '../../core/quantity/quantity.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import type { RunCondition } from '../../core/vehicle/vehicle.ts';
import type { Arguments } from '../arguments.ts';
import { didYouMean, readArguments, valueOf } from '../arguments.ts';
import type { Io } from '../io.ts';
import { UsageError } from '../io.ts';
import { isJobFile, loadJob, problemText } from '../load.ts';
import type { OptionRow } from '../option-table.ts';
import { RUN_OPTIONS, VEHICLE_OPTIONS } from '../option-table.ts';
import { conditionOf, jobWithOptions, unitsOf, vehicleOf } from '../options.ts';

const named = (rows: readonly OptionRow[], names: readonly string[]): OptionRow[] =>
  rows.filter(({ name }) => names.includes(name));

export const SPEED_ROWS: readonly OptionRow[] = [
  { name: 'shaft-rpm', value: '3000', help: 'driveshaft speed at the complaint; else worked out from the next ones' },
  ...named(RUN_OPTIONS, ['speed', 'speed-source']),
  ...named(VEHICLE_OPTIONS, ['tire', 'rolling-circumference', 'revs-per-mile', 'axle', 'layout', 'front-axle']),
];

export const OUTPUT_ROWS: readonly OptionRow[] = [
  {
    name: 'limit',
    value: 'end-play=0.10mm',
    many: true,
    help: 'the maker’s figure in place of a default; repeat for more',
  },
  {
    name: 'units',
    value: 'us|metric',
    help: 'units of the text, and of numbers without a unit (default: us text, units required)',
  },
  { name: 'json', help: 'print the result as one JSON object' },
];

/** Words → options. A value may begin with a minus sign: dial readings do. */
export const readBenchArguments = (args: readonly string[], rows: readonly OptionRow[]): Arguments => {
  const joined: string[] = [];
  for (const word of args) {
    const before = joined.at(-1) ?? '';
    if (/^[-−][\d.]/u.test(word) && /^--[a-z-]+$/u.test(before)) joined[joined.length - 1] = `${before}=${word}`;
    else joined.push(word);
  }
  return readArguments(joined, rows);
};

export interface Bench {
  readonly job: Job;
  readonly fromFile: boolean;
  readonly units: UnitSystem;
  readonly limits: LimitOverrides;
  readonly condition: RunCondition;
}

/** The job of a bench command: out of a file, or of options alone. Null after a problem has been told. */
export async function benchOf(given: Arguments, io: Io): Promise<Bench | null> {
  const [file, more] = given.files;
  if (more !== undefined || (file !== undefined && file !== '-' && !isJobFile(file))) {
    throw new UsageError(`"${more ?? file}" is not a job file; the bench takes options, or one job file (*.job.json).`);
  }
  const shared = { units: unitsOf(given), limits: limitsOf(given) };
  if (file === undefined) {
    const job = { schemaVersion: JOB_SCHEMA_VERSION, vehicle: vehicleOf(given), work: [], runs: [], measurements: [] };
    return { job, fromFile: false, condition: conditionOf<RunCondition>(given, {}, 0, 1), ...shared };
  }
  const read = await loadJob(io, file);
  if (!read.ok) {
    io.stderr(problemText(read.problem));
    return null;
  }
  const job = jobWithOptions(given, read.value);
  const condition = job.runs[0] ?? conditionOf<RunCondition>(given, {}, 0, 1);
  return { job, fromFile: true, condition, ...shared, limits: { ...job.limits, ...shared.limits } };
}

/** A problem of the bench in words; its key is of the job file, and says nothing to who typed options. */
export const benchProblemText = ({ key: _key, ...problem }: Problem): string => problemText(problem);

/** Driveshaft speed, rev/min: as given, else from the road speed, tire and axle ratio; null where not known. */
export function shaftRpmOf(given: Arguments, { job, condition }: Bench, shaft?: ShaftPlace): number | null {
  const rpm = quantityOf(given, 'shaft-rpm', DRIVESHAFT_RPM, 'rpm');
  if (rpm !== undefined) return rpm;
  return valueOf('tire', benchSpeeds(job.vehicle, condition, shaft)).driveshaftRpm;
}

/** One quantity, or undefined where the option was not given. Without a unit only where --units says which. */
export function quantityOf(
  given: Arguments,
  name: string,
  kind: QuantityKind,
  unit: string | undefined = bareUnit(given, kind),
): number | undefined {
  const text = given.text(name);
  return text === undefined ? undefined : valueOf(name, parseQuantity(text, kind, unit));
}

/** A whole or broken number above zero, without unit. */
export function numberOf(given: Arguments, name: string): number | undefined {
  const value = quantityOf(given, name, { ...RATIO, name: 'number' });
  if (value !== undefined && !(value > 0)) throw new UsageError(`--${name} must be greater than zero.`);
  return value;
}

/** Unit of numbers typed without one: only where --units was given, so that nothing is guessed. */
export function bareUnit(given: Arguments, kind: QuantityKind): string | undefined {
  const units = given.text('units') === undefined ? undefined : unitsOf(given);
  if (units === undefined) return undefined;
  if (kind.units === LENGTH_MM.units) return units === 'us' ? 'in' : 'mm';
  if (kind.units === MASS_KG.units) return units === 'us' ? 'lb' : 'kg';
  return undefined;
}

/** Replacements of default limits, each labelled as the maker's. */
function limitsOf(given: Arguments): LimitOverrides {
  const known = allLimits();
  const entries = given.texts('limit').map((text): [LimitId, { value: number }] => {
    const [id = '', figure = ''] = text.split('=').map((part) => part.trim());
    const limit = known.find((one) => one.id === americanWord(id));
    if (limit === undefined) {
      throw new UsageError(
        `--limit "${text}": no limit is called "${id}".${didYouMean(
          id,
          known.map((one) => one.id),
        )} There are: ${known.map((one) => one.id).join(', ')}.`,
      );
    }
    const value =
      limit.unit === 'mm'
        ? valueOf('limit', parseQuantity(figure, LENGTH_MM, 'mm'))
        : Number(figure.replace(',', '.').replace(/\s*(°|rad\/s²|rad\/s2|g|mm\/s)$/u, ''));
    if (figure === '' || !(value > 0)) {
      throw new UsageError(`--limit "${text}": give a figure above zero, as in --limit ${id}=${limit.value}.`);
    }
    return [limit.id, { value }];
  });
  return Object.fromEntries(entries);
}
