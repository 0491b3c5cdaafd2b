/** The pipeline: a job and its recordings in, the Report and its pictures out. Pure, and read from top to bottom. */
import { conclude, contextOf } from './conclude.ts';
import { closerLook } from './diagnosis/observing/closer-look.ts';
import { findingsOf, type Finding } from './diagnosis/findings/finding.ts';
import { historyOf, orderSpectrumOf } from './diagnosis/matching/group-history.ts';
import { inferJob } from './diagnosis/matching/infer-job.ts';
import type { RunInference } from './diagnosis/matching/infer-run.ts';
import { observeRun } from './diagnosis/observing/observe-run.ts';
import type { RunEvidence } from './diagnosis/observing/run-evidence.ts';
import { splitDrives } from './diagnosis/drives/split-drives.ts';
import type { Job } from './job/job.ts';
import { failure, success, type Result } from './note.ts';
import type { Recording } from './reading/recording.ts';
import type { Analysis, Progress, RunPicture } from './report/analysis.ts';
import { findingBasis, findingReport } from './report/build/finding-report.ts';
import { orderReports, peakReports } from './report/build/order-report.ts';
import { runReport } from './report/build/run-report.ts';
import { answerOf } from './report/build/verdict.ts';
import { REPORT_SCHEMA_VERSION, type Report, type RunReport } from './report/report.ts';
import { linesAt } from './vehicle/expected-lines.ts';
import { vehicleNotes } from './vehicle/vehicle-notes.ts';

export const PROGRAM_VERSION = '0.1.0';

export interface AnalyseOptions {
  readonly onProgress?: (progress: Progress) => void;
}

const nameOf = (job: Job, index: number): string => {
  const run = job.runs[index];
  return run?.name ?? run?.file ?? `run ${index + 1}`;
};

const pictureOf = (inference: RunInference): RunPicture => {
  const { run, posterior } = inference;
  const { expected } = run;
  const scaled = (hz: number | null | undefined, logScale: number): number | null =>
    typeof hz === 'number' ? hz * Math.exp(logScale) : null;
  const wheelHz = scaled(expected?.wheelHz, posterior.road.mean);
  const engineHz = scaled(expected?.engineHz, posterior.engine.mean);
  return {
    run: run.name,
    samplingRateHz: run.prepared.samplingRateHz,
    spectrum: run.spectrum,
    floorMps2: run.floorMps2,
    timeFrequency: run.map,
    lines: linesAt(expected?.lines ?? [], wheelHz, engineHz, run.prepared.samplingRateHz),
    histories: { road: historyOf(inference, 'road'), engine: historyOf(inference, 'engine') },
    orderSpectrum: orderSpectrumOf(inference),
  };
};

/** What the runs say together, and what of it a person would notice. */
interface Weighed {
  readonly inferences: readonly RunInference[];
  readonly found: readonly Finding[];
}

/** The runs of the complaint: a run made to prove the repair would speak against the very fault it is to clear. */
const complaintOf = (job: Job, recordings: readonly Recording[]): { job: Job; recordings: readonly Recording[] } => {
  const kept = job.runs.map(({ stage }) => stage !== 'proof');
  if (recordings.length !== job.runs.length || !kept.includes(true)) return { job, recordings };
  return {
    job: { ...job, runs: job.runs.filter((_, i) => kept[i]) },
    recordings: recordings.filter((_, i) => kept[i]),
  };
};

/**
 * Diagnoses a job. Runs of the proof stage are left to the comparison, unless there are no others.
 *
 * @param wholeRecordings wholeRecordings[i] belongs to whole.runs[i]
 * @returns the Analysis, or the Problem of the first run that cannot be analysed at all
 */
export const analyse = (
  whole: Job,
  wholeRecordings: readonly Recording[],
  options: AnalyseOptions = {},
): Result<Analysis> => {
  const tell = (step: Progress['step'], fraction: number, text: string): void =>
    options.onProgress?.({ step, fraction, text });
  const complaint = complaintOf(whole, wholeRecordings);
  if (complaint.recordings.length === 0 || complaint.recordings.length !== complaint.job.runs.length) {
    return failure({
      code: 'recordings-missing',
      message: `The job names ${complaint.job.runs.length} runs, ${complaint.recordings.length} recordings were given.`,
      remedy: 'Give one recording for each run, in the same order.',
    });
  }
  const judged = splitDrives(complaint);
  if (!judged.ok) return judged;
  const { job, recordings } = judged.value;
  const { vehicle } = job;
  const evidence = recordings.map((recording, i) => {
    tell('spectra', (0.6 * i) / recordings.length, `spectra of ${nameOf(job, i)}`);
    return observeRun(vehicle, job.runs[i] ?? {}, recording, nameOf(job, i));
  });
  const weigh = (runs: readonly RunEvidence[], from: number, to: number): Weighed => {
    const inferences = inferJob(vehicle, runs, (i) =>
      tell('matching', from + ((to - from) * i) / runs.length, `matching ${nameOf(job, i)}`),
    );
    return { inferences, found: findingsOf(inferences) };
  };
  const asDriven = weigh(evidence, 0.6, 0.8);
  const closer = asDriven.found.length === 0 ? closerLook(vehicle, evidence, job.runs) : null;
  const parts = closer && weigh(closer, 0.85, 0.9);
  const { inferences, found } = parts && parts.found.length > 0 ? parts : asDriven;
  tell('report', 0.9, 'writing the report');
  const runs = inferences.map((inference, i): RunReport => {
    const run = runReport(inference, job.runs[i]?.file ?? inference.run.name, vehicle);
    // Remarks on the vehicle's data stand once, with the first run.
    return i === 0 ? { ...run, notes: [...vehicleNotes(vehicle), ...run.notes] } : run;
  });
  const bases = found.map((finding) => findingBasis(finding, inferences));
  const conclusion = conclude(
    found.map((finding) => findingReport(finding, [], vehicle, inferences)),
    bases,
    contextOf(job, runs),
  );
  const answer = answerOf(inferences, conclusion.findings);
  const report: Report = {
    schemaVersion: REPORT_SCHEMA_VERSION,
    program: { name: 'perrev', version: PROGRAM_VERSION },
    ...answer,
    settings: {},
    vehicle,
    work: job.work,
    measurements: job.measurements,
    runs,
    orders: inferences.flatMap(orderReports),
    peaks: inferences.flatMap(peakReports),
    ...conclusion,
  };
  tell('report', 1, 'done');
  return success({ report, bases, pictures: inferences.map(pictureOf) });
};
