import { describe, expect, it } from 'vitest';
import { observeRun } from '../../../../src/core/diagnosis/observing/observe-run.ts';
import type { Track } from '../../../../src/core/reading/recording.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { normals } from '../../signal/made.ts';

const RATE = 200;
const SECONDS = 40;
const VEHICLE: Vehicle = { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: 3.55 };

/** Driveshaft 1× and 2× in noise, at 60 mph times a relative speed; its integral over time is given. */
const observed = (turned: (t: number) => number, log?: (t: number) => number) => {
  const normal = normals(9);
  const shaftHz = (3.55 * 26.8224) / (3.05 * 0.7335);
  const samples = Float64Array.from({ length: SECONDS * RATE }, (_, i) => {
    const angle = 2 * Math.PI * shaftHz * turned(i / RATE);
    return 0.3 * Math.cos(angle) + 0.1 * Math.cos(2 * angle + 1) + 0.05 * normal();
  });
  const timeS = Float64Array.from({ length: SECONDS + 1 }, (_, i) => i);
  const track: Track | undefined = log && {
    timeS,
    value: timeS.map((t) => 26.8224 * log(t)),
    columnName: 'v',
    unit: 'm/s',
    unitBecause: '',
    step: 0.1,
    intervalS: 1,
  };
  const condition = { speedMps: 26.8224, speedSource: 'gps' } as const;
  return observeRun(VEHICLE, condition, plainRecording([samples], RATE, track), 'run').speedVaried;
};

describe('how the speed of a run moved', () => {
  it('is steady, a drift or a ramp by what the lines show, and logged where it was logged', () => {
    expect(observed((t) => t)).toBe('steady');
    // 1 + 0.01·sin(0.3·t), integrated.
    expect(observed((t) => t + (0.01 / 0.3) * (1 - Math.cos(0.3 * t)))).toBe('drift');
    // From 0.85 to 1.15 over the whole of it.
    const ramp = (t: number): number => 0.85 * t + (0.3 * t * t) / (2 * SECONDS);
    expect(observed(ramp)).toBe('ramp');
    expect(observed(ramp, (t) => 0.85 + (0.3 * t) / SECONDS)).toBe('logged');
  });
});
