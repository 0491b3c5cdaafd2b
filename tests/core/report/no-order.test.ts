import { describe, expect, it } from 'vitest';
import { analyse } from '../../../src/core/analyse.ts';
import { plainRecording } from '../../accuracy/plain-recording.ts';
import { normals } from '../signal/made.ts';
import { madeJob } from '../../support/made-job.ts';
import { must } from '../../support/must.ts';

const RATE_HZ = 250;
/** 3.05 times the outer diameter of P235/75R15, 733.5 mm, at 60 mph. */
const WHEEL_HZ = 26.8224 / (3.05 * 0.7335);
const ENGINE_HZ = 3.55 * 0.75 * WHEEL_HZ;

const JOB = madeJob(
  { tire: { kind: 'size', size: 'P235/75R15' }, layout: 'rear-drive', axleRatio: 3.55, cylinders: 8 },
  { speedMps: 26.8224, speedSource: 'gps', gearRatio: 0.75, load: 'cruise' },
);

const reportOf = (sampleAt: (timeS: number) => number) => {
  const samples = Float64Array.from({ length: 60 * RATE_HZ }, (_, i) => sampleAt(i / RATE_HZ));
  return must(analyse(JOB, [plainRecording([samples], RATE_HZ)])).report;
};

/** Noise through one degree of freedom, damped by 1 % of critical (the usual difference equation), sample by sample. */
const resonance = (hz: number, rmsMps2: number, normal: () => number): (() => number) => {
  const omega = (2 * Math.PI * hz) / RATE_HZ;
  const radius = Math.exp(-0.01 * omega);
  const [a1, a2] = [2 * radius * Math.cos(omega), -(radius ** 2)];
  const rms = Math.sqrt((1 - a2) / ((1 + a2) * ((1 - a2) ** 2 - a1 ** 2)));
  let [before, last] = [0, 0];
  return () => {
    [before, last] = [last, a1 * last + a2 * before + normal()];
    return (rmsMps2 / rms) * last;
  };
};

describe('what is felt and is no order of a listed part', () => {
  it('is named as a hump where it is a resonance that the road shakes', () => {
    // 0.12 m/s² rms at 27.5 Hz: as felt as a tone of 0.17 m/s², some five times the threshold of 0.015 m/s² by Wk (0.5 at
    // 27.5 Hz, ISO 2631-1, Table 3).
    const normal = normals(21);
    const shaken = resonance(27.5, 0.12, normal);
    const { verdict, sentence } = reportOf(
      (t) => shaken() + 0.01 * Math.cos(2 * Math.PI * WHEEL_HZ * t) + 0.02 * normal(),
    );
    expect(verdict).toBe('nothing-felt');
    expect(sentence).toMatch(
      /^No order here that a person would feel\..* What is felt is a hump at 2[678]\.\d Hz, (four|five|six) times .*no order/u,
    );
  });

  it('is left open where the hump stands at the place of an order: a speed that wandered spreads one so', () => {
    // Tire 1× is expected at 12.0 Hz; 0.1 m/s² rms is felt there more than ten times over.
    const normal = normals(23);
    const shaken = resonance(WHEEL_HZ, 0.1, normal);
    const { verdict, sentence, why } = reportOf(() => shaken() + 0.02 * normal());
    expect(verdict).toBe('cannot-tell');
    expect(sentence).toMatch(/what is felt is a hump at 1[12]\.\d Hz, where tire 1× is expected/u);
    expect(why).toContain('an order moves with it, a resonance stays');
  });

  it('is held against engine speed where it moves with it: a pulley of that ratio', () => {
    const normal = normals(22);
    // The speed swings slowly by half a percent; the phase is its integral.
    const turned = (t: number): number => t - 0.005 * 6 * Math.cos(t / 6);
    const order = (hz: number, t: number): number => Math.cos(2 * Math.PI * hz * turned(t));
    const { verdict, why } = reportOf(
      (t) =>
        0.15 * order(1.7 * ENGINE_HZ, t) +
        0.01 * order(WHEEL_HZ, t) +
        0.02 * order(3.55 * WHEEL_HZ, t) +
        0.01 * order(ENGINE_HZ, t) +
        0.03 * normal(),
    );
    expect(verdict).toBe('cannot-tell');
    expect(why).toContain('1.70 times engine speed: look for an accessory with a pulley of that ratio');
  });
});
