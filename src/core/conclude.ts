/** From findings to what to do about them: causes, the next checks, cautions. Fast, so that it can run at each entry. */
import type { CaseContext, FindingBasis } from './diagnosis/evidence/case.ts';
import { cautionsFor } from './diagnosis/checks/report-cautions.ts';
import { chooseChecks } from './diagnosis/ranking/next-check.ts';
import { faultsToPutRight } from './diagnosis/ranking/put-right.ts';
import { rankCauses } from './diagnosis/ranking/rank-causes.ts';
import type { Job } from './job/job.ts';
import type { Analysis } from './report/analysis.ts';
import { takenAnswer } from './report/build/misstated-words.ts';
import { foundAnswer } from './report/build/verdict.ts';
import type { CheckReport, FindingReport, RepairReport, Report, RunReport, SharedOrigin } from './report/report.ts';

export interface Conclusion {
  readonly findings: readonly FindingReport[];
  readonly repairs: readonly RepairReport[];
  readonly checks: readonly CheckReport[];
  readonly cautions: readonly string[];
}

/**
 * @param findings with or without causes; theirs are ranked anew
 * @param bases bases[i] belongs to findings[i]
 */
export function conclude(
  findings: readonly FindingReport[],
  bases: readonly FindingBasis[],
  context: CaseContext,
): Conclusion {
  const ranked = findings.map((finding, i): FindingReport => {
    const basis = bases[i];
    if (!basis) return finding;
    const sharesFrequencyWith = finding.sharesFrequencyWith.map((other) => withLikeliest(other, basis, context));
    return { ...finding, sharesFrequencyWith, causes: rankCauses(basis, context) };
  });
  const checks = chooseChecks(ranked, context);
  const repairs = faultsToPutRight(ranked, bases, context);
  return { findings: ranked, repairs, checks, cautions: cautionsFor([...repairs, ...checks]) };
}

/** A second suspect is worth its causes from this probability on, and so many of them. */
const SUSPECT_FROM = 0.1;
const MOST_LIKELIEST = 3;

/** The same shake taken for the other origin that shares its frequency. */
function withLikeliest(other: SharedOrigin, basis: FindingBasis, context: CaseContext): SharedOrigin {
  if (other.probability < SUSPECT_FROM) return other;
  const { part, order, label, name, probability } = other;
  const role = basis.companions.find((companion) => companion.label === label)?.role;
  const companions = basis.companions.filter((companion) => companion.label !== label);
  const { run, frequencyHz, amplitudeMps2, feltLevel, perceived, verticalShare } = basis;
  const { speedExponent, levelByLoadMps2, beats } = basis;
  const shake = {
    run,
    frequencyHz,
    amplitudeMps2,
    feltLevel,
    perceived,
    verticalShare,
    speedExponent,
    levelByLoadMps2,
    beats,
  };
  const named = { ...(name === undefined ? {} : { name }), ...(role === undefined ? {} : { role }) };
  const causes = rankCauses({ ...shake, ...named, part, order, label, probability, companions }, context);
  const likeliest = causes
    .slice(0, MOST_LIKELIEST)
    .map((cause) => ({ title: cause.title, probability: cause.probability }));
  return causes.length > 1 ? { ...other, likeliest } : other;
}

/** The case as causes and checks see it: what is known of the job, and how each run was driven. */
export function contextOf(job: Job, runs: readonly RunReport[]): CaseContext {
  return {
    vehicle: job.vehicle,
    work: job.work,
    measurements: job.measurements,
    ...(job.limits === undefined ? {} : { limits: job.limits }),
    runs: runs.map((run) => ({
      ...(run.load === null ? {} : { load: run.load }),
      ...(run.gearRatio === null ? {} : { gearRatio: run.gearRatio }),
      ...(run.speed.statedMps === null ? {} : { speedMps: run.speed.statedMps }),
      name: run.name,
      usedSpeedMps: run.speed.usedMps,
    })),
  };
}

/**
 * The same analysis after a measurement, a piece of work done or a limit was entered: the recordings say what they
 * said, causes and checks are weighed anew. Vehicle and runs must be those of the analysis.
 */
export function reweigh(analysis: Analysis, job: Job): Analysis {
  const { report, bases } = analysis;
  const { takenInstead: taken } = report;
  const vehicle = taken?.axleRatio === undefined ? job.vehicle : { ...job.vehicle, axleRatio: taken.axleRatio };
  const conclusion = conclude(report.findings, bases, contextOf({ ...job, vehicle }, report.runs));
  const first = conclusion.findings[0];
  const found = report.verdict === 'found' && first ? foundAnswer(first, conclusion.findings) : null;
  const answer = found && (taken ? takenAnswer(found, taken) : found);
  const changed: Report = { ...report, ...answer, ...conclusion, work: job.work, measurements: job.measurements };
  return { ...analysis, report: changed };
}
