import { describe, expect, it } from 'vitest';
import { isChangeOf } from '../../../../src/core/diagnosis/compare/change-of-finding.ts';
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

const speed = swayingSpeed([{ depth: 0.012, periodS: 23 }]);

/** Clock-steady tones beside wheel and driveshaft orders that sway with the speed. */
function judged(tones: readonly (readonly [hz: number, mps2: number])[], seed: number): JudgedJob {
  const { normal } = seededRandom(seed);
  const axis = Float64Array.from({ length: RATE * SECONDS }, (_, i) => {
    const t = i / RATE;
    const turned = 2 * Math.PI * WHEEL_HZ * speed.turnedAt(t);
    const orders =
      0.03 * Math.cos(turned) + 0.03 * Math.cos(AXLE_RATIO * turned) + 0.02 * Math.cos(2 * AXLE_RATIO * turned);
    return tones.reduce((sum, [hz, a]) => sum + a * Math.cos(2 * Math.PI * hz * t), orders) + 0.05 * normal();
  });
  const run = {
    file: 'run.csv',
    load: 'cruise',
    speedMps: WHEEL_HZ * CIRCUMFERENCE_M,
    speedSource: 'gps',
    gearRatio: 0.75,
  } as const;
  return must(judgeJob({ job: madeJob(MEASURED_TRUCK, run), recordings: [plainRecording([axis], RATE)] }));
}

const fixedIn = ({ pairs }: Comparison): readonly OrderChange[] =>
  pairs.flatMap(({ orders }) => orders.filter(({ part }) => part === 'fixed'));

describe('a complaint that keeps its frequency', () => {
  const before = judged(
    [
      [51.3, 0.8],
      [33.1, 0.2],
    ],
    3,
  );

  it('is compared where it stands, each tone by itself: 20·log of the amplitudes', () => {
    const told = compareJudged(
      before,
      judged(
        [
          [51.3, 0.2],
          [33.1, 0.2],
        ],
        4,
      ),
    );
    expect(told.sentence).toBe('Fixed tone at 51.3 Hz is better, but not gone.');
    const [halved, same] = [51.3, 33.1].map((hz) =>
      fixedIn(told).find(({ label }) => label === `fixed tone at ${hz} Hz`)!,
    );
    expect(halved!.changeDb).toBeCloseTo(-12.04, 0);
    expect(halved!.real).toBe(true);
    expect(same!.changeDb).toBeCloseTo(0, 0);
    expect(same!.verdict).toBe('unchanged');
  });

  it('is gone where nothing stands there any more, and the rest of the recording is not taken for it', () => {
    const told = compareJudged(before, judged([[33.1, 0.2]], 5));
    expect(told.verdict).toBe('gone');
    expect(told.sentence).toBe('Fixed tone at 51.3 Hz is gone.');
    expect(told.why).toMatch(/^Felt level [\d.]+ before, under [\d.]+ now: at least \d+ times weaker/);
  });

  it('that is new elsewhere is new, though another fixed tone was there before', () => {
    const told = compareJudged(
      before,
      judged(
        [
          [33.1, 0.2],
          [27.7, 0.3],
        ],
        6,
      ),
    );
    expect(told.verdict).toBe('moved');
    expect(told.sentence).toContain('New since then: fixed tone at 27.7 Hz');
  });

  it('is known by its frequency, an order by its name', () => {
    const fixed = {
      part: 'fixed',
      order: null,
      label: 'fixed tone at 51.3 Hz',
      before: { frequencyHz: 51.3 },
      after: { frequencyHz: 51.3 },
    } as OrderChange;
    const known = { label: 'fixed tone', part: 'fixed', order: null } as const;
    expect([50.0, 52.6, 49.6, 53.0].map((frequencyHz) => isChangeOf({ ...known, frequencyHz })(fixed))).toEqual([
      true,
      true,
      false,
      false,
    ]);
    expect(isChangeOf({ label: 'unknown tone', part: 'unknown', order: null, frequencyHz: 51.3 })(fixed)).toBe(false);
    const shaft = { part: 'driveshaft', order: 1, label: 'driveshaft 1×', before: { frequencyHz: 40 } } as OrderChange;
    expect(isChangeOf({ label: 'driveshaft 1×', part: 'driveshaft', order: 1, frequencyHz: 44 })(shaft)).toBe(true);
  });
});
