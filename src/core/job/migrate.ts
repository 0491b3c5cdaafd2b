/** Takes the content of an older job file to the present schema, one version at a time. */
import { isObject } from './guards.ts';
import { JOB_SCHEMA_VERSION } from './job.ts';

type Content = Record<string, unknown>;
type Migration = (content: Content) => Content;

const renamed = (content: unknown, names: Readonly<Record<string, string>>): unknown =>
  isObject(content)
    ? Object.fromEntries(
        Object.entries(content).map(([key, value]) => {
          const name = Object.hasOwn(names, key) ? names[key] : undefined;
          return [name === undefined || Object.hasOwn(content, name) ? key : name, value];
        }),
      )
    : content;

/** Version 0 had the command line's short names; files written by hand without a schemaVersion still may. */
const VEHICLE_NAMES = {
  tireSize: 'tire',
  rollingCircumference: 'tire',
  axle: 'axleRatio',
  frontAxle: 'frontAxleRatio',
  gears: 'gearRatios',
};
const RUN_NAMES = { recording: 'file', gear: 'gearRatio', rpm: 'engineRpm', source: 'speedSource' };

/** Version 0 said once, in `units`, what bare speeds mean; version 1 wants the unit with each number. */
const withSpeedUnit = (run: unknown, units: unknown): unknown => {
  if (!isObject(run) || typeof run['speed'] !== 'number') return run;
  const unit = units === 'us' ? 'mph' : units === 'metric' ? 'km/h' : null;
  return unit === null ? run : { ...run, speed: `${run['speed']} ${unit}` };
};

const fromVersion0: Migration = ({ units, ...content }) => {
  const runs = content['runs'];
  const keptUnits = units === undefined || units === 'us' || units === 'metric' ? {} : { units };
  return {
    ...content,
    ...keptUnits,
    ...(isObject(content['vehicle']) ? { vehicle: renamed(content['vehicle'], VEHICLE_NAMES) } : {}),
    ...(Array.isArray(runs) ? { runs: runs.map((run) => withSpeedUnit(renamed(run, RUN_NAMES), units)) } : {}),
  };
};

/** Versions up to 1 spelled work, limits, joints and checks of the center the other way. */
export const americanWord = (word: string): string => word.replace('centre', 'center');
const inAmerican = (value: unknown): unknown => (typeof value === 'string' ? americanWord(value) : value);

/** Keys of a measurement whose value is a word of the file. */
const WORD_KEYS = ['joint', 'place', 'checkId'];

const measurementInAmerican = (measurement: unknown): unknown =>
  isObject(measurement)
    ? Object.fromEntries(
        Object.entries(measurement).map(([key, value]) => [key, WORD_KEYS.includes(key) ? inAmerican(value) : value]),
      )
    : measurement;

/** A figure under the new name, if both are there, is the later one. */
const limitsInAmerican = (limits: Content): Content =>
  renamed(limits, Object.fromEntries(Object.keys(limits).map((id) => [id, americanWord(id)]))) as Content;

const fromVersion1: Migration = (content) => {
  const { work, measurements, limits } = content;
  return {
    ...content,
    ...(Array.isArray(work) ? { work: work.map(inAmerican) } : {}),
    ...(Array.isArray(measurements) ? { measurements: measurements.map(measurementInAmerican) } : {}),
    ...(isObject(limits) ? { limits: limitsInAmerican(limits) } : {}),
  };
};

/** Index: the version a migration starts from. */
const MIGRATIONS: readonly Migration[] = [fromVersion0, fromVersion1];

/**
 * Content in the present schema.
 *
 * @param version The file's schema version, 0 up to the present one.
 */
export const migrate = (content: Content, version: number): Content => ({
  ...MIGRATIONS.slice(version).reduce((older, migration) => migration(older), content),
  schemaVersion: JOB_SCHEMA_VERSION,
});

/** The file's own name of a key that a migration renamed, so that its line can be found. */
export const oldNameOf = (key: string): readonly string[] =>
  [...Object.entries(VEHICLE_NAMES), ...Object.entries(RUN_NAMES)]
    .filter(([, name]) => key === name)
    .map(([oldName]) => oldName);
