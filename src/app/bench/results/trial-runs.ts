/** Which recording is which trial run, and what is asked of the worker about them. */
import type { Job, Run } from '../../../core/job/job.ts';
import type { TrialLevels } from '../../../core/trials/trial-levels.ts';
import type { RecordingSource, Task } from '../../../worker/protocol.ts';
import { without } from '../../form/document.ts';
import { complaintOf } from '../judge-in-job.ts';

/** 'found' is the run without the trial weight, numbers are positions as the form counts them. */
export type RunUse = 'found' | number | null;

export interface TrialFile {
  readonly source: RecordingSource;
  readonly use: RunUse;
  /** The job's own run of it, which knows how it was driven. */
  readonly run?: Run;
}

/** A recording that may become one. */
export type TrialSource = Omit<TrialFile, 'use'>;

export const MOST_POSITIONS = 6;
const LEAST_POSITIONS = 3;

/** Recordings in the order of their names: the first is taken as found where that is still open, the rest follow. */
export function withFiles(files: readonly TrialFile[], added: readonly TrialSource[]): readonly TrialFile[] {
  const all = [...files];
  const byName = (one: TrialSource, other: TrialSource): number =>
    one.source.name.localeCompare(other.source.name, 'en', { numeric: true });
  for (const source of added.toSorted(byName)) {
    const uses: RunUse[] = ['found', ...Array.from({ length: MOST_POSITIONS }, (_, index) => index + 1)];
    const use = uses.find((free) => !all.some((file) => file.use === free)) ?? null;
    all.push({ ...source, use });
  }
  return all;
}

/** Gives a recording another part; whichever had it before has none. */
export const withUse = (files: readonly TrialFile[], index: number, use: RunUse): readonly TrialFile[] =>
  files.map((file, at) => (at === index ? { ...file, use } : file.use === use ? { ...file, use: null } : file));

const usedInOrder = (files: readonly TrialFile[]): readonly TrialFile[] => {
  const found = files.filter(({ use }) => use === 'found');
  const positions = files.filter(({ use }) => typeof use === 'number');
  return [...found, ...positions.toSorted((one, other) => Number(one.use) - Number(other.use))];
};

/** True where there is a run as found and enough positions. */
export const isComplete = (files: readonly TrialFile[]): boolean =>
  files.some(({ use }) => use === 'found') &&
  files.filter(({ use }) => typeof use === 'number').length >= LEAST_POSITIONS;

/** The job's own recordings that are at hand and not taken yet. */
export function ownSources(
  { runs }: Job,
  files: readonly TrialFile[],
  sourceOfRun: (run: Run) => RecordingSource | null,
): readonly TrialSource[] {
  return runs.flatMap((run) => {
    const source = sourceOfRun(run);
    return source === null || files.some((file) => file.source.key === source.key) ? [] : [{ source, run }];
  });
}

/** The task for the worker: the run as found first. Runs of other files are taken to be driven like the complaint. */
export function levelsTask(
  files: readonly TrialFile[],
  job: Job,
  label: string,
): Extract<Task, { kind: 'trial-levels' }> {
  const used = usedInOrder(files);
  const condition = without(complaintOf(job), 'stage');
  const runs = used.map(({ source, run }): Run => ({
    ...(run ? without(run, 'stage') : condition),
    file: source.name,
    name: source.name,
  }));
  return { kind: 'trial-levels', of: { job: { ...job, runs }, sources: used.map(({ source }) => source) }, label };
}

/** '0.0423 ± 0.0011': to the digits the uncertainty leaves. */
export function levelText(amplitude: number, sd: number): string {
  const decimals = Math.min(8, Math.max(0, 1 - Math.floor(Math.log10(Math.max(sd, 1e-9)))));
  return `${amplitude.toFixed(decimals)} ± ${sd.toFixed(decimals)}`;
}

/** What to write into the fields of the form: field id → text. */
export function typedLevels(files: readonly TrialFile[], { levels }: TrialLevels): Readonly<Record<string, string>> {
  return Object.fromEntries(
    usedInOrder(files).flatMap(({ use }, index) => {
      const level = levels[index];
      if (level === undefined) return [];
      const field = use === 'found' ? 'base' : `level${use}`;
      return [[field, levelText(level.amplitudeMps2, level.amplitudeSdMps2)] as const];
    }),
  );
}
