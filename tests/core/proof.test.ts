/**
 * What a job says whose repair was put to the proof. That a proved repair closes the job, and that one which changed
 * nothing sends on to the next cause: common practice, no source.
 */
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { analyse } from '../../src/core/analyse.ts';
import { reweigh } from '../../src/core/conclude.ts';
import { afterProof } from '../../src/core/diagnosis/compare/after-proof.ts';
import { readJob } from '../../src/core/job/job-file.ts';
import type { Job } from '../../src/core/job/job.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import type { Recording } from '../../src/core/reading/recording.ts';
import { reportPage } from '../../src/core/report/page.ts';
import { reportText } from '../../src/core/report/text.ts';
import type { Analysis } from '../../src/core/report/analysis.ts';

let job: Job;
let recordings: Recording[];
let analysis: Analysis;

beforeAll(async () => {
  const read = readJob(readFileSync('recordings/comeback.job.json', 'utf8'), 'comeback');
  if (!read.ok) throw new Error(read.problem.message);
  job = read.value;
  recordings = await Promise.all(
    job.runs.map(async ({ file }) => {
      const recording = await readRecording({ name: file, bytes: readFileSync(`recordings/${file}`) }, {});
      if (!recording.ok) throw new Error(recording.problem.message);
      return recording.value;
    }),
  );
  analysis = analysed(job, recordings);
});

const analysed = (of: Job, from: readonly Recording[]): Analysis => {
  const analysis = analyse(of, from);
  if (!analysis.ok) throw new Error(analysis.problem.message);
  return analysis.value;
};
const ANGLES = ['angles-from-ride-height', 'angles-from-axle', 'angles-from-mount'];
const ofAngles = ({ report }: Analysis): number =>
  (report.findings[0]?.causes ?? []).reduce(
    (sum, { id, probability }) => sum + (ANGLES.includes(id) ? probability : 0),
    0,
  );

describe('a job with a run made after the repair', () => {
  it('is closed where the shake is gone: nothing to put right, nothing to check, nothing to record', () => {
    const { report } = analysis;
    expect(report.sentence).toMatch(/With .* put right, driveshaft 2× is gone\.$/);
    expect(report.proof).toMatchObject({ verdict: 'gone', title: 'Close the job', gone: ['driveshaft 2×'] });
    expect(report.repairs).toEqual([]);
    expect(report.checks).toEqual([]);
    expect(report.proof?.cautions.some((text) => text.includes('does not clear a vehicle as safe'))).toBe(true);
    for (const text of [reportText(report, { units: 'us' }), reportPage(analysis, { units: 'us' })]) {
      expect(text).toContain('Close the job');
      expect(text).not.toMatch(/Put right first|Then record again|If it still shakes/);
    }
  });

  it('goes on to the next cause where the shake stayed, and sets down what was put right', () => {
    const [cruise, pull] = recordings as [Recording, Recording];
    const before = { ...job, runs: job.runs.slice(0, 2) };
    const again = { ...job.runs[0]!, file: 'again.csv', name: 'Cruise again', stage: 'proof' as const };
    const unproved = analysed(before, [cruise, pull]);
    const proved = analysed({ ...job, runs: [...before.runs, again] }, [cruise, pull, cruise]);
    const { report } = proved;
    expect(report.proof).toMatchObject({ verdict: 'unchanged', unmoved: 'driveshaft 2×', gone: [] });
    expect(report.proof?.title).toBe('That was not it: go on to the next cause');
    expect(unproved.report.repairs).toHaveLength(1);
    expect(report.repairs).toEqual([]);
    expect(ofAngles(unproved)).toBeGreaterThan(0.85);
    expect(ofAngles(proved)).toBeLessThan(0.3);
    expect(report.checks.length).toBeGreaterThan(0);
    expect(report.proof?.steps.join(' ')).toMatch(/difference between the two joint angles of a shaft: 2\.7°/);
    const likeliest = report.findings[0]?.causes[0]?.title ?? '';
    expect(report.proof?.steps.join(' ').toLowerCase()).toContain(likeliest.toLowerCase());
  });

  it('tells what was put right where the shake is gone: by the reading outside its limit, or as the job says', () => {
    const told = (of: Job): string => reweigh(analysis, of).report.proof?.steps.join(' ') ?? '';
    expect(told({ ...job, repaired: [] })).toMatch(
      /Put right: difference between the two joint angles .* That was it\./,
    );
    expect(told({ ...job, repaired: ['angles-from-axle'] })).toContain(
      'Put right: unequal working angles from a rotated axle or a wrong wedge; difference between',
    );
    expect(told({ ...job, repaired: [], measurements: [] })).toContain('Which cause was put right is not known here');
  });

  it('names in its answer what the job says was put right, and nothing where it does not say', () => {
    const sentence = (repaired: readonly string[]): string => reweigh(analysis, { ...job, repaired }).report.sentence;
    expect(analysis.report.sentence).toContain('With that put right, driveshaft 2× is gone.');
    expect(sentence(['forks-out-of-phase'])).toContain('With forks of the driveshaft out of phase put right, ');
    expect(sentence([])).toMatch(/After the repair: driveshaft 2× is gone\.$/);
    // A cause of some other shake was not what was mended here.
    expect(sentence(['misfire-fuel'])).toMatch(/After the repair: driveshaft 2× is gone\.$/);
  });

  it('takes the repair that helped as evidence of the part, and only that', () => {
    const steps = (repaired: readonly string[]): string =>
      (reweigh(analysis, { ...job, repaired }).report.proof?.steps ?? []).join(' ');
    // Bayes' rule by hand from the figures of the report: angles are no cause of an engine's order.
    const [first] = analysis.report.findings;
    const share = first!.causes.find(({ id }) => id === 'angles-from-ride-height')!.probability;
    const helps = first!.probability * (0.95 * share + 0.05 * (1 - share));
    const now = helps / (helps + 0.05 * (1 - first!.probability));
    const before = Math.round(100 * first!.probability);
    expect(steps(['angles-from-ride-height'])).toContain(
      `That was it. This speaks for driveshaft 2×: ${Math.round(100 * now)} in 100 now, ${before} in 100 before.`,
    );
    expect(steps([])).not.toContain('This speaks');
    // What was put right was not on the driveshaft.
    expect(steps(['misfire-fuel'])).not.toContain('This speaks');
  });

  it('weighs down a cause that was put right in vain, measured or not, and says so', () => {
    const [cruise, pull] = recordings as [Recording, Recording];
    const again = { ...job.runs[0]!, file: 'again.csv', name: 'Cruise again', stage: 'proof' as const };
    const vain = { ...job, measurements: [], repaired: [], runs: [...job.runs.slice(0, 2), again] };
    const unsaid = analysed(vain, [cruise, pull, cruise]);
    const [likeliest] = unsaid.report.findings[0]!.causes;
    const said = reweigh(unsaid, { ...vain, repaired: [likeliest!.id] }).report;
    const now = said.findings[0]!.causes.find(({ id }) => id === likeliest!.id)!;
    expect(now.probability).toBeLessThan(likeliest!.probability / 5);
    expect(now.against).toContain('It was put right, and the shake stayed.');
    expect(said.proof?.steps.join(' ')).not.toContain('not known here');
  });

  it('says the same after an entry as when all is analysed again', () => {
    expect(reweigh(analysis, job).report).toEqual(analysis.report);
  });

  it('says nothing of a proof where every run is one', () => {
    const runs = job.runs.slice(2);
    expect(analysed({ ...job, runs }, recordings.slice(2)).report.proof).toBeUndefined();
  });
});

describe('the next step', () => {
  const known = {
    repaired: [],
    putRight: [],
    likeliest: ['Loose joint', 'Something else'],
    left: [],
    sureOfPart: null,
  };
  const proof = { sentence: 'S.', why: 'W.', complaint: 'tire 1×', unmoved: null, gone: [] };

  it('is another recording where the comparison leaves it open, a change too unsure to call none among them', () => {
    for (const verdict of ['cannot-tell', 'nothing-to-compare', 'unchanged'] as const)
      expect(afterProof({ ...proof, verdict }, known).title).toMatch(/record once more/);
  });

  it('looks over the work first where it shakes more, or something else shakes', () => {
    expect(afterProof({ ...proof, verdict: 'worse' }, known).steps[0]).toContain('what the work may have changed');
    const [first] = afterProof({ ...proof, verdict: 'moved' }, known).steps;
    expect(first).toContain('S. What is new came with the work until shown otherwise');
  });

  it('names another fault that is left where the complaint is gone', () => {
    const { steps } = afterProof(
      { ...proof, verdict: 'gone', gone: ['tire 1×'] },
      { ...known, left: ['driveshaft 2×'] },
    );
    expect(steps.at(-1)).toContain('driveshaft 2×');
  });
});
