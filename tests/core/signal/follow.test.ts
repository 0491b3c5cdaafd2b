import { describe, expect, it } from 'vitest';
import { toBlocks, type Blocks } from '../../../src/core/signal/prepare/blocks.ts';
import { relativeSpeedAt, STEADY, type SpeedTrack } from '../../../src/core/signal/speed/equal-angle.ts';
import { followLines } from '../../../src/core/signal/speed/follow-lines.ts';
import { followPhase } from '../../../src/core/signal/speed/follow-phase.ts';
import { frameEnergies } from '../../../src/core/signal/noise/frame-energies.ts';
import { frameLengthS, frameTimes, steadied, type LineToFollow } from '../../../src/core/signal/speed/frames.ts';
import { sharpnessOf } from '../../../src/core/signal/speed/sharpness.ts';
import { makeZoom, type Band } from '../../../src/core/signal/peaks/zoom.ts';
import { drive, type Drive, type SpeedShape } from '../../support/drive.ts';
import { noiseRecording } from '../../support/noise.ts';
import { seededRandom } from '../../support/random.ts';
import { normals, preparedOf, samples } from './made.ts';

const RATE = 200;
const SECONDS = 30;
/** Noise of σ 1 on one axis; its analytic density is 4σ²/fs, its inverse the whitener. */
const WHITENER = Float64Array.of(RATE / 4);

/** Lines of one axis that keep turning with the relative speed r(t), in white noise of σ 1. */
function driven(
  lines: readonly (readonly [hz: number, amplitude: number])[],
  r: (t: number) => number,
  seed: number,
): Blocks {
  const normal = normals(seed);
  let turned = 0;
  const made = samples(SECONDS * RATE, RATE, (t) => {
    const sum = lines.reduce((s, [hz, a]) => s + a * Math.cos(2 * Math.PI * hz * turned + hz), normal());
    turned += r(t + 0.5 / RATE) / RATE;
    return sum;
  });
  return toBlocks(preparedOf([made], RATE), 90);
}

const follow = (hz: number): LineToFollow => ({ frequencyHz: hz, whitener: WHITENER });
const bandsOf = (blocks: Blocks, hz: number, halfHz: number): Band[] => {
  const zoom = makeZoom(blocks);
  return Array.from({ length: zoom.blocks }, (_, b) => zoom.band(b, hz, halfHz));
};
const trackFrom = (r: (t: number) => number, stepS = 0.1): SpeedTrack => {
  const timeS = Float64Array.from({ length: Math.round(SECONDS / stepS) + 1 }, (_, i) => i * stepS);
  return { timeS, relative: timeS.map(r) };
};
/** Root mean square of what two speeds differ by, scale aside. */
function trackError(track: SpeedTrack, r: (t: number) => number): number {
  const ratios = Array.from(
    { length: 10 * SECONDS - 9 },
    (_, i) => relativeSpeedAt(track, i / 10 + 0.5) / r(i / 10 + 0.5),
  );
  const mean = ratios.reduce((s, v) => s + v, 0) / ratios.length;
  return Math.sqrt(ratios.reduce((s, v) => s + (v / mean - 1) ** 2, 0) / ratios.length);
}
const wavy = (t: number): number => 1 + 0.015 * Math.sin((2 * Math.PI * t) / 20);

describe('frames', () => {
  it('are as long as a line stays in one bin at 0.5 % a second: 1/√(0.005·f), 0.8 … 4 s', () => {
    expect(frameLengthS(20)).toBeCloseTo(Math.sqrt(10), 12);
    expect(frameLengthS(2)).toBe(4);
    expect(frameLengthS(1000)).toBe(0.8);
  });

  it('have their centres in even steps over each block', () => {
    const blocks = toBlocks(
      {
        ...preparedOf([new Float64Array(1000)], 100, 3),
        pieces: [3, 20].map((startS) => ({ startS, axes: [new Float64Array(startS === 3 ? 1000 : 450)] })),
      },
      45,
    );
    const frames = frameTimes(blocks, 2);
    expect(Array.from(frames.timeS)).toEqual([4, 6, 8, 10, 12, 21.125, 23.375].map((t) => expect.closeTo(t, 9)));
    expect(Array.from(frames.block)).toEqual([0, 0, 0, 0, 0, 1, 1]);
    expect(frames.hopS).toBe(2);
  });

  it('a band with the true track’s movement taken out holds a line of constant phase', () => {
    const blocks = driven([[30, 40]], wavy, 1);
    const [band] = bandsOf(blocks, 30, 4);
    const still = steadied(band!, 30, trackFrom(wavy));
    const { re, im } = still.axes[0]!;
    let off = 0;
    let count = 0;
    const start = Math.atan2(im[100]!, re[100]!) - 2 * Math.PI * (30 - band!.centreHz) * (100 * band!.stepS);
    for (let i = 20; i < re.length - 20; i += 1) {
      const angle = Math.atan2(im[i]!, re[i]!) - 2 * Math.PI * (30 - band!.centreHz) * (i * band!.stepS) - start;
      off += Math.sin(angle / 2) ** 2;
      count += 1;
    }
    // Noise in a band of 8 Hz is σ²·4·8/fs·… of a line of 40: a phase error of about 0.02 rad.
    expect(Math.sqrt(off / count)).toBeLessThan(0.05);
  });
});

describe('how sharp a track makes a line', () => {
  const blocks = driven([[30, 0.8]], wavy, 2);
  const bands = bandsOf(blocks, 30, 5);
  const reach = 1;

  it('is its energy over the noise: A²·T/(4σ²/fs), along the true track', () => {
    const energy = 0.8 ** 2 * SECONDS * (RATE / 4);
    const own = sharpnessOf(follow(30), bands, trackFrom(wavy), reach);
    expect(Math.abs(own.energy / energy - 1)).toBeLessThan(0.12);
    expect(own.logLikelihood).toBeLessThanOrEqual(own.energy);
    expect(own.logLikelihood).toBeGreaterThan(0.6 * energy);
    expect(Math.abs(own.frequencyHz - 30)).toBeLessThan(0.005);
  });

  it('falls to a fraction along a wrong one, and finds where the line stands', () => {
    const own = sharpnessOf(follow(30), bands, trackFrom(wavy), reach);
    expect(sharpnessOf(follow(30), bands, STEADY, reach).logLikelihood).toBeLessThan(0.3 * own.logLikelihood);
    expect(
      sharpnessOf(
        follow(30),
        bands,
        trackFrom((t) => 2 - wavy(t)),
        reach,
      ).logLikelihood,
    ).toBeLessThan(0.3 * own.logLikelihood);
    const scaled = sharpnessOf(
      follow(30),
      bands,
      trackFrom((t) => wavy(t) * 0.99),
      reach,
    );
    expect(Math.abs(scaled.frequencyHz - 30 / 0.99)).toBeLessThan(0.01);
    expect(scaled.energy / own.energy).toBeCloseTo(1, 1);
  });

  it('counts a louder noise beside the line against it', () => {
    const loud = driven([[30, 8]], wavy, 2);
    const quiet = sharpnessOf(follow(30), bandsOf(loud, 30, 5), trackFrom(wavy), reach);
    const tenth: LineToFollow = { frequencyHz: 30, whitener: WHITENER.map((w) => 4 * w) };
    const own = sharpnessOf(tenth, bandsOf(loud, 30, 5), trackFrom(wavy), reach);
    // Told that the noise is a quarter of what it is, the energy is four times as much, the likelihood is not.
    expect(own.energy / quiet.energy).toBeCloseTo(4, 6);
    expect(own.logLikelihood / quiet.logLikelihood).toBeLessThan(1.6);
  });
});

describe('following', () => {
  it.each([
    ['a wave of ±1.5 % in 20 s', wavy],
    ['a drift of ±2 %', (t: number): number => 0.98 + (0.04 * t) / SECONDS],
    ['no movement', (): number => 1],
  ])('%s, by two lines of 0.6 over σ 1: the speed to a part in 1000', (_, r) => {
    const blocks = driven(
      [
        [18, 0.6],
        [47, 0.6],
      ],
      r,
      3,
    );
    const track = followLines(makeZoom(blocks), blocks, [follow(18), follow(47)], STEADY);
    expect(trackError(track, r)).toBeLessThan(1e-3);
  });

  it('swings of 4 % within 5 s, where it is told that the speed may move so fast', () => {
    const swinging = (t: number): number => 1 + 0.02 * Math.sin((2 * Math.PI * t) / 5);
    const blocks = driven(
      [
        [18, 2],
        [47, 2],
      ],
      swinging,
      6,
    );
    const error = (ratePerS?: number): number =>
      trackError(followLines(makeZoom(blocks), blocks, [follow(18), follow(47)], STEADY, 0.045, ratePerS), swinging);
    expect(error(0.03)).toBeLessThan(1.5e-3);
    expect(error()).toBeGreaterThan(5e-3);
  });

  it('two weak lines together tell more than the one alone', () => {
    const error = (hz: readonly number[]): number => {
      const blocks = driven(
        [
          [24, 0.3],
          [47, 0.3],
        ],
        wavy,
        4,
      );
      return trackError(followLines(makeZoom(blocks), blocks, hz.map(follow), STEADY), wavy);
    };
    expect(error([24, 47])).toBeLessThan(error([24]));
  });

  it('by phase, what is left of a small error goes to a third or less', () => {
    const blocks = driven(
      [
        [18, 1],
        [47, 1],
      ],
      wavy,
      5,
    );
    const off = (t: number): number => wavy(t) + 0.002 * Math.sin((2 * Math.PI * t) / 15 + 1);
    const start = trackFrom(off, 0.5);
    const track = followPhase(
      [follow(18), follow(47)],
      [bandsOf(blocks, 18, 3), bandsOf(blocks, 47, 3)],
      frameTimes(blocks, frameLengthS(47) / 2),
      start,
    );
    expect(trackError(track, wavy)).toBeLessThan(trackError(start, wavy) / 3);
  });
});

describe('short frames', () => {
  const framesOf = (prepared: Drive['prepared'], axes: number): { share: (above: number) => number; mean: number } => {
    const frames = frameEnergies(toBlocks(prepared, 80), 1, 4, 80);
    const from = Math.ceil(5 / frames.stepHz);
    const to = Math.floor(78 / frames.stepHz);
    const values: number[] = [];
    frames.timeS.forEach((_, f) => {
      for (let k = from; k < to; k += 1) values.push(frames.energy[f * frames.bins + k]!);
    });
    return {
      share: (above) => values.filter((v) => v > above).length / values.length,
      mean: values.reduce((s, v) => s + v, 0) / values.length / axes,
    };
  };

  it('in noise hold energies that are gamma-distributed with the number of axes as shape', () => {
    for (const axes of [1, 3]) {
      const { share, mean } = framesOf(noiseRecording('pink', 60, RATE, axes, seededRandom(4)), axes);
      // What stands out of a bin's own median over time is taken down: a tenth at most is lost by it.
      expect(mean).toBeGreaterThan(0.87);
      expect(mean).toBeLessThan(1.03);
      // P(X > x): shape 1 at 3 is e⁻³ = 0.0498; shape 3 at 6.2958 is 0.05 (χ² tables: ½·12.5916 at six degrees).
      expect(share(axes === 1 ? 3 : 6.2958)).toBeGreaterThan(0.032);
      expect(share(axes === 1 ? 3 : 6.2958)).toBeLessThan(0.055);
    }
  });

  it('do not show what stands still, and show what moves where it is', () => {
    const shape: SpeedShape = { kind: 'drift', from: 0.8, to: 1.2 };
    const lines = [
      { frequencyHz: 30, amplitude: [1, 1] },
      { frequencyHz: 60, amplitude: [1, 1], follows: 0 as const },
    ];
    const { prepared, relative } = drive(shape, lines, 'white', 40, RATE, 2, seededRandom(6), 1);
    const frames = frameEnergies(toBlocks(prepared, 80), 1, 4, 80);
    let moving = 0;
    let still = 0;
    frames.timeS.forEach((t, f) => {
      const row = f * frames.bins;
      const at = relative[Math.round(t * RATE)]! * 30;
      moving += frames.energy[row + Math.round(at / frames.stepHz)]! / frames.timeS.length;
      still += frames.energy[row + Math.round(60 / frames.stepHz)]! / frames.timeS.length;
    });
    expect(moving).toBeGreaterThan(15);
    expect(still).toBeLessThan(4);
    expect(frames.hopS).toBeCloseTo(0.5, 12);
    expect(frames.timeS[0]).toBeCloseTo(0.5, 12);
  });
});
