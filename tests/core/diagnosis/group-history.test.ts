import { describe, expect, it } from 'vitest';
import { inferencesOf } from '../../../src/core/compare.ts';
import { beatingWith } from '../../../src/core/diagnosis/beats.ts';
import { runLevels } from '../../../src/core/diagnosis/compare/run-levels.ts';
import { findingsOf } from '../../../src/core/diagnosis/finding.ts';
import { historyOf, orderSpectrumOf } from '../../../src/core/diagnosis/group-history.ts';
import type { RunInference } from '../../../src/core/diagnosis/infer-run.ts';
import type { Job } from '../../../src/core/job/job.ts';
import { STEADY } from '../../../src/core/signal/equal-angle.ts';
import { recordingOfOrders } from '../../support/orders.ts';

/** 205/55R16 by 3.05 times its outer diameter, 631.9 mm, at 25 m/s. */
const WHEEL_HZ = 25 / 1.927295;
const FIRING = 2 * 3.94 * 0.74;
const RATE_HZ = 100;

const JOB: Job = {
  schemaVersion: 1,
  vehicle: {
    tire: { kind: 'size', size: '205/55R16' },
    layout: 'front-drive',
    finalDrive: 3.94,
    cylinders: 4,
    converter: false,
  },
  work: [],
  runs: [{ file: 'made.csv', speedMps: 25, speedSource: 'gps', gearRatio: 0.74, load: 'cruise' }],
  measurements: [],
};

const inferenceOf = (orders: readonly (readonly [number, number])[]): RunInference => {
  const made = recordingOfOrders({ wheelHz: WHEEL_HZ, rateHz: RATE_HZ, seconds: 60, orders, seed: 3 });
  const judged = inferencesOf({ job: JOB, recordings: [made] });
  if (!judged.ok) throw new Error(judged.problem.message);
  return judged.value[0]!;
};

/** Relative speed as `recordingOfOrders` drives. */
const driven = (atS: number): number => 1 + 0.005 * Math.sin(0.3 * atS);

describe('the history of what turns with the road', () => {
  // Firing at 75.6 Hz shows at 24.4 Hz and moves there the other way, three times as far as a line of that place would.
  const inference = inferenceOf([
    [1, 0.15],
    [FIRING, 0.6],
  ]);
  const road = historyOf(inference, 'road');

  it('is that of the speed where the track was made from an image that moves the other way', () => {
    expect(inference.matches.some(({ lines }) => lines[0]?.image && lines[0].probability > 0.9)).toBe(true);
    const off = road.timeS.map((t, k) => Math.abs(road.relative[k]! - driven(t)));
    // Turned round it would be off by up to a hundredth; at the ends of a recording a track is less sure.
    expect(Math.max(...off.subarray(4, -4))).toBeLessThan(0.001);
    expect(Math.max(...off)).toBeLessThan(0.003);
    expect(historyOf(inference, 'engine')).toEqual(road);
  });

  it('shows the level of an order, which a track turned round would smear', () => {
    expect(runLevels(inference).get('tire 1×')!.level.amplitudeMps2).toBeCloseTo(0.15, 2);
  });

  it('leaves what stands out most, the image, a sharp line in the spectrum on equal angle', () => {
    const { amplitudeMps2, stepHz } = orderSpectrumOf(inference)!;
    const at = Math.round((RATE_HZ - FIRING * WHEEL_HZ) / stepHz);
    const highest = Math.max(...amplitudeMps2.subarray(at - 2, at + 3));
    // A Hann bin half way between two shows 85 % of a line.
    expect(highest).toBeGreaterThan(0.83 * 0.6);
  });

  it('finds no beat in an image of one line', () => {
    const [found] = findingsOf([inference]).filter(({ chosen }) => chosen?.image);
    expect(found?.label).toBe('engine 2× (firing)');
    expect(beatingWith(found!)).toEqual([]);
  });

  it('is none where nothing is known of the group', () => {
    const model = { ...inference.model, road: null, engine: 0, factor: 1 };
    expect(historyOf({ run: inference.run, model }, 'road')).toBe(STEADY);
    expect(orderSpectrumOf({ ...inference, model })).toBeNull();
    // But on a ramp the engine cannot but have gone along with the road.
    const ramp = { ...inference.run, histories: { ...inference.run.histories, wander: [0.1] } };
    expect(historyOf({ run: ramp, model }, 'road')).toBe(inference.run.tracks[0]);
  });
});
