import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { centringEffect, jointOffset, offsetOfWholeAllowanceMm } from '../../../src/core/driveline/rings/centring.ts';
import { judgeEndPlay } from '../../../src/core/driveline/rings/end-play.ts';
import type { BareAxis, RingStock } from '../../../src/core/driveline/rings/ring-selection.ts';
import { selectRings } from '../../../src/core/driveline/rings/ring-selection.ts';
import { ringRemedy } from '../../../src/core/driveline/rings/ring-remedy.ts';
import { judgeRings, seatAxis } from '../../../src/core/driveline/rings/ring-seat.ts';
import { must } from '../../support/must.ts';

describe('end play', () => {
  it('is held to 0.05 mm (0.002 in) by default, common practice without a source', () => {
    const good = must(judgeEndPlay([0.05, 0.02]));
    expect(good.inside).toBe(true);
    expect(good.axes[0].limit).toMatchObject({
      value: 0.05,
      inchText: '0.002 in',
      source: 'common practice, no source',
    });
    expect(must(judgeEndPlay([0.02, 0.051])).inside).toBe(false);
    expect(must(judgeEndPlay([0.03, 0.04])).freeOffsetMm).toBeCloseTo(0.025, 12);
  });

  it('is held to the maker’s figure where there is one', () => {
    const limits = { 'end-play': { value: 0.15 } };
    expect(must(judgeEndPlay([0.1, 0.14], limits)).inside).toBe(true);
    expect(must(judgeEndPlay([0.1, 0.14], limits)).axes[0].limit.source).toBe('maker’s figure');
  });

  it('refuses a reading that is not a distance', () => {
    expect(judgeEndPlay([-0.01, 0])).toMatchObject({ ok: false, problem: { code: 'end-play-not-a-distance' } });
  });
});

describe('rings and cross', () => {
  it('that do not belong to the grooves are asked about, not judged', () => {
    const axis = { grooveSpanMm: 31.85, crossAndCupsMm: 78.6, ring1Mm: 1.55, ring2Mm: 1.65 };
    expect(judgeRings([axis])).toMatchObject({ ok: false, problem: { code: 'rings-do-not-belong' } });
  });
});

const worked = { grooveSpanMm: 81.85, crossAndCupsMm: 78.6, ring1Mm: 1.55, ring2Mm: 1.65 };

describe('a cross between its rings', () => {
  it('sits as in the worked example: 0.05 mm play, 0.05 mm off centre, 0.025 to 0.075 (derived)', () => {
    const seat = seatAxis(worked);
    expect(seat.endPlayMm).toBeCloseTo(0.05, 12);
    expect(seat.offsetMm).toBeCloseTo(0.05, 12);
    expect(seat.offsetRangeMm[0]).toBeCloseTo(0.025, 12);
    expect(seat.offsetRangeMm[1]).toBeCloseTo(0.075, 12);
    expect(seat.ringDifferenceMm).toBeCloseTo(0.1, 12);
  });

  it('adds the offsets of both axes as vectors: 0.0583095 mm at 30.9638° (derived)', () => {
    const second = { ...worked, ring1Mm: 1.57, ring2Mm: 1.63 };
    const offset = jointOffset([seatAxis(worked), seatAxis(second)]);
    expect(offset.offsetMm).toBeCloseTo(0.0583095, 7);
    expect(offset.angleDeg).toBeCloseTo(30.9638, 4);
    expect(offset.greatestMm).toBeCloseTo(Math.hypot(0.075, 0.055), 12);
  });

  it('is judged tight where the parts need more room than there is', () => {
    const tight = must(judgeRings([{ ...worked, ring1Mm: 1.65, ring2Mm: 1.65 }]));
    expect(tight).toMatchObject({ tight: true, inside: false });
    expect(tight.judged.map(({ inside }) => inside)).toEqual([false, true]);
    expect(must(judgeRings([{ ...worked, ring1Mm: 1.6, ring2Mm: 1.6 }]))).toMatchObject({ tight: false, inside: true });
    expect(must(judgeRings([worked])).inside).toBe(false);
    // Tight by any reading: the least end play is what it falls short of.
    expect(tight.judged[0]!.limit.id).toBe('end-play-least');
    expect(judgeRings([{ ...worked, ring1Mm: 0 }])).toMatchObject({
      ok: false,
      problem: { code: 'ring-size-missing' },
    });
  });
});

describe('end play from four micrometer readings', () => {
  const withPlay = (playMm: number, limits = {}) =>
    must(judgeRings([{ grooveSpanMm: 81.8 + playMm, crossAndCupsMm: 78.6, ring1Mm: 1.6, ring2Mm: 1.6 }], limits));

  it('is outside where it is nothing: the joint binds without any (judgment of this program, no source)', () => {
    const none = withPlay(0);
    expect(none).toMatchObject({ inside: false, tight: false });
    expect(none.judged[0]).toMatchObject({
      inside: false,
      limit: { id: 'end-play-least', value: 0.01, sense: 'at-least', status: 'judgment' },
    });
    expect(withPlay(-0.003).inside).toBe(false);
    expect(withPlay(-0.003).judged[0]!.share).toBe(Infinity);
  });

  it('is let pass within the reading error of 0.005 mm at either limit, and says so above the greatest', () => {
    const inside = [0.004, 0.005, 0.01, 0.05, 0.0508, 0.055, 0.0551].map((play) => withPlay(play).inside);
    expect(inside).toEqual([false, true, true, true, true, true, false]);
    expect(withPlay(0.0508).judged[0]!.title).toBe('end play, axis 1, within reading error');
    expect(withPlay(0.05).judged[0]!.title).toBe('end play, axis 1');
  });

  it('follows the maker’s figures, also where its greatest lies below the least', () => {
    expect(withPlay(0.02, { 'end-play-least': { value: 0.03 } }).inside).toBe(false);
    expect(withPlay(0.002, { 'end-play': { value: 0.005 } }).inside).toBe(true);
  });
});

describe('an off-centre joint', () => {
  const shaft = { offsetMm: 0.05, massKg: 9, rpm: 3000, gradeMmps: 16 };

  it('makes 225 = 150 + 75 g·mm of a 9 kg shaft, 14.8044 N and 7.4022 N at 3000 rev/min (derived)', () => {
    const effect = centringEffect(shaft);
    expect(effect.totalGmm).toBeCloseTo(225, 10);
    expect(effect.near.unbalanceGmm).toBeCloseTo(150, 10);
    expect(effect.far.unbalanceGmm).toBeCloseTo(75, 10);
    expect(effect.near.forceN).toBeCloseTo(14.8044, 4);
    expect(effect.far.forceN).toBeCloseTo(7.4022, 4);
  });

  it('spends 65 % of the G 16 allowance of ISO 21940-11 in its plane, 83 % with a 0.8 kg yoke (derived)', () => {
    const bare = centringEffect(shaft);
    expect(bare.allowancePerPlaneGmm).toBeCloseTo(229.18, 2);
    expect(bare.near.shareOfAllowance).toBeCloseTo(0.6545, 4);
    const withYoke = centringEffect({ ...shaft, endMassKg: 0.8 });
    expect(withYoke.near.unbalanceGmm).toBeCloseTo(190, 10);
    expect(withYoke.near.forceN).toBeCloseTo(18.7522, 4);
    expect(withYoke.near.shareOfAllowance).toBeCloseTo(0.829, 3);
    expect(offsetOfWholeAllowanceMm({ ...shaft, endMassKg: 0.8 })).toBeCloseTo(0.05 / 0.82903, 5);
  });
});

/** Plain enumeration of every ring in every place: the judge. Returns the least offset, and its distance to mid play. */
const bruteForce = (axes: readonly BareAxis[], stock: readonly RingStock[], leastMm: number, mostMm: number) => {
  let best: { offset: number; offMiddle: number } | null = null;
  const places = 2 * axes.length;
  for (let code = 0; code < stock.length ** places; code++) {
    const kinds = Array.from({ length: places }, (_, place) => Math.floor(code / stock.length ** place) % stock.length);
    const tooMany = stock.some(({ count = 9 }, kind) => kinds.filter((other) => other === kind).length > count);
    if (tooMany) continue;
    const plays = axes.map((axis, index) => {
      const sum = stock[kinds[2 * index]!]!.thicknessMm + stock[kinds[2 * index + 1]!]!.thicknessMm;
      return axis.grooveSpanMm - axis.crossAndCupsMm - sum;
    });
    // Half a hundredth over the greatest end play is a reading error.
    if (plays.some((play) => play < leastMm - 1e-9 || play > mostMm + 0.005 + 1e-9)) continue;
    const offset = Math.hypot(
      ...axes.map((axis, index) => {
        const [one, two] = [stock[kinds[2 * index]!]!.thicknessMm, stock[kinds[2 * index + 1]!]!.thicknessMm];
        return (two - one) / 2 + (axis.grooveOffsetMm ?? 0);
      }),
    );
    const offMiddle = plays.reduce((sum, play) => sum + Math.abs(play - (leastMm + mostMm) / 2), 0);
    const better = best === null || offset < best.offset - 1e-9;
    if (better || (offset < best!.offset + 1e-9 && offMiddle < best!.offMiddle)) best = { offset, offMiddle };
  }
  return best;
};

describe('ring selection', () => {
  /** In steps of half a hundredth, so that sums come to lie on the limits and on the reading error beyond. */
  const millimetres = (min: number, max: number) =>
    fc.integer({ min: Math.round(200 * min), max: Math.round(200 * max) }).map((value) => value / 200);
  const axis = fc.record({
    room: millimetres(2.9, 3.4),
    grooveOffsetMm: millimetres(-0.05, 0.05),
  });
  const stock = fc.array(fc.record({ thicknessMm: millimetres(1.45, 1.7), count: fc.integer({ min: 1, max: 3 }) }), {
    minLength: 1,
    maxLength: 7,
  });

  it('finds what trying every ring in every place finds, for random joints and stocks', () => {
    let solvable = 0;
    fc.assert(
      fc.property(fc.array(axis, { minLength: 1, maxLength: 2 }), stock, (rooms, rings) => {
        const axes = rooms.map(({ room, grooveOffsetMm }) => ({
          grooveSpanMm: 78 + room,
          crossAndCupsMm: 78,
          grooveOffsetMm,
        }));
        const limits = { 'end-play': { value: 0.08 } };
        const { best } = must(selectRings(axes, rings, limits));
        const judge = bruteForce(axes, rings, 0.01, 0.08);
        expect(best === null).toBe(judge === null);
        if (best === null || judge === null) return;
        solvable++;
        expect(best.offsetMm).toBeCloseTo(judge.offset, 8);
        const offMiddle = best.axes.reduce((sum, { seat }) => sum + Math.abs(seat.endPlayMm - 0.045), 0);
        expect(offMiddle).toBeCloseTo(judge.offMiddle, 7);
        // The rings named are in stock, and seat as told.
        const used = best.axes.flatMap(({ ring1Mm, ring2Mm }) => [ring1Mm, ring2Mm]);
        for (const { thicknessMm } of rings) {
          const held = rings
            .filter((ring) => ring.thicknessMm === thicknessMm)
            .reduce((sum, { count }) => sum + count, 0);
          expect(used.filter((ring) => ring === thicknessMm).length).toBeLessThanOrEqual(held);
        }
        for (const [index, { ring1Mm, ring2Mm, seat }] of best.axes.entries()) {
          expect(seat).toEqual(seatAxis({ ...axes[index]!, ring1Mm, ring2Mm }));
        }
      }),
      { numRuns: 400 },
    );
    expect(solvable).toBeGreaterThan(30);
  });

  it('leaves the joint some end play: rings that fill the groove are no choice', () => {
    const full = { grooveSpanMm: 81.8, crossAndCupsMm: 78.6 };
    const pairs = [1.55, 1.6].map((thicknessMm) => ({ thicknessMm, count: 2 }));
    const { best } = must(selectRings([full], pairs));
    expect(best!.axes[0]!.seat.endPlayMm).toBeCloseTo(0.05, 9);
    const none = must(selectRings([full], pairs.slice(1)));
    expect(none).toMatchObject({ best: null, endPlayLeastMm: 0.01 });
    expect(none.pairSumMm[0]![1]).toBeCloseTo(3.19, 9);
    // What is chosen is never outside when it is judged.
    const { ring1Mm, ring2Mm } = best!.axes[0]!;
    expect(must(judgeRings([{ ...full, ring1Mm, ring2Mm }])).judged[0]!.inside).toBe(true);
  });

  it('keeps an equal pair that is over the limit by less than four readings tell: 0.0020 in of play', () => {
    const inch = 25.4;
    const axis = { grooveSpanMm: 3.222 * inch, crossAndCupsMm: 3.094 * inch };
    const pairs = [0.061, 0.063, 0.065].map((thickness) => ({ thicknessMm: thickness * inch, count: 2 }));
    const { best } = must(selectRings([axis], pairs));
    expect(best!.offsetMm).toBe(0);
    expect(best!.axes[0]!.ring1Mm).toBeCloseTo(0.063 * inch, 9);
    expect(best!.axes[0]!.seat.endPlayMm).toBeCloseTo(0.0508, 9);
    const { ring1Mm, ring2Mm } = best!.axes[0]!;
    expect(must(judgeRings([{ ...axis, ring1Mm, ring2Mm }])).inside).toBe(true);
  });

  it('centers with unequal rings where the grooves are off center', () => {
    const off = { grooveSpanMm: 81.85, crossAndCupsMm: 78.6, grooveOffsetMm: 0.05 };
    const { best } = must(
      selectRings(
        [off],
        [1.55, 1.6, 1.65].map((thicknessMm) => ({ thicknessMm })),
      ),
    );
    expect(best).toMatchObject({ axes: [{ ring1Mm: 1.65, ring2Mm: 1.55 }], offsetMm: expect.closeTo(0, 9) });
  });

  it('says what a pair must add up to where no rings at hand will do', () => {
    const result = must(selectRings([worked], [{ thicknessMm: 1.5 }, { thicknessMm: 1.55 }]));
    expect(result.best).toBeNull();
    expect(result.pairSumMm[0]![0]).toBeCloseTo(3.2, 9);
    expect(result.pairSumMm[0]![1]).toBeCloseTo(3.24, 9);
    expect(selectRings([worked], [])).toMatchObject({ ok: false, problem: { code: 'ring-size-missing' } });
    const tooMany = Array.from({ length: 201 }, () => ({ thicknessMm: 1.5 }));
    expect(selectRings([worked], tooMany)).toMatchObject({ ok: false, problem: { code: 'ring-size-missing' } });
  });
});

// By hand: end play is groove span less cross and rings, and equal rings center a cross between its grooves.
describe('what puts rings right', () => {
  const axis = (grooveSpanMm: number, ring1Mm: number, ring2Mm: number) => ({
    grooveSpanMm,
    crossAndCupsMm: 78.6,
    ring1Mm,
    ring2Mm,
  });

  it('is sorting them, where the pairs of two axes were mixed up', () => {
    // 81.95 − 78.60 − 2 × 1.65 = 0.05 and 81.75 − 78.60 − 2 × 1.55 = 0.05; as fitted 0.15 and −0.05.
    const mixed = [axis(81.95, 1.55, 1.65), axis(81.75, 1.65, 1.55)];
    expect(ringRemedy(mixed)).toBe(
      'The same rings do it, sorted otherwise: axis 1: 1.65 mm (0.0650 in) at ring 1 and 1.65 mm (0.0650 in) at ring 2; axis 2: 1.55 mm (0.0610 in) at ring 1 and 1.55 mm (0.0610 in) at ring 2.',
    );
  });

  it('is other rings, of a size that is told, where no sorting does it', () => {
    // 3.25 of room: two rings of 1.60 leave 0.05, the most; of 1.62 leave 0.01, the least.
    expect(ringRemedy([axis(81.85, 1.5, 1.7)])).toBe(
      'No sorting of these rings centers the joint with its end play. It needs, axis 1: two equal rings of 1.60 mm (0.0630 in) to 1.62 mm (0.0638 in).',
    );
  });

  it('is nothing where they are right, or where the cross leaves no room for any', () => {
    expect(ringRemedy([axis(81.85, 1.6, 1.6)])).toBeNull();
    expect(ringRemedy([{ grooveSpanMm: 78.6, crossAndCupsMm: 78.65, ring1Mm: 1.5, ring2Mm: 1.5 }])).toBeNull();
  });
});
