import { describe, expect, it } from 'vitest';
import { sensorMoved } from '../../../../src/core/diagnosis/observing/sensor-moved.ts';
import type { Recording } from '../../../../src/core/reading/recording.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';

const RATE_HZ = 100;

/** Gravity 9.81 m/s² turned from z towards x by so many degrees at a time, and a shake along z. */
const recordingOf = (turnedDeg: (atS: number) => number, gravityMps2 = 9.81): Recording => {
  const sample = (share: (deg: number) => number) =>
    Float64Array.from({ length: 40 * RATE_HZ }, (_, i) => gravityMps2 * share(turnedDeg(i / RATE_HZ)));
  const radians = (deg: number): number => (deg * Math.PI) / 180;
  const z = sample((deg) => Math.cos(radians(deg)));
  return plainRecording(
    [sample((deg) => Math.sin(radians(deg))), sample(() => 0), z.map((a, i) => a + 0.5 * Math.cos(i))],
    RATE_HZ,
  );
};

describe('a sensor that came loose', () => {
  it('is told by gravity, which points elsewhere at the end', () => {
    expect(sensorMoved(recordingOf((t) => (t < 20 ? 0 : 90)))?.text).toContain('turned by 90°');
    expect(sensorMoved(recordingOf((t) => (t < 20 ? 0 : 30)))?.code).toBe('sensor-moved');
  });

  it('is not told of hills, of a hard stop, of one that came back, nor where gravity is not in the recording', () => {
    expect(sensorMoved(recordingOf((t) => (t < 20 ? 0 : 6)))).toBeNull();
    // 0.4 g over the whole last fifth: arctan 0.4 = 21.8°.
    expect(sensorMoved(recordingOf((t) => (t < 32 ? 0 : 21.8)))).toBeNull();
    expect(sensorMoved(recordingOf((t) => (t > 15 && t < 25 ? 90 : 0)))).toBeNull();
    expect(sensorMoved(recordingOf((t) => (t < 20 ? 0 : 90), 0.3))).toBeNull();
  });

  it('is not told of one axis', () => {
    const { segments, ...rest } = recordingOf((t) => (t < 20 ? 0 : 90));
    const one = { ...rest, channels: rest.channels.slice(2), segments };
    expect(sensorMoved(one)).toBeNull();
  });
});
