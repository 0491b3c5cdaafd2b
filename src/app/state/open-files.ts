/** From files the reader opened to a job with runs: jobs are loaded, recordings are added and looked into. */
import type { Problem } from '../../core/note.ts';
import type { Run } from '../../core/job/job.ts';
import { CANCELLED } from '../../worker/client.ts';
import type { JobDocument } from '../form/document.ts';
import { emptyDocument } from '../form/document.ts';
import { missingRecording } from '../form/missing-recording.ts';
import type { StoredRecording } from './files.ts';
import { freeName } from './files.ts';
import { withEntry, withoutEntry } from './maps.ts';
import { readOpened } from './opened.ts';
import { texts } from '../texts.ts';
import type { Session } from './session.svelte.ts';
import { sourceOf } from './session.svelte.ts';

/** Opens job files and recordings, and starts reading what is new. The first job is shown, others go into the job book. */
export async function openFiles(session: Session, files: readonly File[]): Promise<void> {
  const { jobs, loose, refused, lacksJob } = await readOpened(files);
  const [first, ...others] = jobs;
  if (first) session.load(first.document, first.recordings, { events: first.events });
  session.aside = others;
  const isUnclear = loose.length > 0 && (lacksJob || others.length > 0);
  session.refused = isUnclear && !lacksJob ? [...refused, notNamed(loose)] : refused;
  session.held = isUnclear ? loose : [];
  if (!isUnclear) addLoose(session, loose);
  await lookIntoRecordings(session);
}

/** Opens the recordings that were held back as their job could not be read. */
export async function openHeld(session: Session): Promise<void> {
  const { held } = session;
  session.held = [];
  session.refused = [];
  addLoose(session, held);
  await lookIntoRecordings(session);
}

/** Recordings without a job: into the open one, or a new one where none is open. */
function addLoose(session: Session, recordings: readonly File[]): void {
  if (recordings.length > 0 && session.stage === 'empty') session.load(emptyDocument(), []);
  addRecordings(session, recordings);
}

const notNamed = (files: readonly File[]): Problem => ({
  code: 'recording-of-no-job',
  message: texts.start.notNamed(files.map(({ name }) => name)),
  remedy: texts.start.notNamedRemedy(files.length),
});

/** Opens a demo: a job file and its recordings, which come into the job book only once the reader works on them. */
export async function openDemo(session: Session, files: readonly File[]): Promise<void> {
  const { jobs, refused } = await readOpened(files);
  const [demo] = jobs;
  if (demo) session.load(demo.document, demo.recordings, { isDemo: true });
  session.refused = refused;
  await lookIntoRecordings(session);
}

/** Adds recordings: to the run that names the file and lacks it, or as a new run. */
export function addRecordings(session: Session, recordings: readonly File[], stage: Run['stage'] = 'complaint'): void {
  for (const file of recordings) {
    const wanted = session.job.runs.some((run) => run.file === file.name) && !session.files.has(file.name);
    const name = wanted ? file.name : freeName(file.name, new Set(session.files.keys()));
    const stored: StoredRecording = { id: crypto.randomUUID(), name, blob: file };
    session.files = withEntry(session.files, name, stored);
    session.edit(`add ${name}`, (document) => withRecording(document, stored, wanted, stage));
  }
}

/** Gives a run the recording it names but lacks, whatever the file is called now. */
export async function openForRun(session: Session, name: string, blob: File): Promise<void> {
  const stored: StoredRecording = { id: crypto.randomUUID(), name, blob };
  session.files = withEntry(session.files, name, stored);
  session.edit(`add ${name}`, (document) => ({
    ...document,
    recordings: { ...document.recordings, [name]: stored.id },
  }));
  await lookIntoRecordings(session);
}

function withRecording(
  document: JobDocument,
  { id, name }: StoredRecording,
  wanted: boolean,
  stage: Run['stage'],
): JobDocument {
  const { job } = document;
  const previous = job.runs.at(-1);
  // How the last run was driven is the best guess for the next; speed differs more often than not.
  const run: Run = {
    file: name,
    load: previous?.load ?? 'cruise',
    speedSource: previous?.speedSource ?? 'dial',
    ...(previous?.gearRatio !== undefined && { gearRatio: previous.gearRatio }),
    ...(stage === 'proof' && { stage, ...(previous?.speedMps !== undefined && { speedMps: previous.speedMps }) }),
  };
  return {
    ...document,
    recordings: { ...document.recordings, [name]: id },
    job: wanted ? job : { ...job, runs: [...job.runs, run] },
  };
}

/** Reads every recording that has not been looked into. */
export async function lookIntoRecordings(session: Session): Promise<void> {
  const { runs } = session.job;
  await Promise.all(runs.map((run) => reading(session, run)));
}

/** Readings under way, so that a second one of the same file waits for the first. */
const underWay = new Map<string, Promise<void>>();

function reading(session: Session, run: Run): Promise<void> {
  const { file, samplingRateHz, accelerationUnit } = run;
  const key = [session.files.get(file)?.id, file, samplingRateHz, accelerationUnit].join('@');
  const known = underWay.get(key);
  if (known) return known;
  const started = lookInto(session, run).finally(() => underWay.delete(key));
  underWay.set(key, started);
  return started;
}

async function lookInto(session: Session, run: Run): Promise<void> {
  const { file } = run;
  const stored = session.files.get(file);
  if (!stored) {
    setFacts(session, file, missingRecording(file));
    return;
  }
  const source = sourceOf(stored, run);
  if (session.facts.get(file)?.key === source.key) return;
  setReading(session, file, 0);
  const result = await session.client.ask(
    { kind: 'read', sources: [source] },
    {
      onProgress: ({ fraction }) => session.reading.has(file) && setReading(session, file, fraction),
    },
  );
  const wanted = session.reading.has(file) && session.files.get(file) === stored;
  setReading(session, file, null);
  if (!wanted) return;
  if (!result.ok) {
    // Cancelling one piece of work ends the worker, and with it the reading of others: read those again.
    if (result.problem.code === CANCELLED) return lookInto(session, run);
    setFacts(session, file, result.problem);
    return;
  }
  const [facts] = result.value;
  if (facts) session.facts = withEntry(session.facts, file, facts);
}

/** Stops reading a recording and takes its run out of the job. */
export function stopReading(session: Session, file: string): void {
  setReading(session, file, null);
  const index = session.job.runs.findIndex((run) => run.file === file);
  if (index >= 0) session.removeRun(index);
  session.client.end();
}

function setReading(session: Session, file: string, fraction: number | null): void {
  session.reading =
    fraction === null ? withoutEntry(session.reading, file) : withEntry(session.reading, file, fraction);
}

function setFacts(session: Session, file: string, problem: Problem): void {
  const facts = { key: '', name: file, problem, samplingRateHz: 0, durationS: 0, axes: 0, notes: [] };
  session.facts = withEntry(session.facts, file, facts);
}
