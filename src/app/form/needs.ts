/** What stands in the way of an analysis, and what is missing that would change the answer. */
import type { Job, Run } from '../../core/job/job.ts';
import type { Vehicle } from '../../core/vehicle/vehicle.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import type { RecordingFacts } from '../../worker/recording-facts.ts';
import { texts } from '../texts.ts';
import type { FieldSpec, JobDocument } from './document.ts';
import { fieldState } from './document.ts';
import { runFields } from './run-fields.ts';
import { descriptionField, mainFields, moreFields } from './vehicle-fields.ts';

const words = texts.form;

export interface Needs {
  /** The first thing that must be put right before analysing; null where nothing is. */
  readonly blocker: string | null;
  /** What would make the answer better, each in a sentence. */
  readonly wishes: readonly string[];
}

/** Every text field of a document. */
export function allFields(job: Job): readonly FieldSpec[] {
  const { layout } = job.vehicle;
  const ofRuns = job.runs.flatMap((_, index) => Object.values(runFields(index)));
  return [descriptionField, ...mainFields(layout), ...moreFields(layout), ...ofRuns];
}

/** @param facts What is known of each recording, by file name; absent while it is being read. */
export function needsOf(document: JobDocument, facts: ReadonlyMap<string, RecordingFacts>, units: UnitSystem): Needs {
  return { blocker: blockerOf(document, facts, units), wishes: wishesOf(document.job, facts) };
}

function blockerOf(
  document: JobDocument,
  facts: ReadonlyMap<string, RecordingFacts>,
  units: UnitSystem,
): string | null {
  const { runs } = document.job;
  if (runs.length === 0) return words.needs.recordings;
  const wrong = allFields(document.job).find((field) => fieldState(document, field, units).message !== undefined);
  if (wrong) return words.needs.invalid(wrong.label);
  if (runs.some((run) => facts.get(run.file)?.problem)) return words.needs.unreadable;
  if (runs.some((run) => !facts.has(run.file))) return words.needs.reading;
  return null;
}

function wishesOf({ vehicle, runs }: Job, facts: ReadonlyMap<string, RecordingFacts>): string[] {
  const wishes: string[] = [];
  const { without } = words;
  if (!vehicle.tire) wishes.push(without.tire);
  if (runs.some((run) => !hasSpeed(run, facts))) wishes.push(without.speed);
  const shaft = vehicle.layout === 'rear-drive' || vehicle.layout === 'four-wheel-drive';
  if (shaft && vehicle.axleRatio === undefined) wishes.push(without.axle);
  const knowsEngine = runs.every((run) => hasEngineSpeed(run, vehicle, facts));
  if (!knowsEngine) wishes.push(without.engine);
  if (!shaft && !knowsEngine && vehicle.finalDrive === undefined) wishes.push(without.finalDrive);
  if (vehicle.layout !== 'electric' && vehicle.cylinders === undefined) wishes.push(without.cylinders);
  return wishes;
}

function hasSpeed(run: Run, facts: ReadonlyMap<string, RecordingFacts>): boolean {
  return run.speedMps !== undefined || run.load === 'standing' || facts.get(run.file)?.loggedSpeedMps !== undefined;
}

function hasEngineSpeed(run: Run, vehicle: Vehicle, facts: ReadonlyMap<string, RecordingFacts>): boolean {
  if (run.engineRpm !== undefined || facts.get(run.file)?.loggedEngineRpm !== undefined) return true;
  if (vehicle.layout === 'electric') return vehicle.finalDrive !== undefined;
  if (run.gearRatio === undefined || run.load === 'neutral') return run.load === 'neutral';
  return vehicle.layout !== 'front-drive' || vehicle.finalDrive !== undefined;
}
