import { describe, expect, it } from 'vitest';
import fc from 'fast-check';
import { ticks as d3Ticks } from 'd3';
import { decadeTicks, decimate, linearScale, linearTicks, logScale } from '../../../src/core/report/chart-geometry.ts';

describe('chart geometry', () => {
  it('places values on linear and logarithmic scales', () => {
    expect(linearScale([0, 120], [40, 640]).place(60)).toBe(340);
    const log = logScale([0.1, 10], [200, 0]);
    expect(log.place(1)).toBeCloseTo(100, 10);
    expect(log.place(0)).toBe(200);
  });

  // d3-array's ticks is the outside reference for round tick values.
  it('chooses ticks at 1, 2 or 5 times a power of ten, as d3 does for the same step', () => {
    expect(linearTicks(0, 120, 6)).toEqual(d3Ticks(0, 120, 6));
    expect(linearTicks(0, 1, 5)).toEqual(d3Ticks(0, 1, 5));
    expect(decadeTicks(0.02, 12)).toEqual([0.1, 1, 10]);
  });

  it('keeps every extreme of a trace when it is reduced to pixels', () => {
    fc.assert(
      fc.property(
        fc.array(fc.double({ min: 0, max: 1e3, noNaN: true }), { minLength: 500, maxLength: 3000 }),
        (values) => {
          const points = decimate(values, 1, [0, values.length - 1], 100);
          const kept = points.map(([, level]) => level);
          expect(Math.max(...kept)).toBe(Math.max(...values));
          expect(Math.min(...kept)).toBe(Math.min(...values));
          expect(points.length).toBeLessThanOrEqual(Math.max(200, values.length < 200 ? values.length : 200));
          for (let i = 1; i < points.length; i += 1) expect(points[i]![0]).toBeGreaterThan(points[i - 1]![0]);
        },
      ),
      { numRuns: 30 },
    );
  });
});
