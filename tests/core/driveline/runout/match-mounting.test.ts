import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { add, angleBetweenDeg, angleDegOf, multiply, polar, size } from '../../../../src/core/complex.ts';
import { CAUTIONS } from '../../../../src/core/cautions.ts';
import { procedureOf } from '../../../../src/core/driveline/procedures.ts';
import type { RunoutMeasurement } from '../../../../src/core/driveline/measurement.ts';
import { matchMounting } from '../../../../src/core/driveline/runout/match-mounting.ts';
import { fitsOf } from '../../../../src/core/driveline/runout/runout-places.ts';
import { matchMountingLines } from '../../../../src/core/report/match-mounting-text.ts';
import { must } from '../../../support/must.ts';

/** Eight places of a part whose eccentricity is so large, mm, with its high spot there. */
const dial = (mm: number, at: number) =>
  Array.from({ length: 8 }, (_, place) => mm * Math.cos(((45 * place - at) * Math.PI) / 180));

const measured = (tireMm: readonly number[], rimMm: readonly number[] | null): RunoutMeasurement[] => [
  { kind: 'runout', place: 'tire-radial', readingsMm: tireMm },
  ...(rimMm === null ? [] : [{ kind: 'runout', place: 'wheel-radial', readingsMm: rimMm } as const]),
];

const matched = (tireMm: readonly number[], rimMm: readonly number[] | null) =>
  matchMounting(must(fitsOf(measured(tireMm, rimMm))));

const plain = (text: string): string => text.replaceAll('\u00a0', ' ');

describe('a tire turned on its rim', () => {
  // Hand case, vectors along and across: tire 0.5 mm at 90°, rim 0.3 mm at 90°, so the dial shows 0.8 mm at 90°.
  // The rim's low spot is at 270°: half a turn leaves 0.5 − 0.3 = 0.2 mm, as indicator readings 0.4 instead of 1.6.
  it('with both high spots together goes half a turn on, and what is left is their difference', () => {
    const match = matched(dial(0.8, 90), dial(0.3, 90))!;
    expect(match.tireHighSpotDeg).toBeCloseTo(90, 6);
    expect(match.rimLowSpotDeg).toBeCloseTo(270, 6);
    expect(match.apartDeg).toBeCloseTo(180, 6);
    expect(match.nowTirMm).toBeCloseTo(1.6, 9);
    expect(match.left).toMatchObject({ measured: expect.closeTo(0.4, 9), inside: true });
    expect(match.pays).toBe(true);
    const text = plain(matchMountingLines(match, 'metric').join(' '));
    expect(text).toContain('high spot is at 90° (3 o’clock), the rim’s low spot at 270° (9 o’clock): 180° apart.');
    expect(text).toContain(
      'until the mark stands at 270° (9 o’clock): 0.40 mm should be left instead of 1.60 mm once round.',
    );
  });

  // Hand case, 3-4-5: the dial shows 0.4 mm at 0°, the rim 0.3 mm at 90°. The tire alone is their difference,
  // 0.5 mm at −36.87°; the rim's low spot is at 270°, that is 53.13° back, and 0.2 mm is left.
  it('is told from the rim by the difference of the two as vectors, not by the chalk mark on the tire', () => {
    const match = matched(dial(0.4, 0), dial(0.3, 90))!;
    expect(match.tireOwnTirMm).toBeCloseTo(1, 9);
    expect(match.tireHighSpotDeg).toBeCloseTo(323.13, 2);
    expect(match.turnDeg).toBeCloseTo(-53.13, 2);
    expect(match.left.measured).toBeCloseTo(0.4, 9);
    expect(plain(matchMountingLines(match, 'metric')[1]!)).toContain(
      'Mark the tire at 323° (11 o’clock) and turn it on the rim by 53°, back, towards the places that were read earlier',
    );
  });

  it('leaves what a try of every degree leaves at best, for any of both', () => {
    const mm = fc.double({ min: 0.02, max: 1, noNaN: true });
    const at = fc.double({ min: 0, max: 359, noNaN: true });
    fc.assert(
      fc.property(mm, at, mm, at, (tire, tireAt, rim, rimAt) => {
        const [own, held] = [polar(tire, tireAt), polar(rim, rimAt)];
        const whole = add(own, held);
        const match = matched(dial(size(whole), angleDegOf(whole)), dial(rim, rimAt))!;
        const tried = Array.from({ length: 360 }, (_, turn) => 2 * size(add(held, multiply(own, polar(1, turn)))));
        expect(match.left.measured).toBeLessThanOrEqual(Math.min(...tried) + 1e-9);
        const turned = 2 * size(add(held, multiply(own, polar(1, match.turnDeg))));
        expect(turned).toBeCloseTo(match.left.measured, 6);
        expect(angleBetweenDeg(match.tireHighSpotDeg + match.turnDeg, match.rimLowSpotDeg)).toBeLessThan(1e-6);
      }),
      { numRuns: 100 },
    );
  });

  it('stays where it is when little is gained, and is not judged by one reading or beside a dent', () => {
    const match = matched(dial(0.41, 0), dial(0.05, 170))!;
    expect(match.pays).toBe(false);
    expect(matchMountingLines(match, 'metric')[1]).toContain('Leave the tire where it sits');
    expect(matched(dial(0.8, 90), null)).toBeNull();
    expect(matched([0, 0, 0, -0.6, 0, 0, 0, 0], dial(0.3, 90))).toBeNull();
  });

  it('that stays outside its limit is not cured by turning', () => {
    // 1.0 mm less 0.2 mm of eccentricity: 1.6 mm total reading, outside 1.3 mm (common practice, no source).
    const match = matched(dial(1.2, 0), dial(0.2, 0))!;
    expect(match).toMatchObject({ pays: true, left: { inside: false, measured: expect.closeTo(1.6, 9) } });
    expect(matchMountingLines(match, 'metric').join(' ')).toContain('Turning is not enough: replace');
  });

  it('carries the caution of breaking beads and inflating (common practice, no source)', () => {
    const { cautions } = procedureOf('match-mounting');
    expect(cautions).toEqual(expect.arrayContaining(['tire-off-rim', 'wheel-off']));
    expect(CAUTIONS['tire-off-rim']).toMatch(/air out.*cage.*licensed/u);
    expect(CAUTIONS['wheel-off']).toMatch(/star pattern.*maker’s torque/u);
  });
});
