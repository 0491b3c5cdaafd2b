/** The open job as it is edited: the job itself, and the text of fields that are half typed or wrong. */
import type { Problem, Result } from '../../core/note.ts';
import { success } from '../../core/note.ts';
import type { Job, Run } from '../../core/job/job.ts';
import { JOB_SCHEMA_VERSION } from '../../core/job/job.ts';
import type { Vehicle } from '../../core/vehicle/vehicle.ts';
import type { UnitSystem } from '../../core/report/format.ts';

export interface JobDocument {
  readonly job: Job;
  /** Field id → what was typed, kept only until the field is left with something that can be understood. */
  readonly typed: Readonly<Record<string, string>>;
  /** File name of a run → id of the stored recording. */
  readonly recordings: Readonly<Record<string, string>>;
}

/** One text field of the form: how its text is made from the job, and how the job is made from its text. */
export interface FieldSpec {
  readonly id: string;
  readonly label: string;
  readonly example: string;
  /** The example for a reader of metric units, where it has a unit. */
  readonly metricExample?: string;
  readonly hint: string;
  /** Without it no part can be named, or not the one in question. */
  readonly isNeeded?: boolean;
  readonly read: (job: Job, units: UnitSystem) => string;
  /** Empty text takes the entry out of the job. */
  readonly write: (job: Job, text: string, units: UnitSystem) => Result<Job>;
  /** What is wrong with the entry beside others of the job. */
  readonly check?: (job: Job) => Problem | null;
}

/** How a field may be filled in, in the reader's units. */
export const exampleOf = (
  { example, metricExample }: Pick<FieldSpec, 'example' | 'metricExample'>,
  units: UnitSystem,
): string => (units === 'metric' ? (metricExample ?? example) : example);

/** What a field shows: its text, and what is wrong with it. */
export interface FieldState {
  readonly text: string;
  readonly message?: string;
  readonly remedy?: string;
}

export const emptyJob = (vehicle: Vehicle = { layout: 'rear-drive' }): Job => ({
  schemaVersion: JOB_SCHEMA_VERSION,
  vehicle,
  work: [],
  runs: [],
  measurements: [],
});

export const emptyDocument = (vehicle?: Vehicle): JobDocument => ({
  job: emptyJob(vehicle),
  typed: {},
  recordings: {},
});

/** The document after a key stroke: the job follows wherever the text can be understood, and loses the entry where not. */
export function typeInto(document: JobDocument, field: FieldSpec, text: string, units: UnitSystem): JobDocument {
  const written = field.write(document.job, text, units);
  const cleared = written.ok ? written : field.write(document.job, '', units);
  return {
    ...document,
    job: cleared.ok ? cleared.value : document.job,
    typed: { ...document.typed, [field.id]: text },
  };
}

/** The document after a field was left: text that was understood is replaced by how perrev writes it. */
export function leaveField(document: JobDocument, field: FieldSpec, units: UnitSystem): JobDocument {
  const text = document.typed[field.id];
  if (text === undefined || !field.write(document.job, text, units).ok) return document;
  return { ...document, typed: without(document.typed, field.id) };
}

/** What to show in a field. */
export function fieldState(document: JobDocument, field: FieldSpec, units: UnitSystem): FieldState {
  const text = document.typed[field.id];
  const written = text === undefined ? success(document.job) : field.write(document.job, text, units);
  const problem = written.ok ? field.check?.(written.value) : written.problem;
  const shown = text ?? field.read(document.job, units);
  return problem ? { text: shown, message: problem.message, remedy: problem.remedy } : { text: shown };
}

/** The job with one run changed. */
export function withRun(job: Job, index: number, change: (run: Run) => Run): Job {
  return { ...job, runs: job.runs.map((run, at) => (at === index ? change(run) : run)) };
}

/** The document with another vehicle; half-typed text of the one before goes. */
export function withVehicle(document: JobDocument, vehicle: Vehicle): JobDocument {
  const typed = Object.fromEntries(Object.entries(document.typed).filter(([id]) => !id.startsWith('vehicle.')));
  return { ...document, typed, job: { ...document.job, vehicle } };
}

/** The document with vehicle and runs as they were in another job, and nothing half typed of them. */
export function withDriveOf(document: JobDocument, { vehicle, runs }: Job): JobDocument {
  const isOfDrive = (id: string): boolean => id.startsWith('vehicle.') || id.startsWith('run.');
  const typed = Object.fromEntries(Object.entries(document.typed).filter(([id]) => !isOfDrive(id)));
  return { ...document, typed, job: { ...document.job, vehicle, runs } };
}

/** The document without one run; half-typed text of the runs goes with it, as run fields are numbered. */
export function removeRun(document: JobDocument, index: number): JobDocument {
  const typed = Object.fromEntries(Object.entries(document.typed).filter(([id]) => !id.startsWith('run.')));
  return { ...document, typed, job: { ...document.job, runs: document.job.runs.filter((_, at) => at !== index) } };
}

/** A copy without one key. */
export function without<T extends object, K extends keyof T>(object: T, key: K): Omit<T, K> {
  const copy = { ...object };
  delete copy[key];
  return copy;
}
