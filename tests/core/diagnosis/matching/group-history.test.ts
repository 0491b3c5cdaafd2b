import { describe, expect, it } from 'vitest';
import { judgeJob } from '../../../../src/core/diagnosis/judge-job.ts';
import { beatingWith } from '../../../../src/core/diagnosis/findings/beats.ts';
import { runLevels } from '../../../../src/core/diagnosis/compare/run-levels.ts';
import { findingsOf } from '../../../../src/core/diagnosis/findings/findings-of.ts';
import { historyOf, orderSpectrumOf } from '../../../../src/core/diagnosis/matching/group-history.ts';
import { STEADY } from '../../../../src/core/signal/speed/equal-angle.ts';
import {
  FIRING_LABEL,
  FIRING_MPS2,
  foldedJob,
  foldedRecording,
  IMAGE_HZ,
  TIRE_MPS2,
} from '../../../support/folded-firing.ts';
import { drivenAt } from '../../../support/orders.ts';
import { must } from '../../../support/must.ts';

describe('the history of what turns with the road', () => {
  const judged = must(judgeJob({ job: foldedJob, recordings: [foldedRecording()] }));
  const inference = judged.inferences[0]!;
  const road = historyOf(inference, 'road');

  it('is that of the speed where the track was made from an image that moves the other way', () => {
    expect(inference.matches.some(({ lines }) => lines[0]?.image && lines[0].probability > 0.9)).toBe(true);
    const off = road.timeS.map((t, k) => Math.abs(road.relative[k]! - drivenAt(t)));
    // Turned round it would be off by up to a hundredth; at the ends of a recording a track is less sure.
    expect(Math.max(...off.subarray(4, -4))).toBeLessThan(0.001);
    expect(Math.max(...off)).toBeLessThan(0.003);
    expect(historyOf(inference, 'engine')).toEqual(road);
  });

  it('shows the level of an order, which a track turned round would smear', () => {
    expect(runLevels(inference).get('tire 1×')!.level.amplitudeMps2).toBeCloseTo(TIRE_MPS2, 2);
  });

  it('leaves what stands out most, the image, a sharp line in the spectrum on equal angle', () => {
    const { amplitudeMps2, stepHz } = orderSpectrumOf(inference)!;
    const at = Math.round(IMAGE_HZ / stepHz);
    const highest = Math.max(...amplitudeMps2.subarray(at - 2, at + 3));
    // A Hann bin half way between two shows 85 % of a line.
    expect(highest).toBeGreaterThan(0.83 * FIRING_MPS2);
  });

  it('finds no beat in an image of one line', () => {
    const [found] = findingsOf([inference]).filter(({ chosen }) => chosen?.image);
    expect(found?.label).toBe(FIRING_LABEL);
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
