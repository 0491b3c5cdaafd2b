import { describe, expect, it } from 'vitest';
import reference from '../../reference/simulate.json' with { type: 'json' };
import { USUAL_CORNER, cornerAtRest, cornerResponse, stepCorner } from '../../../src/core/simulate/quarter-car.ts';

const damped = { ...USUAL_CORNER, damperNspm: reference.damper };

describe('one corner of the vehicle', () => {
  it('has the undamped frequencies of the eigenvalue problem, 1.119760 and 11.862649 Hz', () => {
    expect(reference.undampedHz[0]).toBeCloseTo(1.11976, 5);
    expect(reference.undampedHz[1]).toBeCloseTo(11.862649, 5);
    // Let go from a deflected wheel without damper, the wheel crosses zero twice a period of wheel hop.
    const state = { ...cornerAtRest(), unsprungM: 0.01 };
    const stepS = 1e-4;
    let crossings = 0;
    let last = 0;
    let first = 0;
    for (let i = 0; i < 100_000; i++) {
      const before = state.unsprungM;
      stepCorner(state, { ...USUAL_CORNER, damperNspm: 0 }, 0, 0, stepS);
      if (before < 0 !== state.unsprungM < 0) {
        const at = (i + before / (before - state.unsprungM)) * stepS;
        if (crossings === 0) first = at;
        last = at;
        crossings++;
      }
    }
    expect((crossings - 1) / 2 / (last - first)).toBeCloseTo(11.862649, 1);
  });

  it.each(reference.corner)('answers a wheel force at $frequencyHz Hz as the state-space solution does', (point) => {
    const { forcePerN, accelerationPerN } = cornerResponse(damped, point.frequencyHz);
    expect(forcePerN.re).toBeCloseTo(point.forcePerN[0]!, 9);
    expect(forcePerN.im).toBeCloseTo(point.forcePerN[1]!, 9);
    expect(accelerationPerN.re).toBeCloseTo(point.accelerationPerN[0]!, 9);
    expect(accelerationPerN.im).toBeCloseTo(point.accelerationPerN[1]!, 9);
  });

  it('moves step by step as its response says', () => {
    const rate = 2000;
    const f = 12;
    const state = cornerAtRest();
    let re = 0;
    let im = 0;
    const settle = 3 * rate;
    const count = 5 * rate;
    for (let i = 0; i < settle + count; i++) {
      const angle = (2 * Math.PI * f * i) / rate;
      stepCorner(state, damped, 0, 100 * Math.cos(angle), 1 / rate);
      if (i >= settle) {
        re += (2 / count) * state.forceN * Math.cos(angle);
        im -= (2 / count) * state.forceN * Math.sin(angle);
      }
    }
    const expected = cornerResponse(damped, f).forcePerN;
    expect(Math.hypot(re, im) / 100).toBeCloseTo(Math.hypot(expected.re, expected.im), 1);
  });

  it('lifts the body with the road over long waves', () => {
    const state = cornerAtRest();
    for (let i = 0; i < 20_000; i++) stepCorner(state, damped, 0.05, 0, 1 / 2000);
    expect(state.sprungM).toBeCloseTo(0.05, 4);
  });
});
