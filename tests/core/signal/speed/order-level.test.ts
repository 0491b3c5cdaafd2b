import { describe, expect, it } from 'vitest';
import { blockScatter, levelOf, orderLevel } from '../../../../src/core/signal/speed/order-level.ts';
import { BLOCK_S, orderReadings } from '../../../../src/core/signal/speed/order-readings.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';

const RATE = 400;
const STEADY = { timeS: Float64Array.of(0), relative: Float64Array.of(1) };

/** Park–Miller and Box–Muller: enough for a test, and no library shares it. */
function normals(seed: number): () => number {
  let state = seed;
  const uniform = (): number => (state = (state * 16807) % 2147483647) / 2147483647;
  return () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
}

function prepared(seconds: number, axes: ((t: number) => number)[], noise: number, seed = 7): Prepared {
  const normal = normals(seed);
  const count = seconds * RATE;
  return {
    samplingRateHz: RATE,
    durationS: seconds,
    up: null,
    pieces: [
      {
        startS: 0,
        axes: axes.map((axis) => Float64Array.from({ length: count }, (_, i) => axis(i / RATE) + noise * normal())),
      },
    ],
  };
}

describe('the level of one order over a run', () => {
  it('reads a steady sine exactly, root-sum-square over the axes', () => {
    const tone = (a: number) => (t: number) => a * Math.sin(2 * Math.PI * 41.3 * t + 0.4);
    const level = orderLevel(prepared(60, [tone(0.3), tone(0.4)], 0), 41.3, STEADY)!;
    expect(level.amplitudeMps2).toBeCloseTo(0.5, 6);
  });

  it('is not read at 1 Hz or less, nor where the noise beside it would lie above half the rate', () => {
    const silent = prepared(20, [() => 0], 0.1);
    const isRead = (hz: number, relative = 1): boolean =>
      orderLevel(silent, hz, { timeS: Float64Array.of(0), relative: Float64Array.of(relative) }) !== null;
    expect([isRead(1), isRead(1.1)]).toEqual([false, true]);
    // Six bins of a quarter of a hertz above the order; half the rate is 200 Hz.
    expect([isRead(198.4), isRead(198.6)]).toEqual([true, false]);
    expect([isRead(99.2, 2), isRead(99.3, 2)]).toEqual([true, false]);
  });

  it('follows an order through a pull-up of 40 % without loss', () => {
    const seconds = 40;
    const relative = (t: number): number => 1 + (0.4 * t) / seconds;
    const phase = (t: number): number => 2 * Math.PI * 30 * (t + (0.2 * t * t) / seconds);
    const track = {
      timeS: Float64Array.from({ length: 81 }, (_, i) => i / 2),
      relative: Float64Array.from({ length: 81 }, (_, i) => relative(i / 2)),
    };
    const level = orderLevel(prepared(seconds, [(t) => 0.2 * Math.sin(phase(t))], 0.05), 30, track)!;
    expect(level.amplitudeMps2 / 0.2).toBeCloseTo(1, 1);
    expect(Math.abs(level.amplitudeMps2 / 0.2 - 1)).toBeLessThan(0.02);
  });

  it('takes the noise out, so that nothing reads as nothing on average', () => {
    const powers = Array.from({ length: 40 }, (_, k) =>
      orderLevel(prepared(30, [() => 0], 0.1, 7919 * (k + 11)), 50, STEADY)!,
    );
    const mean = powers.reduce((sum, { power }) => sum + power, 0) / powers.length;
    const noise = powers.reduce((sum, { noisePower }) => sum + noisePower, 0) / powers.length;
    // White noise σ: squared amplitude a Hann bin shows = 4σ²·1.5/N (Heinzel, Rüdiger, Schilling 2002, §9: ENBW 1.5 bins).
    expect(noise / ((4 * 0.01 * 1.5) / (4 * RATE))).toBeCloseTo(1, 1);
    expect(Math.abs(mean) / noise).toBeLessThan(0.1);
  });

  it('states an uncertainty that holds: two standard deviations cover the truth in about 19 of 20 runs', () => {
    let inside = 0;
    const runs = 60;
    for (let k = 0; k < runs; k += 1) {
      const level = orderLevel(
        prepared(60, [(t) => 0.05 * Math.sin(2 * Math.PI * 50 * t)], 0.2, 7919 * (100 + k)),
        50,
        STEADY,
      )!;
      if (Math.abs(level.power - 0.0025) < 2 * level.powerSd) inside += 1;
    }
    expect(inside / runs).toBeGreaterThan(0.85);
  });

  it.each([
    ['apart on each axis', [0, 1, 2]],
    ['one motion on all three', [0, 0, 0]],
    ['the same on two', [0, 0, 1]],
  ])('knows how noise scatters the blocks, %s: the plain variance of many', (_, sources) => {
    const seconds = 1200;
    const noises = [0, 1, 2].map((k) => {
      const normal = normals(7919 * (k + 3));
      return Float64Array.from({ length: seconds * RATE }, () => 0.2 * normal());
    });
    const tone = [0.03, 0.02, 0.01];
    const axes = tone.map((a, k) =>
      noises[sources[k]!]!.map((noise, i) => noise + a * Math.sin((2 * Math.PI * 50 * i) / RATE)),
    );
    const made: Prepared = { samplingRateHz: RATE, durationS: seconds, up: null, pieces: [{ startS: 0, axes }] };
    const level = orderLevel(made, 50, STEADY)!;
    const mean = level.blockPowers.reduce((sum, p) => sum + p, 0) / level.blocks;
    const variance = level.blockPowers.reduce((sum, p) => sum + (p - mean) ** 2, 0) / (level.blocks - 1);
    expect(Math.abs(blockScatter(level) / variance - 1)).toBeLessThan(0.25);
  });

  it('is read plainly or closely: the rest of the lobe and blocks of 16 s are read for a comparison alone', () => {
    const run = prepared(40, [() => 0], 0.1);
    const [plain, close] = [false, true].map((closely) => orderReadings(run, 50, STEADY, BLOCK_S, closely)!);
    // 40 s: 19 blocks of 4 s and 4 of 16 s, each begun at half of the one before.
    expect([plain!.blocks.length, plain!.longBlocks.length, plain!.blocks[0]!.powers.length]).toEqual([19, 0, 7]);
    expect([close!.blocks.length, close!.longBlocks.length, close!.blocks[0]!.powers.length]).toEqual([19, 4, 11]);
    expect(levelOf(plain!).nearNoisePower).toBeNull();
    // White noise is the same near and far: 24 readings each.
    expect(levelOf(close!).nearNoisePower! / levelOf(close!).noisePower).toBeGreaterThan(0.5);
    expect(levelOf(close!).nearNoisePower! / levelOf(close!).noisePower).toBeLessThan(2);
    const short = orderReadings(prepared(12, [() => 0], 0.1), 50, STEADY, BLOCK_S, true)!;
    expect([short.blocks.length, short.longBlocks.length]).toEqual([5, 0]);
  });

  it('loses nothing of an order that stands beside its track where the whole lobe is read', () => {
    // 0.1 Hz is 0.4 bins of a block: a Hann window loses 0.91 dB there (Harris 1978: 1.42 dB at half a bin).
    const beside = prepared(60, [(t) => 0.3 * Math.sin(2 * Math.PI * 50.1 * t)], 0.01);
    const readings = orderReadings(beside, 50, STEADY, BLOCK_S, true)!;
    expect(20 * Math.log10(levelOf(readings).amplitudeMps2 / 0.3)).toBeCloseTo(-0.91, 1);
    expect(levelOf(readings, { wholeLobe: true }).amplitudeMps2 / 0.3).toBeCloseTo(1, 3);
  });

  it('knows how noise scatters the whole lobe, and takes it out', () => {
    const level = levelOf(
      orderReadings(
        prepared(1200, [(t) => 0.06 * Math.sin(2 * Math.PI * 50 * t), () => 0], 0.2),
        50,
        STEADY,
        BLOCK_S,
        true,
      )!,
      { wholeLobe: true },
    );
    const mean = level.blockPowers.reduce((sum, p) => sum + p, 0) / level.blocks;
    const variance = level.blockPowers.reduce((sum, p) => sum + (p - mean) ** 2, 0) / (level.blocks - 1);
    expect(Math.abs(blockScatter(level) / variance - 1)).toBeLessThan(0.25);
    expect(level.amplitudeMps2 / 0.06).toBeCloseTo(1, 1);
  });

  it('does not take a strong neighbouring line for noise', () => {
    const both = (t: number): number => 0.05 * Math.sin(2 * Math.PI * 50 * t) + Math.sin(2 * Math.PI * 51 * t);
    const level = orderLevel(prepared(60, [both], 0.02), 50, STEADY)!;
    expect(Math.abs(level.amplitudeMps2 / 0.05 - 1)).toBeLessThan(0.1);
  });

  it('declines where the order cannot be in the recording', () => {
    expect(orderLevel(prepared(60, [() => 0], 0.1), 250, STEADY)).toBeNull();
    expect(orderLevel(prepared(4, [() => 0], 0.1), 50, STEADY)).toBeNull();
  });
});
