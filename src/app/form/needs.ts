/** What stands in the way of an analysis, and what is missing that would change the answer. */
import type { Job, Run } from '../../core/job/job.ts';
import type { Vehicle } from '../../core/vehicle/vehicle.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import type { RecordingFacts } from '../../worker/recording-facts.ts';
import { texts } from '../texts.ts';
import type { FieldSpec, JobDocument } from './document.ts';
import { fieldState } from './document.ts';
import { isMissing } from './missing-recording.ts';
import { runFields } from './run-fields.ts';
import { descriptionField, mainFields, moreFields } from './vehicle-fields.ts';

const words = texts.form;

export interface Needs {
  /** The first thing that must be put right before analysing; null where nothing is. */
  readonly blocker: string | null;
  /** The blocker is nothing that typing would put right: it is told before anyone asks. */
  readonly isToldAtOnce: boolean;
  /** What would make the answer better, each in a sentence. */
  readonly wishes: readonly string[];
}

/** Every text field of a document, as they stand on the screen. */
function allFields(job: Job): readonly FieldSpec[] {
  const { layout } = job.vehicle;
  const ofRuns = job.runs.flatMap((_, index) => Object.values(runFields(index)));
  return [...ofRuns, ...mainFields(layout), descriptionField, ...moreFields(layout)];
}

/** @param facts What is known of each recording, by file name; absent while it is being read. */
export function needsOf(document: JobDocument, facts: ReadonlyMap<string, RecordingFacts>, units: UnitSystem): Needs {
  const isToldAtOnce = document.job.runs.some(({ file }) => isMissing(facts.get(file)?.problem));
  return { blocker: blockerOf(document, facts, units), isToldAtOnce, wishes: wishesOf(document, facts) };
}

function blockerOf(
  document: JobDocument,
  facts: ReadonlyMap<string, RecordingFacts>,
  units: UnitSystem,
): string | null {
  const { runs } = document.job;
  if (runs.length === 0) return words.needs.recordings;
  const wrong = allFields(document.job).filter((field) => fieldState(document, field, units).message !== undefined);
  if (wrong.length > 0) return words.needs.invalid([...new Set(wrong.map(({ label }) => label))]);
  const refused = runs.flatMap(({ file }) => facts.get(file)?.problem ?? []);
  const missing = refused.filter(isMissing);
  if (missing.length > 0) return words.needs.missing(missing.flatMap(({ file }) => file ?? []));
  if (refused.length > 0) return words.needs.unreadable;
  if (runs.some((run) => !facts.has(run.file))) return words.needs.reading;
  return null;
}

type Missing = keyof typeof words.missing;

/** Without these nothing can be named at all. */
const NAMING: readonly Missing[] = ['tire', 'speed'];

/** What missing entries cost: the worst of it in a sentence, the others by name. */
function wishesOf(document: JobDocument, facts: ReadonlyMap<string, RecordingFacts>): string[] {
  const missing = missingOf(document, facts);
  const naming = missing.filter((one) => NAMING.includes(one));
  const told = naming.length > 0 ? naming : missing.slice(0, 1);
  const [worst] = told;
  if (worst === undefined) return [];
  const cost = naming.length > 1 ? words.without.both : words.without[worst];
  const others = missing.filter((one) => !told.includes(one)).map((one) => words.missing[one]);
  return others.length > 0 ? [cost, words.alsoMissing(others)] : [cost];
}

/** Entries that would change the answer, most important first. One that was typed but cannot be read is not missing. */
function missingOf({ job, typed }: JobDocument, facts: ReadonlyMap<string, RecordingFacts>): Missing[] {
  const { vehicle, runs } = job;
  const isTyped = (id: string): boolean => (typed[id]?.trim() ?? '') !== '';
  const lacks = (key: 'tire' | 'axleRatio' | 'finalDrive' | 'cylinders'): boolean =>
    vehicle[key] === undefined && !isTyped(`vehicle.${key}`);
  const shaft = vehicle.layout === 'rear-drive' || vehicle.layout === 'four-wheel-drive';
  const knowsEngine = runs.every(
    (run, at) =>
      hasEngineSpeed(run, vehicle, facts) || isTyped(`run.${at}.gearRatio`) || isTyped(`run.${at}.engineRpm`),
  );
  const tests: readonly [Missing, boolean][] = [
    ['tire', lacks('tire')],
    ['speed', runs.some((run, at) => !hasSpeed(run, facts) && !isTyped(`run.${at}.speedMps`))],
    ['axle', shaft && lacks('axleRatio')],
    ['engine', !knowsEngine],
    ['finalDrive', !shaft && !knowsEngine && lacks('finalDrive')],
    ['cylinders', vehicle.layout !== 'electric' && lacks('cylinders')],
  ];
  return tests.flatMap(([one, isMissing]) => (isMissing ? [one] : []));
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
