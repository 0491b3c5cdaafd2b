/** Reads and writes job files (`*.job.json`). Nothing of a file is lost: keys this version does not know are kept. */
import { failure, success } from '../note.ts';
import type { Problem, Result } from '../note.ts';
import { isObject, listOf, nonEmptyText, shown, text, wrongKey } from './guards.ts';
import { JOB_SCHEMA_VERSION } from './job.ts';
import type { Job } from './job.ts';
import { lineAndColumn, mapJson, offsetOf } from './json-positions.ts';
import type { JsonMap } from './json-positions.ts';
import { limitsGuard } from './limits-guard.ts';
import { measurementGuard } from './measurement-guard.ts';
import { migrate, oldNameOf } from './migrate.ts';
import { count } from './number-guards.ts';
import { runGuard } from './run-guard.ts';
import { vehicleGuard } from './vehicle-guard.ts';
import { workGuard } from './work-done.ts';
import { shape } from './shape.ts';

/** Far above any job; keeps a wrong file (a recording, say) from being walked through. */
const LARGEST_CHARACTERS = 5_000_000;

type FileContent = Omit<Job, 'unknownKeys' | 'work' | 'runs' | 'measurements'> &
  Partial<Pick<Job, 'work' | 'runs' | 'measurements'>>;

const contentGuard = shape<FileContent>(
  {
    schemaVersion: count(0, JOB_SCHEMA_VERSION),
    title: text,
    complaint: text,
    vehicle: vehicleGuard,
    work: listOf(workGuard),
    runs: listOf(runGuard),
    repaired: listOf(nonEmptyText),
    measurements: listOf(measurementGuard),
    limits: limitsGuard,
    notes: text,
  },
  { required: ['vehicle'] },
);

const KNOWN_KEYS = [
  'schemaVersion',
  'title',
  'complaint',
  'vehicle',
  'work',
  'runs',
  'repaired',
  'measurements',
  'limits',
  'notes',
];

const placed = (problem: Problem, file: string, source: string, offset: number | null): Problem => ({
  ...problem,
  file,
  ...lineAndColumn(source, offset ?? 0),
});

/** Offset of a key, also under the name it had before a migration. */
const offsetOfKey = (map: JsonMap, key: string): number | null => {
  const cut = key.lastIndexOf('.') + 1;
  const names = [key.slice(cut), ...oldNameOf(key.slice(cut))];
  const known = names.map((name) => key.slice(0, cut) + name).find((path) => map.offsets.has(path));
  return offsetOf(map, known ?? key);
};

const versionOf = (content: Record<string, unknown>): Result<number> => {
  const version = content['schemaVersion'] ?? 0;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    const remedy = `Write ${JOB_SCHEMA_VERSION}, or leave the key out.`;
    return wrongKey('schemaVersion', `a whole number is expected, but it holds ${shown(version)}`, remedy);
  }
  if (version <= JOB_SCHEMA_VERSION) return success(version);
  return failure({
    code: 'job-newer',
    key: 'schemaVersion',
    message: `The file has schema version ${version}; this program knows versions up to ${JOB_SCHEMA_VERSION}.`,
    remedy: 'Open it with a newer version of the program. The file was not changed.',
  });
};

const jobOf = (content: Record<string, unknown>): Result<Job> => {
  const checked = contentGuard(content, '');
  if (!checked.ok) return checked;
  const { title, complaint, vehicle, work = [], runs = [], measurements = [], repaired, limits, notes } = checked.value;
  const unknown = Object.entries(content).filter(([key]) => !KNOWN_KEYS.includes(key));
  return success({
    schemaVersion: JOB_SCHEMA_VERSION,
    ...(title === undefined ? {} : { title }),
    ...(complaint === undefined ? {} : { complaint }),
    vehicle,
    work,
    runs,
    ...(repaired === undefined ? {} : { repaired }),
    measurements,
    ...(limits === undefined ? {} : { limits }),
    ...(notes === undefined ? {} : { notes }),
    ...(unknown.length === 0 ? {} : { unknownKeys: Object.fromEntries(unknown) }),
  });
};

/**
 * Reads a job file.
 *
 * Numbers are taken in the unit their key names (`speedMps`), or as a text with a unit (`"speed": "62 mph"`). Older
 * schema versions are migrated; a newer one is refused, as saving it would lose what is new in it.
 *
 * @returns The job, or a Problem with file, line, column and key of what is wrong, and what to write instead.
 */
export const readJob = (fileText: string, fileName: string): Result<Job> => {
  const source = fileText.startsWith('\uFEFF') ? fileText.slice(1) : fileText;
  if (source.length > LARGEST_CHARACTERS) {
    const message = `The file has ${source.length} characters, more than any job file (5 million at most).`;
    const remedy = 'Check that this is a job file; a recording is given as it is, not as a job.';
    return failure({ code: 'job-too-large', file: fileName, message, remedy });
  }
  const map = mapJson(source);
  if (map.fault !== null) {
    const { offset, path, text: found } = map.fault;
    const message = `The file is not a job file that can be read: ${found}.`;
    const remedy = 'Correct this place with a text editor, or take an earlier copy of the file.';
    const key = path === '' ? {} : { key: path };
    return failure(placed({ code: 'job-not-json', ...key, message, remedy }, fileName, source, offset));
  }
  const content: unknown = JSON.parse(source);
  if (!isObject(content)) {
    const message = `The file holds ${shown(content)} where a job is expected.`;
    const remedy = 'A job file is an object with at least the key vehicle.';
    return failure({ code: 'job-key', file: fileName, line: 1, message, remedy });
  }
  const version = versionOf(content);
  const job = version.ok ? jobOf(migrate(content, version.value)) : version;
  if (job.ok && map.tooLarge) {
    // Under a key that is known its limits have told; under another it would not survive being saved.
    const { offset, path: key, text: number } = map.tooLarge;
    const message = `${key}: the number ${shown(number)} is too large to be kept.`;
    const remedy = 'Write a smaller one, or put it in quotes to have it kept as it is.';
    return failure(placed({ code: 'job-key', key, message, remedy }, fileName, source, offset));
  }
  if (job.ok) return job;
  const offset = job.problem.key === undefined ? null : offsetOfKey(map, job.problem.key);
  return failure(placed(job.problem, fileName, source, offset));
};

/**
 * The text of a job file: two-space JSON in the present schema, keys this version does not know among it.
 * `readJob(writeJob(job))` gives the job again.
 */
export const writeJob = (job: Job): string => {
  const { unknownKeys = {}, ...known } = job;
  const unknown = Object.entries(unknownKeys).filter(([key]) => !KNOWN_KEYS.includes(key));
  const content = { ...known, schemaVersion: JOB_SCHEMA_VERSION, ...Object.fromEntries(unknown) };
  return `${JSON.stringify(content, null, 2)}\n`;
};
