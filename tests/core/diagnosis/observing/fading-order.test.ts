import { describe, expect, it } from 'vitest';
import { observeRun } from '../../../../src/core/diagnosis/observing/observe-run.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { normals } from '../../signal/made.ts';

const RATE = 200;
const SECONDS = 60;
const VEHICLE: Vehicle = { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: 3.55 };
/** 3.05 times the outer diameter of P235/75R15, 733.5 mm, at 60 mph. */
const WHEEL_HZ = 26.8224 / (3.05 * 0.7335);
const FADING_HZ = 27.3;

/** Orders of wheel and shaft that show the drift, and one that fades within 30 s, the speed then 0.5 % above its mean. */
const fadingTones = () => {
  const normal = normals(9);
  // 1 + 0.005·cos(0.1·t), integrated.
  const turned = (t: number): number => t + (0.005 / 0.1) * Math.sin(0.1 * t);
  const samples = Float64Array.from({ length: SECONDS * RATE }, (_, i) => {
    const t = i / RATE;
    const turns = 2 * Math.PI * turned(t);
    const orders = 0.1 * Math.cos(3.55 * WHEEL_HZ * turns) + 0.05 * Math.cos(7.1 * WHEEL_HZ * turns);
    return orders + 0.2 * Math.max(0, 1 - t / 30) * Math.cos(FADING_HZ * turns) + 0.25 * normal();
  });
  const run = observeRun(VEHICLE, { speedMps: 26.8224, speedSource: 'gps' }, plainRecording([samples], RATE), 'run');
  expect(run.histories.count).toBeGreaterThan(0);
  return run.tones.filter(({ peak }) => Math.abs(peak.frequencyHz - FADING_HZ) < 0.5);
};

describe('an order that fades', () => {
  it('is one tone, and leaves no second that stands still where it was while it was loud', () => {
    const tones = fadingTones();
    expect(tones.length).toBe(1);
    // It moves with the speed.
    expect(tones[0]!.motion!.along(0, FADING_HZ)).toBeGreaterThan(tones[0]!.motion!.still + 5);
  });
});
