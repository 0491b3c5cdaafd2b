import { describe, expect, it } from 'vitest';
import { logSpeed } from '../../../src/core/simulate/logger.ts';
import { programMeanMps, rampSpeed, speedHistory } from '../../../src/core/simulate/motion.ts';
import { randomSource } from '../../../src/core/simulate/random.ts';
import { statedSpeedMps } from '../../support/stated-speed.ts';

describe('how speed runs', () => {
  it('starts and ends every ramp where it should, without turning back', () => {
    for (const shape of ['linear', 'coast', 'pull', 'ease', 'stages'] as const) {
      expect(rampSpeed(shape, 30, 18, 0)).toBeCloseTo(30, 9);
      expect(rampSpeed(shape, 30, 18, 1)).toBeCloseTo(18, 9);
      for (let u = 0; u < 1; u += 0.01)
        expect(rampSpeed(shape, 30, 18, u)).toBeGreaterThanOrEqual(rampSpeed(shape, 30, 18, u + 0.01));
    }
  });

  it('coasts with a drag of rolling and air, equal at 20 m/s', () => {
    const slope = (u: number): number =>
      (rampSpeed('coast', 32, 12, u + 1e-5) - rampSpeed('coast', 32, 12, u - 1e-5)) / 2e-5;
    const drag = (u: number): number => 1 + (rampSpeed('coast', 32, 12, u) / 20) ** 2;
    expect(slope(0.1) / drag(0.1)).toBeCloseTo(slope(0.9) / drag(0.9), 4);
  });

  it('pulls with even power: speed squared grows evenly', () => {
    const square = (u: number): number => rampSpeed('pull', 15, 25, u) ** 2;
    expect(square(0.5)).toBeCloseTo((square(0) + square(1)) / 2, 9);
  });

  it('drifts by the stated share about the speed the driver holds', () => {
    const program = { kind: 'steady', meanMps: 25, driftSd: 0.01, driftTimeS: 5 } as const;
    const speed = speedHistory(program, 600 * 100, 0.01, randomSource(2, 'speed'));
    const mean = speed.reduce((a, b) => a + b, 0) / speed.length;
    const sd = Math.sqrt(speed.reduce((a, b) => a + (b - mean) ** 2, 0) / speed.length);
    expect(mean).toBeCloseTo(25, 2);
    expect(sd / 25).toBeGreaterThan(0.008);
    expect(sd / 25).toBeLessThan(0.012);
    // Smooth: from one hundredth of a second to the next nearly nothing.
    for (let i = 1; i < speed.length; i++) expect(Math.abs(speed[i]! - speed[i - 1]!)).toBeLessThan(0.01);
    expect(
      programMeanMps({ kind: 'ramp', fromMps: 10, toMps: 30, shape: 'linear', driftSd: 0, driftTimeS: 1 }),
    ).toBeCloseTo(20, 6);
  });

  it('logs speed once a second in whole km/h, late by the lag', () => {
    const how = { rateHz: 1, step: 1, unit: 'km/h', lagS: 0.8, factor: 1, noiseMps: 0 } as const;
    const log = logSpeed(how, 30, (t) => 10 + t, randomSource(1, 'log'));
    for (let i = 1; i < log.timeS.length; i++) {
      expect(Number.isInteger(log.value[i]!)).toBe(true);
      expect(Math.abs(log.value[i]! - 3.6 * (10 + Math.max(0, log.timeS[i]! - 0.8)))).toBeLessThanOrEqual(0.5 + 1e-9);
    }
    expect(log.timeS[5]! - log.timeS[4]!).toBeCloseTo(1, 9);
  });

  it('lets a dial read high within UN R39 and to the nearest 5 mph, and the diagnostic socket in whole km/h', () => {
    const random = randomSource(9, 'stated');
    for (let i = 0; i < 500; i++) {
      const v = random.between(15, 35);
      const dial = statedSpeedMps(v, 'dial', random) / 0.44704;
      expect(Math.abs(dial / 5 - Math.round(dial / 5))).toBeLessThan(1e-9);
      expect(dial * 0.44704).toBeGreaterThan(v - 2.5 * 0.44704 - 1e-9);
      expect(dial * 0.44704).toBeLessThan(1.1 * v + 4 / 3.6 + 2.5 * 0.44704);
      const obd = statedSpeedMps(v, 'obd', random) * 3.6;
      expect(Math.abs(obd - Math.round(obd))).toBeLessThan(1e-9);
    }
  });
});
