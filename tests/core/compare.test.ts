import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { compare, compareJudged, stagesOf } from '../../src/core/compare.ts';
import type { RecordedJob } from '../../src/core/job/recorded-job.ts';
import { changeOf } from '../../src/core/diagnosis/compare/change.ts';
import type { Comparison } from '../../src/core/diagnosis/compare/comparison.ts';
import { speedMissed } from '../../src/core/diagnosis/compare/speed-missed.ts';
import type { JudgedJob } from '../../src/core/diagnosis/judge-job.ts';
import { judgeJob } from '../../src/core/diagnosis/judge-job.ts';
import { readJob } from '../../src/core/job/job-file.ts';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import type { OrderLevel } from '../../src/core/signal/speed/order-level.ts';
import { differences, golden } from '../golden/differences.ts';
import { must } from '../support/must.ts';

/** A run of a minute whose blocks scatter about the power by a hundredth, alternately: as steady as can be. */
const level = (power: number, powerSd: number, noisePower = 1e-6): OrderLevel => ({
  amplitudeMps2: Math.sqrt(power),
  power,
  powerSd,
  noisePower,
  noisePowerSd: noisePower / 9,
  nearNoisePower: null,
  noiseAlong: 1,
  noiseAsOne: 1,
  blocks: 28,
  effectiveBlocks: 25,
  blockPowers: Array.from({ length: 28 }, (_, k) => noisePower + power * (1 + (k % 2 === 0 ? 0.01 : -0.01))),
  stepS: 2,
  blockStartsS: Array.from({ length: 28 }, (_, k) => 2 * k),
  blockNoises: Array.from({ length: 28 }, () => noisePower),
  blockLogSpeeds: Array.from({ length: 28 }, () => 0),
});
const ALIKE = { speedDb: 0, unlikeSdDb: 0 };
const seen = (power: number, powerSd: number) => ({ level: level(power, powerSd), seen: true });

describe('the change of one level', () => {
  it('tells half the amplitude as 6.02 dB less, within what one run differs from the next', () => {
    const change = changeOf(seen(4e-2, 4e-4), seen(1e-2, 1e-4), ALIKE);
    expect(change.db).toBeCloseTo(-6.0206, 2);
    // 0.3 dB from run to run is 0.59 dB at 95 %; the blocks' own scatter adds next to nothing.
    expect(change.highDb! - change.db).toBeGreaterThan(0.58);
    expect(change.highDb! - change.db).toBeLessThan(0.75);
    expect(change.real).toBe(true);
  });

  it('takes the speed out before judging: 3.0103 dB of power is the square of an eighth more speed', () => {
    const speedDb = 3.0103 / 2;
    const change = changeOf(seen(1e-2, 1e-4), seen(2e-2, 2e-4), { speedDb, unlikeSdDb: 0 });
    expect(change.db).toBeCloseTo(0, 2);
    expect(change.real).toBe(false);
    const slower = changeOf(seen(2e-2, 2e-4), seen(1e-2, 1e-4), { speedDb: -speedDb, unlikeSdDb: 0 });
    expect(slower.db).toBeCloseTo(0, 2);
  });

  it('is less sure the further apart the speeds are, and has long tails for resonances', () => {
    const widths = [0, 0.1, 0.5].map((speedDb) => {
      const { lowDb, highDb } = changeOf(seen(1e-2, 1e-4), seen(1e-2, 1e-4), { speedDb, unlikeSdDb: 0 });
      return highDb! - lowDb!;
    });
    expect(widths[1]!).toBeGreaterThan(widths[0]!);
    // Exponents 2 ± 3 and, one in four, 2 ± 10: 95 % of them within ±12.6 (SciPy), times 0.5 dB, on both sides.
    expect(widths[2]!).toBeCloseTo(2 * 12.6 * 0.5, 0);
  });

  it('widens the interval where the runs are unlike', () => {
    const alike = changeOf(seen(4e-2, 4e-4), seen(2e-2, 2e-4), ALIKE);
    const unlike = changeOf(seen(4e-2, 4e-4), seen(2e-2, 2e-4), { speedDb: 0, unlikeSdDb: 2 });
    expect(alike.real).toBe(true);
    expect(unlike.real).toBe(false);
  });

  it('says at least how much is gone where the noise hides what is left', () => {
    const change = changeOf(seen(1e-2, 1e-4), { level: level(1e-7, 3e-7), seen: false }, ALIKE);
    expect(change.lowDb).toBeNull();
    expect(change.highDb).toBeLessThan(-30);
    expect(change.real).toBe(true);
  });

  it('is less sure of what is gone, or what is new, the further apart the speeds are', () => {
    const hiddenLevel = { level: level(1e-7, 3e-7), seen: false };
    // Exponents of mean 2 and, of both laws together, standard deviation √(¾·3² + ¼·10²) = 5.635; 1.645 is one-sided 95 %.
    const margin = 1.645 * (Math.hypot(5.635 * 0.5, 0.3) - 0.3);
    const gone = [0, 0.5].map((speedDb) => changeOf(seen(1e-2, 1e-4), hiddenLevel, { speedDb, unlikeSdDb: 0 }));
    expect(gone[1]!.highDb! - gone[0]!.highDb!).toBeCloseTo(-2 * 0.5 + margin, 2);
    expect(gone[1]!.db - gone[0]!.db).toBeCloseTo(-2 * 0.5, 9);
    const fresh = [0, 0.5].map((speedDb) => changeOf(hiddenLevel, seen(1e-2, 1e-4), { speedDb, unlikeSdDb: 0 }));
    expect(fresh[1]!.lowDb! - fresh[0]!.lowDb!).toBeCloseTo(-2 * 0.5 - margin, 2);
    expect(fresh[0]!.real).toBe(true);
    expect(fresh[0]!.highDb).toBeNull();
  });

  it('claims nothing where both are hidden', () => {
    const hidden = { level: level(1e-7, 3e-7), seen: false };
    expect(changeOf(hidden, hidden, ALIKE).real).toBe(false);
  });
});

describe('a proving run that missed the speed', () => {
  const runsAt = (speedMps: number | null) => ({
    before: { name: 'As found', speedMps, durationS: 60 },
    after: { name: 'Wedges fitted', speedMps, durationS: 60 },
  });
  const told = (from: number, to: number, speedDb: number, speedMps: number | null = 20): string | null => {
    const [one, other, conditions] = [seen(from, from / 100), seen(to, to / 100), { speedDb, unlikeSdDb: 0 }];
    return speedMissed([one, other], conditions, changeOf(one, other, conditions), runsAt(speedMps));
  };
  const FASTER_DB = 20 * Math.log10(1.02);

  it('is asked for again at the speed of the first, with what that would narrow', () => {
    const text = told(1e-2, 0.8e-2, FASTER_DB);
    expect(text).toMatch(/^Wedges fitted was 2\.0 % faster than As found/);
    // 20 m/s; 0.3 dB from run to run alone is ±0.6 dB.
    expect(text).toMatch(/Driven again at 44\.7 mph \(72\.0 km\/h\), by cruise control, it would be ±0\.[67] dB\.$/);
    expect(told(1e-2, 1e-2, -FASTER_DB, null)).toMatch(/slower .* Driven again at the same speed,/);
  });

  it('is not asked for where a change is shown all the same, nor where the speed was met', () => {
    expect(told(1e-2, 1e-4, FASTER_DB)).toBeNull();
    expect(told(1e-2, 0.8e-2, 20 * Math.log10(1.004))).toBeNull();
  });

  it('is not asked for where one level is hidden, or where noise decides', () => {
    const hidden = { level: level(1e-7, 3e-7), seen: false };
    const conditions = { speedDb: FASTER_DB, unlikeSdDb: 0 };
    expect(speedMissed([hidden, hidden], conditions, changeOf(hidden, hidden, conditions), runsAt(20))).toBeNull();
    const rough = { speedDb: 20 * Math.log10(1.006), unlikeSdDb: 4 };
    const [a, b] = [seen(1e-2, 1e-4), seen(1e-2, 1e-4)];
    expect(speedMissed([a, b], rough, changeOf(a, b, rough), runsAt(20))).toBeNull();
  });
});

async function recorded(name: string): Promise<RecordedJob> {
  const job = must(readJob(readFileSync(`recordings/${name}.job.json`, 'utf8'), name));
  const recordings = await Promise.all(
    job.runs.map(async ({ file }) =>
      must(await readRecording({ name: file, bytes: readFileSync(`recordings/${file}`) }, {})),
    ),
  );
  return { job, recordings };
}

describe('before and after', () => {
  let before: JudgedJob;
  let after: JudgedJob;
  let comparison: Comparison;
  beforeAll(async () => {
    const stages = stagesOf(await recorded('comeback'));
    before = must(judgeJob(stages.before));
    after = must(judgeJob(stages.after));
    comparison = compareJudged(before, after);
  });

  it('says that the comeback is gone, and by how much', () => {
    expect(comparison.verdict).toBe('gone');
    expect(comparison.sentence).toContain('Driveshaft 2× is gone');
    const change = comparison.pairs[0]!.orders.find(({ label }) => label === 'driveshaft 2×')!;
    expect(change.changeDb).toBeLessThan(-20);
  });

  // They show that something has changed, not that it is right: see tests/golden.
  it('gives the figures it gave when they were last looked at', () => {
    expect(differences(JSON.parse(JSON.stringify(comparison)), golden('comparison'), 1e-5)).toEqual([]);
  });

  it('says worse where the two are swapped', () => {
    expect(compareJudged(after, before).verdict).toBe('worse');
  });

  it('compares a hum that one short run does not show to be fixed for sure', async () => {
    const { job, recordings } = await recorded('fixed-hum');
    const one = must(judgeJob({ job: { ...job, runs: job.runs.slice(0, 1) }, recordings: recordings.slice(0, 1) }));
    const [finding] = one.found;
    expect(finding!.match.others.fixed).toBeLessThan(0.5);
    expect(compareJudged(one, one).sentence).toBe('Fixed tone at 31.4 Hz is unchanged.');
  });

  it('finds a recording unchanged against itself', async () => {
    const judged = must(judgeJob(await recorded('joint-replaced')));
    const same = compareJudged(judged, judged);
    expect(same.verdict).toBe('unchanged');
    expect(same.pairs[0]!.orders.every(({ real }) => !real)).toBe(true);
  });

  it('refuses an empty side with a remedy', async () => {
    const job = await recorded('joint-replaced');
    const result = compare(job, { job: job.job, recordings: [] });
    expect(!result.ok && result.problem.message).toContain('no recording from after the repair');
    expect(!result.ok && result.problem.remedy).toContain('Record the complaint run again');
  });
});
