import { describe, expect, it } from 'vitest';
import { cutRecording } from '../../../src/core/reading/cut-recording.ts';
import type { Recording, Segment, Track } from '../../../src/core/reading/recording.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';

const RATE = 100;
/** A sample tells the time it was taken at. */
const clock = (fromS: number, count: number): Float64Array =>
  Float64Array.from({ length: count }, (_, i) => fromS + i / RATE);
const speed = (timeS: readonly number[]): Track => ({
  timeS: Float64Array.from(timeS),
  value: Float64Array.from(timeS, (t) => 10 + t),
  columnName: 'v',
  unit: 'm/s',
  unitBecause: '',
  step: 1,
  intervalS: 1,
});
const whole = plainRecording([clock(0, 1000), clock(0, 1000)], RATE, speed([0, 1, 2, 3, 4, 5, 6, 7, 8, 9]));
const timesOf = ({ startS, timeS, accelerationMps2 }: Segment): readonly number[] =>
  Array.from(accelerationMps2[0]!, (_, i) => startS + (timeS ? timeS[i]! : i / RATE));

/** Every sample of every piece stands at the time it was taken at. */
const expectInPlace = (recording: Recording): void => {
  for (const segment of recording.segments)
    timesOf(segment).forEach((t, i) => expect(segment.accelerationMps2[0]![i]).toBeCloseTo(t, 9));
};

describe('a part of a recording', () => {
  it('keeps its samples where they were on the clock, and the speeds logged meanwhile', () => {
    const cut = cutRecording(whole, [{ fromS: 2.5, toS: 6 }]);
    expect(cut.segments).toHaveLength(1);
    expect(cut.segments[0]!.startS).toBeCloseTo(2.5, 12);
    expect(cut.durationS).toBeCloseTo(3.5, 12);
    expectInPlace(cut);
    expect([...cut.roadSpeedMps!.timeS]).toEqual([3, 4, 5, 6]);
    expect([...cut.roadSpeedMps!.value]).toEqual([13, 14, 15, 16]);
    expect(cut.segments[0]!.accelerationMps2[1]).toHaveLength(350);
  });

  it('of several spans has a piece for each, and none where nothing was recorded', () => {
    const gap: Recording = {
      ...whole,
      segments: [
        { startS: 0, timeS: null, accelerationMps2: [clock(0, 300)] },
        { startS: 5, timeS: null, accelerationMps2: [clock(5, 500)] },
      ],
    };
    const cut = cutRecording(gap, [
      { fromS: 1, toS: 2 },
      { fromS: 2.5, toS: 5.5 },
      { fromS: 20, toS: 30 },
    ]);
    expect(cut.segments.map((s) => [s.startS, s.accelerationMps2[0]!.length])).toEqual([
      [1, 100],
      [2.5, 50],
      [5, 50],
    ]);
    expect(cut.durationS).toBeCloseTo(2, 12);
    expectInPlace(cut);
  });

  it('keeps uneven sample times, counted from its own first sample', () => {
    const timeS = Float64Array.of(0, 0.01, 0.025, 0.03, 0.047, 0.05);
    const uneven: Recording = {
      ...whole,
      segments: [{ startS: 4, timeS, accelerationMps2: [timeS.map((t) => 4 + t)] }],
    };
    const cut = cutRecording(uneven, [{ fromS: 4.02, toS: 4.05 }]);
    expect(cut.segments[0]!.startS).toBeCloseTo(4.025, 12);
    expect(Array.from(cut.segments[0]!.timeS!, (t) => Number(t.toFixed(6)))).toEqual([0, 0.005, 0.022]);
    expectInPlace(cut);
  });
});
