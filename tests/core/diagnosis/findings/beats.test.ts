import { describe, expect, it } from 'vitest';
import { analyse } from '../../../../src/core/analyse.ts';
import { plainRecording } from '../../../accuracy/plain-recording.ts';
import { normals } from '../../signal/made.ts';
import { madeJob } from '../../../support/made-job.ts';
import { must } from '../../../support/must.ts';

const RATE_HZ = 200;
/** 3.05 times the outer diameter of 205/55R16, 631.9 mm. */
const WHEEL_HZ = 25 / 1.927295;

const JOB = madeJob(
  { tire: { kind: 'size', size: '205/55R16' }, layout: 'front-drive', finalDrive: 3.94, cylinders: 4 },
  { speedMps: 25, speedSource: 'gps', gearRatio: 0.74, load: 'cruise' },
);

/** Tones that all follow one speed, which wanders by ±1 %, in noise. */
const basesOf = (tones: readonly { readonly hz: number; readonly amplitude: number }[]) => {
  const normal = normals(5);
  const samples = Float64Array.from({ length: 60 * RATE_HZ }, (_, i) => {
    const t = i / RATE_HZ;
    // The integral of 1 + 0.01·sin(0.3·t).
    const turned = t + (0.01 / 0.3) * (1 - Math.cos(0.3 * t));
    return tones.reduce(
      (sum, { hz, amplitude }) => sum + amplitude * Math.cos(2 * Math.PI * hz * turned),
      0.03 * normal(),
    );
  });
  return must(analyse(JOB, [plainRecording([samples], RATE_HZ)])).bases;
};

describe('a level that pulsates slowly', () => {
  it('is told of two wheels 0.6 % apart, which beat', () => {
    const [first] = basesOf([
      { hz: WHEEL_HZ, amplitude: 0.15 },
      { hz: 1.006 * WHEEL_HZ, amplitude: 0.12 },
      { hz: 3 * 0.74 * WHEEL_HZ, amplitude: 0.02 },
    ]);
    expect(first).toMatchObject({ label: 'tire 1×', beats: true });
  });

  it('is not told of one wheel', () => {
    const [first] = basesOf([
      { hz: WHEEL_HZ, amplitude: 0.15 },
      { hz: 2 * WHEEL_HZ, amplitude: 0.02 },
    ]);
    expect(first).toMatchObject({ label: 'tire 1×', beats: false });
  });
});
