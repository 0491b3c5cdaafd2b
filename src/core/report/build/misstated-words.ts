/** The answer where the drive was not as it was stated: what was taken for true instead, and what to do about it. */
import type { JudgedJob } from '../../diagnosis/judge-job.ts';
import { uncapitalized } from '../../words.ts';
import type { Note } from '../../note.ts';
import type { Answer } from '../answer.ts';
import type { RunReport, TakenInstead } from '../report.ts';

type JudgedMisstated = NonNullable<JudgedJob['misstated']>;

const REMEDIES: Readonly<Record<TakenInstead['kind'], string>> = {
  'speed-unit': 'Set the speed right and diagnose again; if it was as given, check tire size, axle ratio and gear.',
  'speeds-exchanged': 'Give each run its own speed and diagnose again; if they are right, check the gear of each run.',
  'axle-ratio':
    'Read the axle’s tag, or count turns of the driveshaft for ten turns of the wheels, set the ratio right and diagnose again; if it is right, check speed and tire size.',
};

/** The answer as it is with the slip taken for true. */
export const takenAnswer = (answer: Answer, { kind, fits, given }: TakenInstead): Answer => ({
  ...answer,
  sentence: `With ${fits}${given === null ? '' : ` in place of ${given}`}, by what was recorded: ${uncapitalized(answer.sentence)}`,
  why: `${answer.why} ${REMEDIES[kind]}`,
});

/** What is kept of it in the report; null where the statement was not given up. */
export const takenInstead = (misstated: JudgedJob['misstated']): TakenInstead | null => {
  if (!misstated?.taken) return null;
  const { kind, fits, given, vehicle } = misstated;
  const { axleRatio } = vehicle;
  return { kind, fits, given, ...(kind === 'axle-ratio' && axleRatio !== undefined && { axleRatio }) };
};

/** A run whose stated speed gave way to another. */
export const asTaken = (run: RunReport, { kind }: TakenInstead): RunReport =>
  kind === 'axle-ratio' ? run : { ...run, speed: { ...run.speed, restated: true } };

/** Said with the first run. */
export const misstatedNote = ({ kind, fits, given, probability, taken }: JudgedMisstated): Note => ({
  code: 'drive-misstated',
  severity: 'warning',
  text:
    (taken
      ? `What was recorded fits ${fits}${given === null ? '' : `, not ${given}`}: all is judged so. `
      : `What was recorded may rather fit ${fits} (${Math.round(100 * probability)} in 100). `) + REMEDIES[kind],
});
