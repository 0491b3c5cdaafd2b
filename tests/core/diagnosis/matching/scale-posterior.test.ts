import { describe, expect, it } from 'vitest';
import {
  axisFrom,
  gearTie,
  scaleAt,
  SINGLE_POINT,
  type ScalePrior,
} from '../../../../src/core/diagnosis/origins/scale-prior.ts';
import { scalePosterior, type ToneDensities } from '../../../../src/core/diagnosis/matching/scale-posterior.ts';
import type { Origin } from '../../../../src/core/diagnosis/origins/origin.ts';
import type { Support } from '../../../../src/core/diagnosis/matching/intensity.ts';

const origin = {} as Origin;
const support = (first: number, values: readonly number[]): Support => ({
  origin,
  image: false,
  first,
  values: Float64Array.from(values),
});
const background = (fixed: number): ToneDensities['background'] => ({ fixed, unlisted: 0, resonance: 0, noise: 0 });

/** The same sums, cell by cell, as they are written on paper. */
const slowly = (
  prior: ScalePrior,
  tones: readonly ToneDensities[],
  absentRoad: Float64Array,
  absentEngine: Float64Array,
): { road: number[]; engine: number[]; first: number } => {
  const at = (supports: readonly Support[], i: number): number =>
    supports.reduce((sum, s) => sum + (s.values[i - s.first] ?? 0), 0);
  const road = Array<number>(prior.road.logPrior.length).fill(0);
  const engine = Array<number>(prior.engine.logPrior.length).fill(0);
  let first = 0;
  let total = 0;
  road.forEach((_, r) =>
    engine.forEach((__, e) => {
      const gap = scaleAt(prior.engine, e) - scaleAt(prior.road, r);
      let weight = Math.exp(
        prior.road.logPrior[r]! +
          prior.engine.logPrior[e]! +
          (prior.tie
            ? gap < prior.tie.from - 1e-9 || gap > prior.tie.to + 1e-9
              ? -Infinity
              : prior.tie.logDensity(gap)
            : 0) +
          absentRoad[r]! +
          absentEngine[e]!,
      );
      for (const tone of tones) weight *= tone.background.fixed + at(tone.road, r) + at(tone.engine, e);
      road[r]! += weight;
      engine[e]! += weight;
      total += weight;
      const tone = tones[0]!;
      first +=
        (weight * at(tone.road.slice(0, 1), r)) / (tone.background.fixed + at(tone.road, r) + at(tone.engine, e));
    }),
  );
  return { road: road.map((w) => w / total), engine: engine.map((w) => w / total), first: first / total };
};

describe('the joint posterior of the road and engine scales', () => {
  const prior: ScalePrior = {
    road: axisFrom(-0.002, 0.003, (s) => -300 * Math.abs(s)),
    engine: axisFrom(-0.00097, 0.00403, () => 0),
    tie: gearTie(true),
  };
  const tones: readonly ToneDensities[] = [
    {
      background: background(0.5),
      road: [support(3, [1, 4, 2]), support(20, [0.5, 2])],
      engine: [support(10, [3, 1])],
    },
    { background: background(0.2), road: [support(18, [0.4, 1, 2, 1])], engine: [] },
    { background: background(1), road: [], engine: [support(30, [2, 5, 2])] },
  ];
  const absentRoad = Float64Array.from(prior.road.logPrior, (_, i) => -0.01 * i);
  const absentEngine = Float64Array.from(prior.engine.logPrior, (_, i) => -0.02 * Math.abs(i - 25));

  it('agrees with the sums taken cell by cell', () => {
    const fast = scalePosterior(prior, tones, absentRoad, absentEngine);
    const slow = slowly(prior, tones, absentRoad, absentEngine);
    slow.road.forEach((w, i) => expect(fast.roadWeight[i]).toBeCloseTo(w, 5));
    slow.engine.forEach((w, i) => expect(fast.engineWeight[i]).toBeCloseTo(w, 5));
    expect(fast.origins[0]!.road[0]).toBeCloseTo(slow.first, 5);
  });

  it('agrees on axes so long that the sums are taken by transform, and where road and engine tones speak against each other', () => {
    const long: ScalePrior = {
      road: axisFrom(-0.03, 0.03, (s) => -40 * Math.abs(s)),
      engine: axisFrom(-0.05, 0.1, () => 0),
      tie: gearTie(true),
    };
    const none = (count: number): Float64Array => new Float64Array(count);
    const strong = (engineAt: number): readonly ToneDensities[] => [
      {
        background: background(0.01),
        road: [support(300, [2, 900, 3])],
        engine: [support(engineAt, [5, 400, 80])],
      },
      { background: background(0.02), road: [support(298, [5, 40, 300, 20])], engine: [support(900, [30])] },
      { background: background(0.02), road: [], engine: [support(engineAt - 1, [5, 40, 3000, 20])] },
    ];
    // At 510 the gears could be locked; at 130 they cannot, so that one of the two has to give way.
    for (const engineAt of [510, 130]) {
      const args = [
        long,
        strong(engineAt),
        none(long.road.logPrior.length),
        none(long.engine.logPrior.length),
      ] as const;
      const fast = scalePosterior(...args);
      const slow = slowly(...args);
      slow.road.forEach((w, i) => expect(fast.roadWeight[i]).toBeCloseTo(w, 6));
      slow.engine.forEach((w, i) => expect(fast.engineWeight[i]).toBeCloseTo(w, 6));
      expect(fast.origins[0]!.road[0]).toBeCloseTo(slow.first, 6);
    }
  });

  it('gives every tone origin probabilities that leave the rest to the background', () => {
    const { origins } = scalePosterior(prior, tones, absentRoad, absentEngine);
    for (const { road, engine } of origins) {
      const sum = [...road, ...engine].reduce((a, b) => a + b, 0);
      expect(sum).toBeGreaterThan(0);
      expect(sum).toBeLessThan(1);
    }
  });

  it('returns the prior where there is no tone', () => {
    const flat = axisFrom(-0.01, 0.01, () => 0);
    const none = new Float64Array(flat.logPrior.length);
    const { road } = scalePosterior({ road: flat, engine: SINGLE_POINT, tie: null }, [], none, new Float64Array(1));
    expect(road.mean).toBeCloseTo(0, 9);
    expect(road.sd).toBeCloseTo(0.02 / Math.sqrt(12), 4);
  });
});
