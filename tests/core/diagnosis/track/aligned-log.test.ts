import { describe, expect, it } from 'vitest';
import { alignLog, isSteep } from '../../../../src/core/diagnosis/track/aligned-log.ts';
import { cutRecording } from '../../../../src/core/reading/cut-recording.ts';
import type { Track } from '../../../../src/core/reading/recording.ts';
import { relativeSpeedAt } from '../../../../src/core/signal/speed/equal-angle.ts';
import { prepare } from '../../../../src/core/signal/prepare/prepare.ts';
import { launch, speedAt, timeOf } from '../../../support/launch.ts';

const logged = (values: readonly number[]): Track => ({
  timeS: Float64Array.from(values, (_, i) => i),
  value: Float64Array.from(values),
  columnName: 'v',
  unit: 'm/s',
  unitBecause: '',
  step: 0.1,
  intervalS: 1,
});

describe('a log that changes fast', () => {
  it('is one whose lag counts: a launch, not a coast-down, nor the steps of whole km/h', () => {
    expect(isSteep(logged([0, 1, 3, 5, 7, 9]))).toBe(true);
    expect(isSteep(logged([30, 29.5, 29, 28.5, 28, 27.5]))).toBe(false);
    expect(isSteep(logged([25, 25.3, 25, 25, 25.3, 25.3]))).toBe(false);
  });

  it.each([
    [0, []],
    [0.45, []],
    [0.9, []],
    [0.45, [3.4]],
    // Lines that are not where the shudder is: a place is worth little beside a line that stands out.
    [0.45, [2.9, 4]],
  ])('is shifted by its lag of %s s, and gives the speed between its steps (lines: %s a meter)', (lagS, lines) => {
    const shudder = { turnsPerM: 3.4, amplitude: 0.5, fromMps: 2, toMps: 7.5 };
    const part = cutRecording(launch(shudder, lagS), [{ fromS: timeOf(1.5), toS: timeOf(8) }], 2);
    const prepared = prepare(part);
    const aligned = alignLog(prepared, part.roadSpeedMps!, lines)!;
    expect(Math.abs(aligned.lagS! - lagS)).toBeLessThan(0.16);
    // Mean over the part: half way between its ends. Half a step of 1 km/h, and a tenth of a second: 0.14 + 0.16 m/s.
    expect(Math.abs(aligned.mean - 4.75)).toBeLessThan(0.3);
    for (const mps of [3, 4.5, 6]) {
      const t = timeOf(mps);
      expect(Math.abs(aligned.mean * relativeSpeedAt(aligned.track, t) - speedAt(t))).toBeLessThan(0.3);
    }
  });

  it('that ends early, or lies elsewhere on the clock, is left alone, and so is that of a long drive', () => {
    const recording = launch(null);
    const { roadSpeedMps } = recording;
    const log = roadSpeedMps!;
    const early = { ...log, timeS: log.timeS.slice(0, 6), value: log.value.slice(0, 6) };
    const elsewhere = { ...log, timeS: log.timeS.map((t) => t + 1000) };
    const prepared = prepare(recording);
    expect(alignLog(prepared, early)).toBeNull();
    expect(alignLog(prepared, elsewhere)).toBeNull();
    const far = { ...prepared, pieces: [...prepared.pieces, { ...prepared.pieces[0]!, startS: 900_000 }] };
    expect(alignLog(far, log)).toBeNull();
  });

  it('of three values is left alone', () => {
    const recording = launch(null);
    const few = { ...recording.roadSpeedMps!, timeS: Float64Array.of(0, 5, 9), value: Float64Array.of(0, 4, 10) };
    expect(alignLog(prepare(recording), few)).toBeNull();
  });
});
