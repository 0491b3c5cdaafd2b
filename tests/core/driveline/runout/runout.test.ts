import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, angleBetweenDeg, angleDegOf, multiply, polar, size } from '../../../../src/core/complex.ts';
import { forceOfUnbalanceN, permissibleUnbalanceGmm } from '../../../../src/core/driveline/balance/balance-grade.ts';
import { reindexByLevels } from '../../../../src/core/driveline/runout/flange-reindex.ts';
import { evenReadings, fitRunout } from '../../../../src/core/driveline/runout/runout.ts';
import { indexPositions, splitByFlange, splitByTurning } from '../../../../src/core/driveline/runout/runout-index.ts';
import {
  bowUnbalanceGmm,
  endUnbalanceGmm,
  radialForceN,
  tubeUnbalance,
} from '../../../../src/core/driveline/runout/runout-unbalance.ts';
import { must } from '../../../support/must.ts';

/** What a dial shows of an eccentricity (mm at °) and an ovality (mm at °), at even steps. */
const dial = (steps: number, eccentric: readonly [number, number], oval: readonly [number, number], mean = 0.4) =>
  Array.from({ length: steps }, (_, step) => {
    const at = (360 * step) / steps;
    const radians = Math.PI / 180;
    return (
      mean + eccentric[0] * Math.cos((at - eccentric[1]) * radians) + oval[0] * Math.cos(2 * (at - oval[1]) * radians)
    );
  });

describe('dial readings around the clock', () => {
  it('tell runout from ovality, size and place, for any of both', () => {
    const mm = fc.double({ min: 0.01, max: 0.5, noNaN: true });
    const angle = fc.double({ min: 0, max: 359, noNaN: true });
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 16 }), mm, angle, mm, angle, (steps, e, at, o, ovalAt) => {
        const fit = must(fitRunout(evenReadings(dial(steps, [e, at], [o, ovalAt]))));
        expect(fit.runoutTirMm).toBeCloseTo(2 * e, 9);
        expect(angleBetweenDeg(fit.highSpotDeg, at)).toBeLessThan(1e-6);
        expect(fit.ovalityTirMm).toBeCloseTo(2 * o, 9);
        expect(angleBetweenDeg(2 * fit.ovalSpotDeg!, 2 * ovalAt)).toBeLessThan(1e-6);
      }),
      { numRuns: 100 },
    );
  });

  it('do not tell ovality from three or four places, and say so', () => {
    expect(must(fitRunout(evenReadings(dial(4, [0.2, 30], [0, 0])))).ovalityTirMm).toBeNull();
    expect(must(fitRunout(evenReadings(dial(4, [0.2, 30], [0.1, 10])))).runoutTirMm).toBeCloseTo(0.4, 9);
  });

  it('carry their scatter into the runout', () => {
    // Even clock: the third harmonic is what no term explains. Its rms is 0.01/√2; 8 places, 5 unknowns.
    const readings = dial(8, [0.2, 30], [0.05, 20]).map((mm, step) => mm + 0.01 * Math.cos((3 * Math.PI * step) / 4));
    const fit = must(fitRunout(evenReadings(readings)));
    expect(fit.scatterMm).toBeCloseTo(Math.sqrt((8 * 0.01 ** 2) / 2 / 3), 9);
    expect(fit.runoutTirSdMm).toBeCloseTo(2 * fit.scatterMm! * Math.sqrt(2 / 8), 12);
    expect(fit.runoutTirMm).toBeCloseTo(0.4, 9);
    expect(fit.tirMm).toBeCloseTo(Math.max(...readings) - Math.min(...readings), 12);
  });

  it('are refused where there are too few or all on one side', () => {
    expect(fitRunout(evenReadings([0.1, 0.2]))).toMatchObject({
      ok: false,
      problem: { code: 'too-few-dial-readings' },
    });
    const bunched = [10, 10, 10, 10].map((angleDeg) => ({ angleDeg, readingMm: 0.1 }));
    expect(fitRunout(bunched).ok).toBe(false);
  });
});

describe('turning the shaft on its flange', () => {
  const vector = fc.record({
    mm: fc.double({ min: 0.01, max: 0.5, noNaN: true }),
    at: fc.integer({ min: 0, max: 359 }),
  });

  it('is foretold from the flange’s own runout as from turning the shaft once, and as it then measures', () => {
    fc.assert(
      fc.property(
        vector,
        vector,
        fc.integer({ min: 3, max: 8 }),
        fc.integer({ min: 1, max: 2 }),
        (f, s, bolts, steps) => {
          const flange = polar(f.mm, f.at);
          const shaft = polar(s.mm, s.at);
          const measured = (turned: number) => add(flange, multiply(shaft, polar(1, (360 * turned) / bolts)));
          const byFlange = indexPositions(splitByFlange(measured(0), flange), bolts);
          const byTurning = indexPositions(splitByTurning(measured(0), measured(steps), steps, bolts), bolts);
          for (const [place, position] of byFlange.entries()) {
            expect(position.tirMm).toBeCloseTo(2 * size(measured(position.steps)), 9);
            expect(byTurning[place]!.tirMm).toBeCloseTo(position.tirMm, 9);
          }
          expect(byFlange).toHaveLength(bolts);
          expect(byFlange[0]!.tirMm).toBeLessThanOrEqual(byFlange.at(-1)!.tirMm);
        },
      ),
      { numRuns: 100 },
    );
  });

  it('is foretold from vibration levels at three positions, without phase', () => {
    fc.assert(
      fc.property(vector, vector, (f, s) => {
        const level = (steps: number) => size(add(polar(f.mm, f.at), polar(s.mm, s.at + (360 * steps) / 6)));
        const tried = [0, 2, 4].map((steps) => ({ steps, amplitude: level(steps) }));
        const { positions } = must(reindexByLevels(tried, 6));
        for (const { steps, amplitude } of positions) expect(amplitude).toBeCloseTo(level(steps), 6);
        expect(
          positions
            .filter(({ tried: was }) => was)
            .map(({ steps }) => steps)
            .sort(),
        ).toEqual([0, 2, 4]);
      }),
      { numRuns: 100 },
    );
    const two = must(
      reindexByLevels(
        [
          { steps: 0, amplitude: 0.2 },
          { steps: 3, amplitude: 0.05 },
        ],
        6,
      ),
    );
    expect(two.positions.map(({ steps }) => steps)).toEqual([3, 0]);
    expect(two.spread).toBeCloseTo(0.15, 12);
    expect(
      reindexByLevels(
        [
          { steps: 0, amplitude: 1 },
          { steps: 1, amplitude: 2 },
        ],
        1e9,
      ).ok,
    ).toBe(false);
    expect(
      reindexByLevels(
        [
          { steps: 0, amplitude: 0.2 },
          { steps: 6, amplitude: 0.2 },
        ],
        6,
      ),
    ).toMatchObject({
      ok: false,
      problem: { code: 'reindex-too-few' },
    });
  });
});

describe('unbalance that runout implies', () => {
  it('is 1432.394 g·mm and 141.372 N for 0.5 mm of bow on 9 kg at 3000 rev/min, 3.1 times the G 16 allowance (derived)', () => {
    const unbalance = bowUnbalanceGmm(0.5, 9);
    expect(unbalance).toBeCloseTo(1432.394, 3);
    expect(forceOfUnbalanceN(unbalance, 3000)).toBeCloseTo(141.372, 3);
    expect(unbalance / permissibleUnbalanceGmm(16, 9, 3000)).toBeCloseTo(3.1, 1);
  });

  it('of a tube read at three stations is the integral of its mass off the axis, plane by plane', () => {
    const [front, middle, rear] = [polar(0.1, 20), polar(0.3, 80), polar(0.2, 200)] as const;
    const result = tubeUnbalance(front, middle, rear, 9);
    // Slow judge: sum over slices; each slice's share in a plane falls off linearly to the other end.
    const slices = 4000;
    let frontSum = { re: 0, im: 0 };
    let rearSum = { re: 0, im: 0 };
    const bow = add(middle, multiply(add(front, rear), { re: -0.5, im: 0 }));
    for (let slice = 0; slice < slices; slice++) {
      const x = (slice + 0.5) / slices;
      const line = add(multiply(front, { re: 1 - x, im: 0 }), multiply(rear, { re: x, im: 0 }));
      const off = add(line, multiply(bow, { re: Math.sin(Math.PI * x), im: 0 }));
      frontSum = add(frontSum, multiply(off, { re: ((1 - x) * 9000) / slices, im: 0 }));
      rearSum = add(rearSum, multiply(off, { re: (x * 9000) / slices, im: 0 }));
    }
    expect(size(result.frontGmm)).toBeCloseTo(size(frontSum), 2);
    expect(angleDegOf(result.frontGmm)).toBeCloseTo(angleDegOf(frontSum), 3);
    expect(size(result.rearGmm)).toBeCloseTo(size(rearSum), 2);
    expect(angleDegOf(result.rearGmm)).toBeCloseTo(angleDegOf(rearSum), 3);
    const held = tubeUnbalance(polar(0.05, 0), polar(0.025, 0), polar(0, 0), 9);
    expect(size(held.frontGmm)).toBeCloseTo(150, 9);
    expect(size(held.rearGmm)).toBeCloseTo(75, 9);
    expect(endUnbalanceGmm(0.1, 9)).toBeCloseTo(225, 9);
  });

  it('of a tire is a force of eccentricity times stiffness', () => {
    expect(radialForceN(1)).toBe(100);
    expect(radialForceN(1, 250)).toBe(125);
  });
});
