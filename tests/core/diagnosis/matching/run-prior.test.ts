import { describe, expect, it } from 'vitest';
import { runPrior } from '../../../../src/core/diagnosis/matching/run-prior.ts';
import { gearTie, type ScaleTie } from '../../../../src/core/diagnosis/origins/scale-prior.ts';
import { expectedLines } from '../../../../src/core/vehicle/expected-lines.ts';
import type { RunCondition, Vehicle } from '../../../../src/core/vehicle/vehicle.ts';
import { must } from '../../../support/must.ts';

const VEHICLE: Vehicle = {
  tire: { kind: 'size', size: 'P235/75R15' },
  layout: 'rear-drive',
  axleRatio: 3.55,
  cylinders: 8,
};

/** Trapezoid sum of a tie's density over all it allows, in steps far finer than its narrowest part (5e-4). */
const massOf = ({ from, to, logDensity }: ScaleTie): number => {
  const steps = 200_000;
  const step = (to - from) / steps;
  let sum = 0;
  for (let i = 0; i <= steps; i++) sum += (i === 0 || i === steps ? 0.5 : 1) * Math.exp(logDensity(from + i * step));
  return sum * step;
};

const tieOf = (condition: RunCondition): ScaleTie | null => {
  const lines = must(expectedLines(VEHICLE, condition, { samplingRateHz: 400 }));
  return runPrior(VEHICLE, condition, lines, 0).tie;
};

// A probability density sums to one, whatever it says (Kolmogorov's second axiom).
describe('what ties the engine’s scale to the road’s', () => {
  it('is a density: with a converter, without one, slipping, and moving together', () => {
    const converter = gearTie(true);
    for (const tie of [gearTie(false), converter, converter.slipping!, converter.together!])
      expect(massOf(tie)).toBeCloseTo(1, 1);
  });

  it('is a density where engine speed and gear are both stated, agreeing or not', () => {
    for (const engineRpm of [1920, 2400])
      expect(massOf(tieOf({ speedMps: 26.8224, speedSource: 'gps', gearRatio: 0.75, engineRpm })!)).toBeCloseTo(1, 1);
  });

  it('is nothing where only one of them is known', () => {
    expect(tieOf({ speedMps: 26.8224, speedSource: 'gps', engineRpm: 1920 })).toBeNull();
    expect(tieOf({ speedMps: 26.8224, speedSource: 'gps' })).toBeNull();
  });
});
