/** From findings to what to do about them: causes, the next checks, cautions. Fast, so that it can run at each entry. */
import type { CaseContext, FindingBasis } from './diagnosis/evidence/case.ts';
import { cautionsFor } from './diagnosis/checks/report-cautions.ts';
import { afterProof, type AfterRepair } from './diagnosis/compare/after-proof.ts';
import { probabilityOnceGone } from './diagnosis/compare/part-by-proof.ts';
import { isOpen, type Proof } from './diagnosis/compare/proof.ts';
import { chooseChecks } from './diagnosis/ranking/next-check.ts';
import { faultsToPutRight } from './diagnosis/ranking/put-right.ts';
import { rankCauses } from './diagnosis/ranking/rank-causes.ts';
import type { Job } from './job/job.ts';
import type { Analysis } from './report/analysis.ts';
import { takenAnswer } from './report/build/misstated-words.ts';
import { provedAnswer } from './report/build/proved-answer.ts';
import { foundAnswer } from './report/build/verdict.ts';
import type {
  CheckReport,
  FindingReport,
  ProofReport,
  RepairReport,
  Report,
  RunReport,
  SharedOrigin,
} from './report/report.ts';

export interface Conclusion {
  readonly findings: readonly FindingReport[];
  readonly repairs: readonly RepairReport[];
  readonly checks: readonly CheckReport[];
  readonly proof?: ProofReport;
  readonly cautions: readonly string[];
}

/**
 * @param findings with or without causes; theirs are ranked anew
 * @param bases bases[i] belongs to findings[i]
 * @param proof what the runs after the repair showed; null where there are none
 */
export function conclude(
  findings: readonly FindingReport[],
  bases: readonly FindingBasis[],
  given: CaseContext,
  proof: Proof | null = null,
): Conclusion {
  const context = proof?.unmoved ? { ...given, unmoved: proof.unmoved } : given;
  const ranked = findings.map((finding, i): FindingReport => {
    const basis = bases[i];
    if (!basis) return finding;
    const sharesFrequencyWith = finding.sharesFrequencyWith.map((other) => withLikeliest(other, basis, context));
    return { ...finding, sharesFrequencyWith, causes: rankCauses(basis, context) };
  });
  const left = ranked.filter(({ label }) => !proof?.gone.includes(label));
  const basesLeft = bases.filter((_, i) => !proof?.gone.includes(findings[i]?.label ?? ''));
  const checks = chooseChecks(left, context);
  const isMended = ({ label }: RepairReport): boolean => proof !== null && !isOpen(proof) && label === proof.complaint;
  const repairs = faultsToPutRight(left, basesLeft, context).filter((repair) => !isMended(repair));
  if (proof === null) return { findings: ranked, repairs, checks, cautions: cautionsFor([...repairs, ...checks]) };
  const known = knownAfter(proof, ranked, left, bases, given);
  const told = { ...proof, repaired: known.repaired, ...afterProof(proof, known) };
  return { findings: ranked, repairs, checks, proof: told, cautions: cautionsFor([told, ...repairs, ...checks]) };
}

/** So many causes are named as the likeliest after a repair that changed nothing. */
const NEXT_CAUSES = 2;

/** @param given the case without the proof: in it the faults stand that the repair is taken to have put right */
function knownAfter(
  { complaint }: Proof,
  ranked: readonly FindingReport[],
  left: readonly FindingReport[],
  bases: readonly FindingBasis[],
  given: CaseContext,
): AfterRepair {
  const at = ranked.findIndex(({ label }) => label === complaint);
  const [finding, basis] = [ranked[at], bases[at]];
  const before = finding && basis ? [{ ...finding, causes: rankCauses(basis, given) }] : [];
  return {
    repaired: (given.repaired ?? []).flatMap((id) => before.flatMap(({ causes }) => titleOf(id, causes))),
    putRight: faultsToPutRight(before, basis ? [basis] : [], given).flatMap(({ found }) => found),
    likeliest: (finding?.causes ?? []).slice(0, NEXT_CAUSES).map(({ title }) => title),
    left: left.filter(({ label }) => label !== complaint).map(({ label }) => label),
    sureOfPart: finding && basis ? sureOfPart(finding, basis, given) : null,
  };
}

/** How sure the order is once the shake is gone that others might have made; null where none might. */
function sureOfPart(finding: FindingReport, basis: FindingBasis, given: CaseContext): AfterRepair['sureOfPart'] {
  const { repaired = [] } = given;
  const { label, probability, sharesFrequencyWith } = finding;
  if (repaired.length === 0 || sharesFrequencyWith.length === 0) return null;
  const shareOf = (causes: FindingReport['causes']): number =>
    causes.filter(({ id }) => repaired.includes(id)).reduce((sum, cause) => sum + cause.probability, 0);
  const suspects = [
    { probability, repairedShare: shareOf(rankCauses(basis, given)) },
    ...sharesFrequencyWith.map((other) => ({
      probability: other.probability,
      repairedShare: shareOf(causesOfOther(other, basis, given)),
    })),
  ];
  return { label, before: probability, now: probabilityOnceGone(suspects) };
}

const titleOf = (id: string, causes: FindingReport['causes']): string[] =>
  causes.filter((cause) => cause.id === id).map(({ title }) => title);

/** A second suspect is worth its causes from this probability on, and so many of them. */
const SUSPECT_FROM = 0.1;
const MOST_LIKELIEST = 3;

/** Causes of the same shake taken for the other origin that shares its frequency. */
function causesOfOther(other: SharedOrigin, basis: FindingBasis, context: CaseContext): FindingReport['causes'] {
  const { part, order, label, name, probability } = other;
  const role = basis.companions.find((companion) => companion.label === label)?.role;
  const companions = basis.companions.filter((companion) => companion.label !== label);
  const { run, frequencyHz, amplitudeMps2, feltLevel, perceived, verticalShare } = basis;
  const { speedExponent, growthHiddenBy, levelByLoadMps2, beats } = basis;
  const shake = {
    run,
    frequencyHz,
    amplitudeMps2,
    feltLevel,
    perceived,
    verticalShare,
    speedExponent,
    ...(growthHiddenBy === undefined ? {} : { growthHiddenBy }),
    levelByLoadMps2,
    beats,
  };
  const named = { ...(name === undefined ? {} : { name }), ...(role === undefined ? {} : { role }) };
  return rankCauses({ ...shake, ...named, part, order, label, probability, companions }, context);
}

function withLikeliest(other: SharedOrigin, basis: FindingBasis, context: CaseContext): SharedOrigin {
  if (other.probability < SUSPECT_FROM) return other;
  const causes = causesOfOther(other, basis, context);
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
    ...(job.repaired === undefined ? {} : { repaired: job.repaired }),
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
  const { proof = null } = report;
  const conclusion = conclude(report.findings, bases, contextOf({ ...job, vehicle }, report.runs), proof);
  const first = conclusion.findings[0];
  const found = report.verdict === 'found' && first ? foundAnswer(first, conclusion.findings) : null;
  const answer = found && provedAnswer(taken ? takenAnswer(found, taken) : found, conclusion.proof ?? null);
  const changed: Report = { ...report, ...answer, ...conclusion, work: job.work, measurements: job.measurements };
  return { ...analysis, report: changed };
}
