import { describe, expect, it } from 'vitest';
import reference from '../../reference/simulate.json' with { type: 'json' };
import { size } from '../../../src/core/complex.ts';
import { accelerationFilter, filterResponse, mountFilter, runningFilter } from '../../../src/core/simulate/modes.ts';

const resonance = { frequencyHz: 25, damping: 0.04 };

describe('resonances as filters', () => {
  it('rise to 1/(2ζ) at the resonance and pass one times the force well above it', () => {
    const filter = accelerationFilter(resonance, 4000);
    expect(size(filterResponse(filter, 25, 4000))).toBeCloseTo(1 / 0.08, 6);
    expect(size(filterResponse(filter, 900, 4000))).toBeCloseTo(1, 2);
    expect(size(filterResponse(filter, 2.5, 4000))).toBeCloseTo(0.01 / 0.99, 3);
  });

  it('let a soft mount pass below its resonance and hold back above it as 1/(r²−1)', () => {
    const filter = mountFilter({ frequencyHz: 10, damping: 0.001 }, 4000);
    expect(size(filterResponse(filter, 0.1, 4000))).toBeCloseTo(1, 3);
    expect(size(filterResponse(filter, 40, 4000))).toBeCloseTo(1 / 15, 3);
  });

  it('run in time as their response says', () => {
    const filter = accelerationFilter(resonance, 1000);
    const run = runningFilter(filter);
    let re = 0;
    let im = 0;
    for (let i = 0; i < 6000; i++) {
      const angle = (2 * Math.PI * 22 * i) / 1000;
      const y = run(Math.cos(angle));
      if (i >= 2000) {
        re += (2 / 4000) * y * Math.cos(angle);
        im -= (2 / 4000) * y * Math.sin(angle);
      }
    }
    const expected = filterResponse(filter, 22, 1000);
    expect(re).toBeCloseTo(expected.re, 3);
    expect(im).toBeCloseTo(expected.im, 3);
  });

  it('make the four-pole Butterworth filter of two stages', () => {
    reference.butterworth.frequencyHz.forEach((f, i) => {
      const stages = [0.92388, 0.38268].map((damping) =>
        size(filterResponse(mountFilter({ frequencyHz: 40, damping }, 16_000), f, 16_000)),
      );
      expect(stages[0]! * stages[1]!).toBeCloseTo(reference.butterworth.magnitude[i]!, 3);
    });
  });
});
