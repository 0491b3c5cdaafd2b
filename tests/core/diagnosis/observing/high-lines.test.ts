import { describe, expect, it } from 'vitest';
import { observeRun } from '../../../../src/core/diagnosis/observing/observe-run.ts';
import { limitAt } from '../../../../src/core/diagnosis/origins/absence.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { normals } from '../../signal/made.ts';

const SECONDS = 40;
const LEVEL = 0.3;
const VEHICLE: Vehicle = { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: 3.55 };
/** 3.05 times the outer diameter of P235/75R15, 733.5 mm, at 60 mph. */
const SHAFT_HZ = (3.55 * 26.8224) / (3.05 * 0.7335);

/** Driveshaft 2× of a speed that drifts by a percent, sampled so that it stands at a share of half the rate. */
const runAt = (share: number) => {
  const rateHz = (4 * SHAFT_HZ) / share;
  const normal = normals(9);
  // 1 + 0.01·sin(0.3·t), integrated.
  const turned = (t: number): number => t + (0.01 / 0.3) * (1 - Math.cos(0.3 * t));
  const samples = Float64Array.from({ length: Math.round(SECONDS * rateHz) }, (_, i) => {
    const angle = 2 * Math.PI * SHAFT_HZ * turned(i / rateHz);
    return 0.1 * Math.cos(angle) + LEVEL * Math.cos(2 * angle + 1) + 0.05 * normal();
  });
  return observeRun(VEHICLE, { speedMps: 26.8224, speedSource: 'gps' }, plainRecording([samples], rateHz), 'run');
};

describe('a line near half the sampling rate, of a speed that drifts', () => {
  // Sampling theorem: all that lies below half the rate is in the samples, with its level.
  it.each([0.85, 0.9, 0.93, 0.95, 0.96])('at %f of it keeps its level to 5 %', (share) => {
    const { tones, histories } = runAt(share);
    expect(histories.count).toBeGreaterThan(0);
    const levels = tones
      .filter(({ peak }) => Math.abs(peak.frequencyHz / (2 * SHAFT_HZ) - 1) < 0.01)
      .map(({ peak }) => peak.amplitudeMps2);
    expect(levels.length).toBe(1);
    expect(Math.abs(levels[0]! / LEVEL - 1)).toBeLessThan(0.05);
  });

  it('counts as not looked for where it came too near', () => {
    const { limit } = runAt(0.985);
    expect(limitAt(limit, 2 * SHAFT_HZ)).toBe(Infinity);
    expect(limitAt(limit, 1.9 * SHAFT_HZ)).toBeLessThan(0.1);
  });
});
