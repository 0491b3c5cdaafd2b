/** A line above half the rate, taken at uneven instants: made samples whose truth is known. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';
import { normals } from '../../signal/made.ts';

const RATE_HZ = 100;
const LEVEL = 0.5;
/** 3.05 times the outer diameter of 205/55R16, 631.9 mm, is 1.9273 m: of it 25 m/s, an axle of 3.07, twice a turn. */
const TWICE_HZ = (2 * 3.07 * 25) / 1.927295;

const JOB = madeJob(
  { tire: { kind: 'size', size: '205/55R16' }, layout: 'rear-drive', axleRatio: 3.07, cylinders: 6 },
  { speedMps: 25, speedSource: 'gps', gearRatio: 0.74, load: 'cruise' },
);

/**
 * The first finding for one minute of a line.
 * @param wander relative, of the speed that the line follows
 * @param jitterS standard deviation of the sampling instants
 */
const foundOf = (lineHz: number, wander: number, jitterS = 1e-3) => {
  const normal = normals(11);
  const timeS = Float64Array.from({ length: 60 * RATE_HZ }, (_, i) => (i === 0 ? 0 : i / RATE_HZ + jitterS * normal()));
  const turned = (t: number): number => t + (wander / 0.3) * (1 - Math.cos(0.3 * t));
  const samples = timeS.map((t) => LEVEL * Math.cos(2 * Math.PI * lineHz * turned(t)) + 0.05 * normal());
  const even = plainRecording([samples], RATE_HZ);
  const [segment] = even.segments;
  const recording = { ...even, segments: [{ ...segment!, timeS }] };
  return must(analyse(JOB, [recording])).report.findings[0]!;
};

describe('an image taken at uneven instants', () => {
  // By exp(−½(2π·100 Hz·σ)²) as little as 0.64 of it would show, were the samples not evened out.
  it.each([3e-4, 1e-3, 1.5e-3])('is told by them, and has the level of its line, off by %f s', (jitterS) => {
    const found = foundOf(TWICE_HZ, 0.001, jitterS);
    expect(found.label).toBe('driveshaft 2×');
    expect(Math.abs(found.frequencyHz - TWICE_HZ)).toBeLessThan(0.02);
    expect(Math.abs(found.amplitudeMps2 / LEVEL - 1)).toBeLessThan(0.04);
    expect(found.for.join(' ')).toContain('Taken at uneven instants, the samples fit 79.6 Hz better than 20.4 Hz.');
  });

  it('is not made of a tone that truly stands where the image would show', () => {
    const found = foundOf(RATE_HZ - TWICE_HZ, 0);
    expect(found.label).not.toBe('driveshaft 2×');
    expect(Math.abs(found.frequencyHz - (RATE_HZ - TWICE_HZ))).toBeLessThan(0.02);
    expect(Math.abs(found.amplitudeMps2 / LEVEL - 1)).toBeLessThan(0.03);
  });
});
