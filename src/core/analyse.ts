/** The pipeline: a job and its recordings in, the Report and its pictures out. Pure, and read from top to bottom. */
import { conclude, contextOf } from './conclude.ts';
import { compareJudged, stagesOf } from './compare.ts';
import { proofOf, type Proof } from './diagnosis/compare/proof.ts';
import { uncapitalized } from './words.ts';
import { judgeJob, type JudgedJob } from './diagnosis/judge-job.ts';
import { historyOf, orderSpectrumOf } from './diagnosis/matching/group-history.ts';
import type { RunInference } from './diagnosis/matching/infer-run.ts';
import type { Job } from './job/job.ts';
import type { RecordedJob } from './job/recorded-job.ts';
import { failure, success, type Result } from './note.ts';
import type { Recording } from './reading/recording.ts';
import type { Analysis, Progress, RunPicture } from './report/analysis.ts';
import { findingBasis, findingReport } from './report/build/finding-report.ts';
import { orderReports, peakReports } from './report/build/order-report.ts';
import { asTaken, misstatedNote, takenAnswer, takenInstead } from './report/build/misstated-words.ts';
import { provedAnswer } from './report/build/proved-answer.ts';
import { runReport } from './report/build/run-report.ts';
import { answerOf } from './report/build/verdict.ts';
import { REPORT_SCHEMA_VERSION, type Report, type RunReport } from './report/report.ts';
import type { SpeedTrack } from './signal/speed/equal-angle.ts';
import { linesAt } from './vehicle/expected-lines.ts';
import { vehicleNotes } from './vehicle/vehicle-notes.ts';

const PROGRAM_VERSION = '0.1.0';

/** Share of the work at which only the report is left to write. */
const REPORT_FROM = 0.9;
const STEP_WORDS = { spectra: 'spectra of', matching: 'matching' } as const;

export interface AnalyseOptions {
  readonly onProgress?: (progress: Progress) => void;
}

/** Arrays of its own: those of the steady history are one for all runs, and whoever is given a picture may give it away. */
const copied = ({ timeS, relative }: SpeedTrack): SpeedTrack => ({ timeS: timeS.slice(), relative: relative.slice() });

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
    histories: { road: copied(historyOf(inference, 'road')), engine: copied(historyOf(inference, 'engine')) },
    orderSpectrum: orderSpectrumOf(inference),
  };
};

/**
 * The runs of the complaint, and those made after the repair: they would speak against the very fault they are to clear.
 * Where there are no others, these are the complaint.
 */
const stagesToJudge = (whole: RecordedJob): { complaint: RecordedJob; proof: RecordedJob | null } => {
  const { before: complaint, after: proof } = stagesOf(whole);
  if (complaint.recordings.length === 0) return { complaint: whole, proof: null };
  return { complaint, proof: proof.recordings.length > 0 ? proof : null };
};

/** What the runs after the repair show of what was found before it. */
const proved = (before: JudgedJob, after: Result<JudgedJob>): Proof =>
  after.ok
    ? proofOf(compareJudged(before, after.value), before.found)
    : {
        verdict: 'cannot-tell',
        sentence: `The two cannot be compared: ${uncapitalized(after.problem.message)}`,
        why: after.problem.remedy,
        complaint: before.found[0]?.label ?? null,
        unmoved: null,
        gone: [],
      };

/**
 * Diagnoses a job: the runs of the complaint. Runs after the repair are held against it, and the next step follows.
 *
 * @param recordings recordings[i] belongs to whole.runs[i]
 * @returns the Analysis, or the Problem of the first run that cannot be analysed at all
 */
export const analyse = (
  whole: Job,
  recordings: readonly Recording[],
  options: AnalyseOptions = {},
): Result<Analysis> => {
  const tell = (step: Progress['step'], fraction: number, text: string): void =>
    options.onProgress?.({ step, fraction, text });
  if (recordings.length === 0 || recordings.length !== whole.runs.length) {
    return failure({
      code: 'recordings-missing',
      message: `The job names ${whole.runs.length} runs, ${recordings.length} recordings were given.`,
      remedy: 'Give one recording for each run, in the same order.',
    });
  }
  const stages = stagesToJudge({ job: whole, recordings });
  const ofComplaint = (REPORT_FROM * stages.complaint.recordings.length) / recordings.length;
  const judged = judgeJob(stages.complaint, (step, share, run) =>
    tell(step, ofComplaint * share, `${STEP_WORDS[step]} ${run}`),
  );
  if (!judged.ok) return judged;
  const after =
    stages.proof &&
    judgeJob(stages.proof, (step, share, run) =>
      tell(step, ofComplaint + (REPORT_FROM - ofComplaint) * share, `${STEP_WORDS[step]} ${run}`),
    );
  const proof = after && proved(judged.value, after);
  const { job, inferences, found, misstated } = judged.value;
  const { vehicle } = job;
  const taken = takenInstead(misstated);
  tell('report', REPORT_FROM, 'writing the report');
  const runs = inferences.map((inference, i): RunReport => {
    const asJudged = runReport(inference, job.runs[i]?.file ?? inference.run.name, vehicle);
    const run = taken ? asTaken(asJudged, taken) : asJudged;
    // Remarks on what was stated stand once, with the first run.
    const doubts = misstated ? [misstatedNote(misstated)] : [];
    return i === 0 ? { ...run, notes: [...doubts, ...vehicleNotes(vehicle), ...run.notes] } : run;
  });
  const bases = found.map((finding) => findingBasis(finding, inferences));
  const conclusion = conclude(
    found.map((finding) => findingReport(finding, [], vehicle, inferences)),
    bases,
    contextOf(job, runs),
    proof,
  );
  const plain = answerOf(inferences, conclusion.findings);
  const answer = provedAnswer(taken ? takenAnswer(plain, taken) : plain, conclusion.proof ?? null);
  const report: Report = {
    schemaVersion: REPORT_SCHEMA_VERSION,
    program: { name: 'perrev', version: PROGRAM_VERSION },
    ...answer,
    settings: {},
    vehicle: whole.vehicle,
    ...(taken && { takenInstead: taken }),
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
