import { describe, expect, it } from 'vitest';
import { readRecording } from '../../src/core/reading/read-recording.ts';
import { levelCheck } from '../../src/app/record/level-check.ts';
import type { MotionSample } from '../../src/app/record/recording-buffer.ts';
import { measuredRateHz, RecordingBuffer } from '../../src/app/record/recording-buffer.ts';
import { recordingCsv, stampOf } from '../../src/app/record/recording-csv.ts';
import { sampleOf, sensorObstacle } from '../../src/app/record/sensors.ts';
import { must } from '../support/must.ts';

/** A device lying flat, shaken up and down at 12 Hz; stamps as a browser gives them, from some time on. */
const shaken = (seconds: number, rateHz = 60): MotionSample[] =>
  Array.from({ length: seconds * rateHz + 1 }, (_, index) => {
    const timeMs = 51_234.5 + (1000 * index) / rateHz;
    return { timeMs, x: 0.02, y: -0.1, z: 9.8 + 0.5 * Math.sin((2 * Math.PI * 12 * timeMs) / 1000) };
  });

const still = (x: number, y: number, z: number): MotionSample[] =>
  Array.from({ length: 60 }, (_, index) => ({ timeMs: index * 16, x, y, z }));

describe('the recording as CSV', () => {
  it('is read back with the same rate, samples, unit and speeds', async () => {
    const samples = shaken(30);
    const speeds = Array.from({ length: 30 }, (_, second) => ({
      timeMs: 51_234.5 + 1000 * second + 300,
      speedMps: 20 + 0.25 * second,
    }));
    const bytes = new TextEncoder().encode(recordingCsv(samples, speeds));
    const read = must(await readRecording({ name: 'recording.csv', bytes }, {}));
    const { samplingRateHz, channels, segments, gravity, roadSpeedMps } = read;
    expect(samplingRateHz).toBeCloseTo(60, 2);
    expect(channels.map(({ axis, unit }) => [axis, unit])).toEqual([
      ['x', 'm/s²'],
      ['y', 'm/s²'],
      ['z', 'm/s²'],
    ]);
    expect(segments).toHaveLength(1);
    const z = segments[0]?.accelerationMps2[2];
    expect(z).toHaveLength(samples.length);
    samples.forEach((sample, index) => expect(z?.[index]).toBeCloseTo(sample.z, 4));
    expect(gravity?.mps2).toBeCloseTo(9.8, 1);
    expect([...(roadSpeedMps?.value ?? [])]).toEqual(speeds.map(({ speedMps }) => speedMps));
    roadSpeedMps?.timeS.forEach((timeS, index) => expect(Math.abs(timeS - (index + 0.3))).toBeLessThan(0.02));
  });

  it('has no speed column where no speed came, and keeps the last of several in one row', () => {
    const samples = shaken(1).slice(0, 3);
    expect(recordingCsv(samples, []).split('\n')[0]).toBe('time_s,accel_x_mps2,accel_y_mps2,accel_z_mps2');
    const timeMs = samples[1]?.timeMs ?? 0;
    const rows = recordingCsv(samples, [
      { timeMs: timeMs - 2, speedMps: 10 },
      { timeMs: timeMs - 1, speedMps: 11 },
    ]).split('\n');
    expect(rows[1]?.endsWith(',')).toBe(true);
    expect(rows[2]?.endsWith(',11.00')).toBe(true);
    expect(rows[3]?.endsWith(',')).toBe(true);
  });

  it('is named by the moment it was made', () => {
    expect(stampOf(new Date(2026, 2, 5, 14, 15, 2).getTime())).toBe('2026-03-05-141502');
  });
});

describe('the samples as they come', () => {
  it('give the rate, though their stamps are whole milliseconds', () => {
    const rounded = shaken(4).map((sample) => ({ ...sample, timeMs: Math.round(sample.timeMs) }));
    expect(measuredRateHz(rounded)).toBeCloseTo(60, 0);
    expect(measuredRateHz(rounded.slice(0, 5))).toBeNull();
  });

  it('count a gap, and leave out a sample that does not move the clock', () => {
    const buffer = new RecordingBuffer();
    const samples = shaken(3);
    samples.filter((_, index) => index < 60 || index > 80).forEach((sample) => buffer.add(sample));
    const last = samples.at(-1);
    if (last) buffer.add({ ...last, z: 0 });
    expect(buffer.gaps).toBe(1);
    expect(buffer.samples).toHaveLength(160);
    expect(buffer.durationS).toBeCloseTo(3, 6);
  });

  it('keep only speeds that are speeds', () => {
    const buffer = new RecordingBuffer();
    [NaN, -1, 12].forEach((speedMps) => buffer.addSpeed({ timeMs: 0, speedMps }));
    expect(buffer.speeds.map(({ speedMps }) => speedMps)).toEqual([12]);
  });
});

describe('the level check', () => {
  it('tells level from tilted, whichever side is up', () => {
    expect(levelCheck(still(0, 0, -9.81)).state).toBe('level');
    expect(levelCheck(still(0, 9.81, 0)).state).toBe('level');
    const tilted = levelCheck(still(0, 9.81 * Math.sin(Math.PI / 9), 9.81 * Math.cos(Math.PI / 9)));
    expect(tilted.state).toBe('tilted');
    expect(tilted.tiltDeg).toBeCloseTo(20, 6);
  });

  it('says when the device is moved, when gravity is missing and when nothing has come yet', () => {
    const moved = still(0, 0, 9.81).map((sample, index) => ({ ...sample, x: index % 2 ? 6 : -6 }));
    expect(levelCheck(moved).state).toBe('moving');
    expect(levelCheck(still(0, 0, 0.1)).state).toBe('no-gravity');
    expect(levelCheck(still(0, 0, 9.81).slice(0, 4)).state).toBe('waiting');
    // A rough road is not a hand.
    expect(levelCheck(shaken(1)).state).toBe('level');
  });
});

describe('the sensor', () => {
  it('is missing where the page is not safe or the browser has none', () => {
    expect(sensorObstacle({ isSecureContext: false })).toBe('not-secure');
    expect(sensorObstacle({ isSecureContext: true })).toBe('no-sensor');
    expect(
      sensorObstacle({ isSecureContext: true, DeviceMotionEvent: class {} } as { isSecureContext: boolean }),
    ).toBeNull();
  });

  it('gives no sample where a desktop computer sends an empty event', () => {
    const event = (value: unknown): DeviceMotionEvent =>
      ({ accelerationIncludingGravity: value, timeStamp: 7 }) as DeviceMotionEvent;
    expect(sampleOf(event(null))).toBeNull();
    expect(sampleOf(event({ x: null, y: null, z: null }))).toBeNull();
    expect(sampleOf(event({ x: 1, y: 2, z: 3 }))).toEqual({ timeMs: 7, x: 1, y: 2, z: 3 });
  });
});
