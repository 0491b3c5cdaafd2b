import { describe, expect, it } from 'vitest';
import { isCountedTwice } from '../../../../src/core/diagnosis/observing/counted-twice.ts';
import { observeRun } from '../../../../src/core/diagnosis/observing/observe-run.ts';
import type { Peak } from '../../../../src/core/signal/peaks/peak.ts';
import type { Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { normals, preparedOf } from '../../signal/made.ts';

const RATE = 400;
const SECONDS = 30;
const LINE_HZ = 85;
/** The speed lingers a little over its mean for most of the run, and dips twice. */
const relative = (t: number): number => 1.002 - 0.01 * Math.exp(-(((t % 15) - 7.5) ** 2) / 2.5);

const turned = (): Float64Array => {
  let turns = 0;
  return Float64Array.from({ length: SECONDS * RATE }, (_, i) => (turns += relative(i / RATE) / RATE));
};
const made = (extra: (t: number) => number) => {
  const normal = normals(5);
  return turned().map((turns, i) => 0.5 * Math.cos(2 * Math.PI * LINE_HZ * turns) + extra(i / RATE) + 0.05 * normal());
};
const timeS = Float64Array.from({ length: 10 * SECONDS }, (_, i) => i / 10);
const track = { timeS, relative: timeS.map(relative) };
const peakAt = (frequencyHz: number, amplitudeMps2: number): Peak => ({ frequencyHz, amplitudeMps2 }) as Peak;

describe('a line that lingers on its way', () => {
  const where = peakAt(LINE_HZ * 1.002, 0.4);
  const line = peakAt(LINE_HZ, 0.5);

  it('holds no more power than its own: what stands still where it lingered is that line', () => {
    expect(isCountedTwice(where, line, preparedOf([made(() => 0)], RATE), track)).toBe(true);
  });

  it('beats with a second one that is there, and the two hold the power of both', () => {
    const both = made((t) => 0.4 * Math.cos(2 * Math.PI * where.frequencyHz * t + 1));
    expect(isCountedTwice(where, line, preparedOf([both], RATE), track)).toBe(false);
    // Further off the blocks hear nothing of it.
    expect(isCountedTwice(peakAt(LINE_HZ + 0.5, 0.4), line, preparedOf([both], RATE), track)).toBe(false);
  });

  it('is one tone of the run', () => {
    const vehicle: Vehicle = { tire: { kind: 'size', size: '265/70R17' }, layout: 'rear-drive', axleRatio: 3.73 };
    const axes = [made(() => 0.02)];
    const run = observeRun(vehicle, { speedMps: 27.9, speedSource: 'gps' }, plainRecording(axes, RATE), 'run');
    expect(run.histories.count).toBeGreaterThan(0);
    expect(run.tones.filter(({ peak }) => Math.abs(peak.frequencyHz - LINE_HZ) < 0.5)).toHaveLength(1);
  });
});
