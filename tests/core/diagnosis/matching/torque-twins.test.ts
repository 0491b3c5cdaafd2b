import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import type { Match, OriginShare } from '../../../../src/core/diagnosis/matching/match.ts';
import { twinsIn } from '../../../../src/core/diagnosis/matching/torque-twins.ts';
import type { Load } from '../../../../src/core/vehicle/vehicle.ts';
import { recordingOfOrders } from '../../../support/orders.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const RATE_HZ = 200;
/** 3.05 times the outer diameter of 205/55R16, 631.9 mm. */
const CIRCUMFERENCE_M = 1.927295;

interface Driven {
  readonly load: Load;
  readonly mps2: number;
  readonly speedMps?: number;
}

const recordingOf = ({ mps2, speedMps = 20 }: Driven, seed: number) =>
  recordingOfOrders({
    wheelHz: speedMps / CIRCUMFERENCE_M,
    rateHz: RATE_HZ,
    seconds: 30,
    orders: [[3, mps2]],
    seed,
  });

/** Tripod and tires turn three times as fast as the wheel: one line of three times wheel speed in each run. */
const firstOf = (...runs: readonly Driven[]) => {
  const job = madeJob(
    {
      tire: { kind: 'size', size: '205/55R16' },
      layout: 'front-drive',
      finalDrive: 3.94,
      cylinders: 4,
      tripodJoints: true,
    },
    ...runs.map(({ load, speedMps = 20 }, i) => ({
      file: `${i}.csv`,
      name: `run ${i}`,
      speedMps,
      speedSource: 'gps' as const,
      gearRatio: 1.16,
      load,
    })),
  );
  const analysis = must(
    analyse(
      job,
      runs.map((run, i) => recordingOf(run, 20 + i)),
    ),
  );
  const [finding] = analysis.report.findings;
  return finding!;
};

describe('joint and tire of one match', () => {
  const share = (part: string, image: boolean, probability: number): OriginShare =>
    ({ origin: { line: { part, order: 3 } }, image, probability }) as OriginShare;
  const of = (...lines: OriginShare[]) => twinsIn({ lines } as unknown as Match);

  it('are weighed against each other as they are seen: an image is no twin of what is seen directly', () => {
    const image = share('tire', true, 0.5);
    const [joint, tire] = [share('half-shaft', false, 0.3), share('tire', false, 0.2)];
    expect(of(image, joint, tire)).toEqual({ joint, tire });
    expect(of(image, joint)).toBeNull();
  });
});

// That a tripod joint pushes with the torque it passes: Sugiura et al., J. System Design and Dynamics 3(6), 2009 (from
// memory); that a tire does not ask for it: common practice, no source.
describe('tripod 3× and tire 3×, which turn at one rate', () => {
  it('share it by judgment in one run', () => {
    const { probability, sharesFrequencyWith } = firstOf({ load: 'pull', mps2: 0.4 });
    expect(probability).toBeLessThan(0.75);
    expect(sharesFrequencyWith).toHaveLength(1);
  });

  it('are parted by a run under less torque: what goes with it is the joint', () => {
    for (const coasting of [0.06, 0]) {
      const finding = firstOf({ load: 'pull', mps2: 0.4 }, { load: 'coast', mps2: coasting });
      expect(finding).toMatchObject({ part: 'half-shaft', order: 3 });
      expect(finding.probability).toBeGreaterThan(0.85);
      expect(finding.for.join(' ')).toMatch(/In run 1 it has (less than )?\d+ % of the level.*goes with the torque/);
      expect(finding.for.join(' ')).not.toContain('Nothing else that turns comes within 0.0');
    }
  });

  it('are parted the other way where the level stays, and by no run at another speed', () => {
    const tire = firstOf({ load: 'pull', mps2: 0.4 }, { load: 'neutral', mps2: 0.38 });
    expect(tire).toMatchObject({ part: 'tire', order: 3 });
    expect(tire.probability).toBeGreaterThan(0.8);
    expect(tire.for.join(' ')).toContain('does not go with the torque');
    const elsewhere = firstOf({ load: 'pull', mps2: 0.4 }, { load: 'coast', mps2: 0.06, speedMps: 27 });
    expect(elsewhere.for.join(' ')).not.toContain('torque');
  });

  it('have the growth of a tire’s level with the square of the speed taken out', () => {
    const tireWhereCoastingAt = (speedMps: number): number => {
      const first = firstOf({ load: 'pull', mps2: 0.4 }, { load: 'coast', mps2: 0.31, speedMps });
      return first.part === 'tire' ? first.probability : 1 - first.probability;
    };
    // A tenth slower a fifth less is what a tire does; a tenth faster it should have been a fifth more.
    expect(tireWhereCoastingAt(18.2)).toBeGreaterThan(tireWhereCoastingAt(22) + 0.02);
  });
});
