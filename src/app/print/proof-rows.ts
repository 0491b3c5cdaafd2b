/** The proving runs among the recordings: the answer is not made of them, so that its report does not tell of them. */
import type { Run } from '../../core/job/job.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { durationText, rateText, speedText } from '../../core/report/format.ts';
import type { Report } from '../../core/report/report.ts';
import type { RecordingFacts } from '../../worker/recording-facts.ts';
import { texts } from '../texts.ts';

export interface ProofRow {
  readonly name: string;
  readonly file: string;
  /** '60 s · 400 Hz · 3 axes'; empty where the recording could not be read. */
  readonly recording: string;
  /** 'GPS said 62 mph.' Empty where no speed is known. */
  readonly speed: string;
}

export function proofRows(
  runs: readonly Run[],
  report: Report,
  facts: ReadonlyMap<string, RecordingFacts>,
  units: UnitSystem,
): ProofRow[] {
  const told = new Set(report.runs.map(({ file }) => file));
  return runs
    .filter(({ stage, file }) => stage === 'proof' && !told.has(file))
    .map((run) => {
      const { file, name = file } = run;
      const known = facts.get(file);
      const recording =
        known && !known.problem
          ? texts.form.runFacts(rateText(known.samplingRateHz), durationText(known.durationS), known.axes)
          : '';
      return { name, file, recording, speed: saidSpeed(run, known, units) };
    });
}

function saidSpeed(
  { speedMps, speedSource = 'dial' }: Run,
  known: RecordingFacts | undefined,
  units: UnitSystem,
): string {
  const { stated, sources } = texts.sheet;
  if (known?.loggedSpeedMps !== undefined) return stated(speedText(known.loggedSpeedMps, units, 0), sources.logged);
  return speedMps === undefined ? '' : stated(speedText(speedMps, units, 0), sources[speedSource]);
}
