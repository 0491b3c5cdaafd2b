import { describe, expect, it } from 'vitest';
import { compareJudged } from '../../../../src/core/compare.ts';
import type { Comparison, OrderChange } from '../../../../src/core/diagnosis/compare/comparison.ts';
import { judgeJob } from '../../../../src/core/diagnosis/judge-job.ts';
import type { JudgedJob } from '../../../../src/core/diagnosis/judge-job.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { madeJob } from '../../../support/made-job.ts';
import { AXLE_RATIO, CIRCUMFERENCE_M, MEASURED_TRUCK } from '../../../support/measured-truck.ts';
import { must } from '../../../support/must.ts';
import { seededRandom } from '../../../support/random.ts';
import { swayingSpeed } from '../../../support/swaying-speed.ts';

const RATE = 200;
const SECONDS = 60;
const WHEEL_HZ = 12;
/** Turns with the wheels, though at a ratio that no listed part has. */
const OWN_RATIO = 4.62;

const speed = swayingSpeed([{ depth: 0.012, periodS: 23 }]);
const MEAN_SPEED = speed.turnedAt(SECONDS) / SECONDS;

interface Drive {
  /** Of the tone of no listed part. */
  readonly mps2: number;
  readonly ratio?: number;
  /** Of driveshaft 1×. */
  readonly shaftMps2?: number;
  /** Relative to the first drive. */
  readonly faster?: number;
  readonly isSpeedTold?: boolean;
}

/** A tone of no listed part beside wheel and driveshaft orders, all swaying with the speed. */
function judged(
  { mps2, ratio = OWN_RATIO, shaftMps2 = 0.03, faster = 1, isSpeedTold = true }: Drive,
  seed: number,
): JudgedJob {
  const { normal } = seededRandom(seed);
  const axis = Float64Array.from({ length: RATE * SECONDS }, (_, i) => {
    const turned = 2 * Math.PI * WHEEL_HZ * faster * speed.turnedAt(i / RATE);
    const orders =
      0.03 * Math.cos(turned) + shaftMps2 * Math.cos(AXLE_RATIO * turned) + 0.02 * Math.cos(2 * AXLE_RATIO * turned);
    return orders + mps2 * Math.cos(ratio * turned) + 0.05 * normal();
  });
  const known = isSpeedTold
    ? { speedMps: WHEEL_HZ * CIRCUMFERENCE_M * faster, speedSource: 'gps' as const, gearRatio: 0.75 }
    : {};
  const run = { file: 'run.csv', load: 'cruise' as const, ...known };
  return must(judgeJob({ job: madeJob(MEASURED_TRUCK, run), recordings: [plainRecording([axis], RATE)] }));
}

const unknownIn = ({ pairs }: Comparison): readonly OrderChange[] =>
  pairs.flatMap(({ orders }) => orders.filter(({ part }) => part === 'unknown'));

describe('a complaint that fits no listed part', () => {
  const before = judged({ mps2: 0.9 }, 11);
  const hz = (OWN_RATIO * WHEEL_HZ * MEAN_SPEED).toFixed(1);

  it('is an unknown tone', () => {
    expect(before.found[0]?.label).toBe('unknown tone');
  });

  it('is compared all the same: 20·log of the amplitudes', () => {
    const told = compareJudged(before, judged({ mps2: 0.45 }, 12));
    expect(told.verdict).toBe('better');
    expect(told.sentence).toBe(`Unknown tone at ${hz} Hz is better, but not gone.`);
    const [change] = unknownIn(told);
    expect(change!.changeDb).toBeCloseTo(-6.02, 0);
    expect(change!.lowDb!).toBeLessThan(-6.02);
    expect(change!.highDb!).toBeGreaterThan(-6.02);
  });

  it('is unchanged where it stands as before', () => {
    expect(compareJudged(before, judged({ mps2: 0.9 }, 13)).verdict).toBe('unchanged');
  });

  it('is gone where nothing stands there any more', () => {
    const told = compareJudged(before, judged({ mps2: 0 }, 14));
    expect(told.verdict).toBe('gone');
    expect(told.why).toMatch(/^Felt level [\d.]+ before, under [\d.]+ now: at least \d+ times weaker/);
  });

  it('is found where the other speed puts it, and is not new there', () => {
    const told = compareJudged(before, judged({ mps2: 0.9, faster: 1.05 }, 15));
    expect(unknownIn(told).map(({ after }) => after.frequencyHz.toFixed(0))).toEqual([
      (OWN_RATIO * WHEEL_HZ * MEAN_SPEED * 1.05).toFixed(0),
    ]);
    expect(told.verdict).toBe('unchanged');
    expect(told.sentence).not.toContain('New since then');
  });

  it('that came with the repair is new', () => {
    const told = compareJudged(before, judged({ mps2: 0.9, ratio: 1.83 }, 16));
    expect(told.verdict).toBe('moved');
    expect(told.sentence).toContain(`New since then: unknown tone at ${(1.83 * WHEEL_HZ * MEAN_SPEED).toFixed(1)} Hz`);
  });

  it('cannot be called gone where no speed is told, and the answer says what to do', () => {
    const told = compareJudged(
      judged({ mps2: 0.9, isSpeedTold: false }, 17),
      judged({ mps2: 0, isSpeedTold: false }, 18),
    );
    expect(told.verdict).toBe('cannot-tell');
    expect(told.why).toContain('at the same speed');
  });

  it('is gone also beside an order that stays: only what lies nearer to that order is its', () => {
    // Driveshaft 1× stands 0.6 Hz below the tone, within what the speeds leave open.
    const beside = { ratio: 3.6, shaftMps2: 0.2 };
    const told = compareJudged(judged({ mps2: 0.9, ...beside }, 19), judged({ mps2: 0, ...beside }, 20));
    expect(told.sentence).toBe(`Unknown tone at ${(3.6 * WHEEL_HZ * MEAN_SPEED).toFixed(1)} Hz is gone.`);
    // Its flank, where the search comes nearest to it, and not the order itself is taken for what could hide there.
    const { amplitudeMps2, frequencyHz } = unknownIn(told)[0]!.after;
    expect(amplitudeMps2).toBeLessThan(beside.shaftMps2);
    expect(frequencyHz - AXLE_RATIO * WHEEL_HZ * MEAN_SPEED).toBeGreaterThan(0.45);
    expect(frequencyHz - AXLE_RATIO * WHEEL_HZ * MEAN_SPEED).toBeLessThan(0.75);
  });
});
