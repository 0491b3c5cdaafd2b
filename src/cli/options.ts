/** Options → vehicle, runs and work of a job; options win over what a job file says. */
import type { Job, Run, WorkDone } from '../core/job/job.ts';
import { CAUSE_WEIGHTS, type CauseId } from '../core/diagnosis/weights.ts';
import { JOB_SCHEMA_VERSION } from '../core/job/job.ts';
import { americanWord } from '../core/job/migrate.ts';
import {
  parseFrequencyHz,
  parseLengthM,
  parseRatio,
  parseRpm,
  parseSpeedMps,
  parseTimeS,
} from '../core/quantity/quantity.ts';
import { givenUnitOf, type GivenUnit } from '../core/reading/given.ts';
import { WORK_DONE } from '../core/job/work-done.ts';
import type { UnitSystem } from '../core/report/format.ts';
import { parseTireSize } from '../core/vehicle/tire-size.ts';
import type { Accessory, Load, RunCondition, SpeedSource, TireSpec, Vehicle } from '../core/vehicle/vehicle.ts';
import type { Arguments } from './arguments.ts';
import { choiceOf, valueOf } from './arguments.ts';
import { UsageError } from './io.ts';

const LAYOUTS = ['rear-drive', 'front-drive', 'four-wheel-drive', 'electric'] as const;
const SPEED_SOURCES: readonly SpeedSource[] = ['dial', 'gps', 'obd', 'logged'];
const LOADS: readonly Load[] = ['cruise', 'pull', 'coast', 'neutral', 'brake', 'standing'];

/** The reader's units; US unless told otherwise. */
export const unitsOf = (given: Arguments): UnitSystem =>
  choiceOf('units', given.text('units') ?? 'us', ['us', 'metric']);

const numberOf = (given: Arguments, name: string): number | undefined => {
  const text = given.text(name);
  return text === undefined
    ? undefined
    : positive(name, valueOf(name, parseRatio(text, { range: [0, 1e6], name: 'number' })));
};

function positive(name: string, value: number): number {
  if (!(value > 0) || !Number.isFinite(value)) throw new UsageError(`--${name} must be greater than zero.`);
  return value;
}

function wholeOf(given: Arguments, name: string): number | undefined {
  const value = numberOf(given, name);
  if (value !== undefined && !Number.isInteger(value)) throw new UsageError(`--${name} must be a whole number.`);
  return value;
}

function tireOf(given: Arguments): TireSpec | undefined {
  const size = given.text('tire');
  const circumference = given.text('rolling-circumference');
  const revsPerMile = numberOf(given, 'revs-per-mile');
  const revsPerKm = numberOf(given, 'revs-per-km');
  const specs: TireSpec[] = [];
  if (size !== undefined) {
    valueOf('tire', parseTireSize(size));
    specs.push({ kind: 'size', size });
  }
  if (circumference !== undefined)
    specs.push({
      kind: 'rolling-circumference',
      circumferenceM: positive(
        'rolling-circumference',
        valueOf('rolling-circumference', parseLengthM(circumference, 'm')),
      ),
    });
  if (revsPerMile !== undefined) specs.push({ kind: 'revs-per-mile', revsPerMile });
  if (revsPerKm !== undefined) specs.push({ kind: 'revs-per-km', revsPerKm });
  // A measured distance is better than the sidewall: it wins where both are given.
  return specs.at(-1);
}

function accessoriesOf(given: Arguments): Accessory[] {
  return given.texts('accessory').map((text) => {
    const [name = '', ratio = ''] = text.split('=');
    if (name.trim() === '' || ratio.trim() === '')
      throw new UsageError(`--accessory "${text}": give a name and a ratio, as in --accessory alternator=2.84.`);
    return { name: name.trim(), ratio: positive('accessory', valueOf('accessory', parseRatio(ratio))) };
  });
}

/** The vehicle of a job, changed by what the options say. */
export function vehicleOf(given: Arguments, base: Vehicle = { layout: 'rear-drive' }): Vehicle {
  const layout = given.text('layout');
  const accessories = accessoriesOf(given);
  const changes = {
    layout: layout === undefined ? undefined : choiceOf('layout', layout, LAYOUTS),
    tire: tireOf(given),
    axleRatio: numberOf(given, 'axle'),
    frontAxleRatio: numberOf(given, 'front-axle'),
    finalDrive: numberOf(given, 'final-drive'),
    transferRatio: numberOf(given, 'transfer-ratio'),
    cylinders: wholeOf(given, 'cylinders'),
    pinionTeeth: wholeOf(given, 'pinion-teeth'),
    ringTeeth: wholeOf(given, 'ring-teeth'),
    polePairs: wholeOf(given, 'pole-pairs'),
    converter: given.flag('converter') ? true : undefined,
    tripodJoints: given.flag('tripod') ? true : undefined,
    accessories: accessories.length > 0 ? accessories : undefined,
  };
  return { ...base, ...defined(changes) };
}

const defined = <T extends object>(values: T): { [K in keyof T]?: Exclude<T[K], undefined> } =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: Exclude<T[K], undefined>;
  };

/** One value for all runs, or one a run. */
function forRun(given: Arguments, name: string, index: number, runs: number): string | undefined {
  const values = given.texts(name);
  if (values.length > 1 && values.length !== runs) {
    throw new UsageError(
      `--${name} was given ${values.length} times for ${runs} recordings; give it once for all, or once for each in their order.`,
    );
  }
  return values.length === 1 ? values[0] : values[index];
}

/** The condition of run `index`, changed by what the options say. */
export function conditionOf<T extends RunCondition & Partial<Run>>(
  given: Arguments,
  base: T,
  index: number,
  runs: number,
): T {
  const at = (name: string): string | undefined => forRun(given, name, index, runs);
  const speed = at('speed');
  const source = at('speed-source');
  const gear = at('gear');
  const rpm = at('rpm');
  const load = at('load');
  const rate = at('rate');
  const unit = at('unit');
  const from = at('from');
  const to = at('to');
  return {
    ...base,
    ...defined({
      speedMps: speed === undefined ? undefined : valueOf('speed', parseSpeedMps(speed, 'mph')),
      speedSource: source === undefined ? undefined : choiceOf('speed-source', source, SPEED_SOURCES),
      gearRatio: gear === undefined ? undefined : positive('gear', valueOf('gear', parseRatio(gear))),
      engineRpm: rpm === undefined ? undefined : valueOf('rpm', parseRpm(rpm, 'rpm')),
      load: load === undefined ? undefined : choiceOf('load', load, LOADS),
      samplingRateHz: rate === undefined ? undefined : positive('rate', valueOf('rate', parseFrequencyHz(rate, 'Hz'))),
      fromS: from === undefined ? undefined : timeOf('from', from),
      toS: to === undefined ? undefined : timeOf('to', to),
      accelerationUnit: unit === undefined ? undefined : accelerationUnitOf(unit),
    }),
  };
}

const timeOf = (name: string, text: string): number =>
  valueOf(name, parseTimeS(text, 's', { range: [0, 345_600], name: 'time in the recording' }));

export function accelerationUnitOf(text: string): GivenUnit {
  const unit = givenUnitOf(text);
  if (!unit) throw new UsageError(`--unit "${text}" is not known; use one of g, mg, m/s2, mm/s2.`);
  return unit;
}

/** A job out of recordings named on the command line. */
export function jobOfFiles(given: Arguments): Job {
  const runs = given.files.map((file, index): Run => conditionOf<Run>(given, { file }, index, given.files.length));
  return { schemaVersion: JOB_SCHEMA_VERSION, vehicle: vehicleOf(given), work: workOf(given), runs, measurements: [] };
}

/** A job file's job, changed by what the options say. */
export function jobWithOptions(given: Arguments, job: Job): Job {
  return {
    ...job,
    vehicle: vehicleOf(given, job.vehicle),
    work: [...new Set([...job.work, ...workOf(given)])],
    ...repairedOf(given, job.repaired),
    runs: job.runs.map((run, index) => conditionOf(given, run, index, job.runs.length)),
  };
}

const CAUSE_IDS = Object.keys(CAUSE_WEIGHTS) as readonly CauseId[];

function repairedOf(given: Arguments, before: readonly string[] = []): Pick<Job, 'repaired'> {
  const ids = given
    .texts('repaired')
    .flatMap((text) => text.split(','))
    .filter((id) => id.trim() !== '')
    .map((id) => choiceOf('repaired', americanWord(id), CAUSE_IDS));
  const all = [...new Set([...before, ...ids])];
  return all.length === 0 ? {} : { repaired: all };
}

function workOf(given: Arguments): WorkDone[] {
  const words = given
    .texts('work')
    .flatMap((text) => text.split(','))
    .filter((word) => word.trim() !== '')
    .map((word) => choiceOf('work', americanWord(word), WORK_DONE));
  return WORK_DONE.filter((work) => words.includes(work));
}
