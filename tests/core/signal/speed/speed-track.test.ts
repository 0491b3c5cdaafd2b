import { describe, expect, it } from 'vitest';
import { toBlocks } from '../../../../src/core/signal/prepare/blocks.ts';
import { findPeaks } from '../../../../src/core/signal/peaks/detect.ts';
import {
  relativeSpeedAt,
  resampleToEqualAngle,
  type SpeedTrack,
} from '../../../../src/core/signal/speed/equal-angle.ts';
import { findRamp, type FoundRamp } from '../../../../src/core/signal/speed/find-ramp.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { findRampTrack, findSpeedTrack, type FoundTrack } from '../../../../src/core/signal/speed/speed-track.ts';
import { drive, type Drive, type SpeedShape } from '../../../support/drive.ts';
import { noiseRecording, type NoiseColour } from '../../../support/noise.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 200;
const WHEEL_HZ = 13.7;
/** Wheel and driveshaft, and a hum that stands still. */
const LINES = [
  { frequencyHz: WHEEL_HZ, amplitude: [0.05, 0.08] },
  { frequencyHz: 3.73 * WHEEL_HZ, amplitude: [0.15, 0.05] },
  { frequencyHz: 61.32, amplitude: [0.03, 0.06], follows: 0 as const },
];
const OPTIONS = { multiples: [1, 2, 3, 3.73, 7.46], baseHz: 13.5 };
/** As the diagnosis does: from the ramp where there is one. */
const found = (prepared: Prepared): FoundTrack & { ramp: FoundRamp | null } => {
  const ramp = findRampTrack(prepared, OPTIONS);
  return { ...findSpeedTrack(prepared, ramp ? { start: ramp.track } : {}), ramp };
};
const made = (shape: SpeedShape, seed: number): Drive => drive(shape, LINES, 'white', 40, RATE, 2, seededRandom(seed));

function trackErrors(track: SpeedTrack, { relative }: Drive): { rms: number; mean: number; worst: number } {
  const ratios = Array.from(
    { length: Math.floor(relative.length / 20) },
    (_, i) => relativeSpeedAt(track, (20 * i) / RATE) / relative[20 * i]!,
  );
  const mean = ratios.reduce((s, v) => s + v, 0) / ratios.length;
  const off = ratios.map((v) => Math.abs(v / mean - 1));
  return { rms: Math.sqrt(off.reduce((s, v) => s + v * v, 0) / off.length), mean, worst: Math.max(...off) };
}

/** The order spectrum along a found track: number within 0.2 %, amplitude within 5 % of the truth. */
function ordersAreRight({ prepared }: Drive, track: SpeedTrack): void {
  const peaks = findPeaks(resampleToEqualAngle(prepared, track), { lowestHz: 4, highestHz: 75 });
  for (const [hz, amplitude] of [
    [WHEEL_HZ, Math.hypot(0.05, 0.08)],
    [3.73 * WHEEL_HZ, Math.hypot(0.15, 0.05)],
  ] as const) {
    const peak = peaks.find((p) => Math.abs(p.frequencyHz / hz - 1) < 0.002);
    expect(peak, `an order at ${hz} Hz among ${peaks.map((p) => p.frequencyHz.toFixed(3)).join(', ')}`).toBeDefined();
    expect(Math.abs(peak!.amplitudeMps2 / amplitude - 1)).toBeLessThan(0.05 + (2 * peak!.amplitudeSdMps2) / amplitude);
  }
}

describe('the speed found in the recording itself', () => {
  it.each([
    ['a drift of ±2 %', { kind: 'drift', from: 0.98, to: 1.02 }, 1],
    ['a wander of 1 %', { kind: 'wander', sd: 0.01, timeS: 6 }, 1],
    ['a wander of 1 %, other noise', { kind: 'wander', sd: 0.01, timeS: 6 }, 2],
  ] as const)('%s: to a part in 1000, orders and amplitudes right', (_, shape, seed) => {
    const d = made(shape, seed);
    const { track, moved, logRatio } = found(d.prepared);
    expect(moved).toBe(true);
    const { rms, mean, worst } = trackErrors(track, d);
    expect(rms).toBeLessThan(1e-3);
    expect(worst).toBeLessThan(5e-3);
    expect(Math.abs(mean - 1)).toBeLessThan(1e-3);
    expect(logRatio).toBeGreaterThan(100);
    ordersAreRight(d, track);
  });

  it.each([
    ['a pull-up from 0.8 to 1.2', { kind: 'ease', from: 0.8, to: 1.2 }, 1],
    ['a coast-down from 1.2 to 0.8', { kind: 'drift', from: 1.2, to: 0.8 }, 2],
  ] as const)('%s is a ramp, the speed to 2 in 1000, orders and amplitudes right', (_, shape, seed) => {
    const d = made(shape, seed);
    const { track, ramp } = found(d.prepared);
    expect(ramp?.logRatio).toBeGreaterThan(50);
    // The coarse path goes in states of a quarter percent; smoothed, it has corners of half of one at the most.
    const coarse = ramp!.track.relative;
    for (let k = 1; k + 1 < coarse.length; k += 1) {
      expect(Math.abs(Math.log((coarse[k - 1]! * coarse[k + 1]!) / coarse[k]! ** 2))).toBeLessThan(1.25e-3);
    }
    const { rms, mean } = trackErrors(track, d);
    expect(rms).toBeLessThan(2e-3);
    expect(Math.abs(mean - 1)).toBeLessThan(2e-3);
    ordersAreRight(d, track);
  });

  it('a steady drive is called steady, though loud lines stand in it', () => {
    for (let seed = 1; seed <= 4; seed += 1) {
      expect(found(made({ kind: 'steady' }, seed).prepared)).toMatchObject({
        moved: false,
        track: { timeS: Float64Array.of(0), relative: Float64Array.of(1) },
        ramp: null,
      });
    }
  });

  it.each(['white', 'pink', 'resonance', 'many resonances', 'hump'] as NoiseColour[])(
    '%s noise moves nothing',
    (colour) => {
      for (const seed of [1, 2]) {
        const { moved, ramp } = found(noiseRecording(colour, 30, RATE, 2, seededRandom(seed)));
        expect([moved, ramp]).toEqual([false, null]);
      }
    },
  );

  it('starts from a log where there is one, and mends its error', () => {
    const d = made({ kind: 'ease', from: 0.8, to: 1.2 }, 3);
    // One reading a second, late by half a second, rounded to 1 km/h of 100, smoothed over five.
    const timeS = Float64Array.from({ length: 41 }, (_, i) => i);
    const at = (t: number): number =>
      d.relative[Math.min(d.relative.length - 1, Math.max(0, Math.round((t - 0.5) * RATE)))]!;
    const rounded = timeS.map((t) => Math.round(100 * at(t)) / 100);
    const log = {
      timeS,
      relative: rounded.map((_, i) => {
        const near = rounded.slice(Math.max(0, i - 2), i + 3);
        return near.reduce((sum, v) => sum + v, 0) / near.length;
      }),
    };
    const before = trackErrors(log, d);
    const { track, moved } = findSpeedTrack(d.prepared, { start: log, startError: 0.03 });
    expect(moved).toBe(true);
    expect(trackErrors(track, d).rms).toBeLessThan(before.rms / 3);
    expect(Math.abs(trackErrors(track, d).mean - 1)).toBeLessThan(2e-3);
  });

  it('too little to go by is steady', () => {
    const d = made({ kind: 'ease', from: 0.8, to: 1.2 }, 3);
    const narrow = { ...OPTIONS, lowestHz: 50, highestHz: 60 };
    expect([findSpeedTrack(d.prepared, narrow).moved, findRampTrack(d.prepared, narrow)]).toEqual([false, null]);
    const empty = { ...d.prepared, pieces: [] };
    expect([findSpeedTrack(empty).moved, findRampTrack(empty, OPTIONS)]).toEqual([false, null]);
  });
});

describe('a ramp found blind', () => {
  const search = { multiples: OPTIONS.multiples, lowestBaseHz: 8, highestBaseHz: 23, highestHz: 80 };

  it('gives the base frequency itself, within a step of 0.25 % or two', () => {
    const d = made({ kind: 'ease', from: 0.8, to: 1.2 }, 4);
    const ramp = findRamp(toBlocks(d.prepared, 80), search)!;
    let worst = 0;
    ramp.track.timeS.forEach((t, i) => {
      worst = Math.max(worst, Math.abs(ramp.track.relative[i]! / (WHEEL_HZ * d.relative[Math.round(t * RATE)]!) - 1));
    });
    expect(worst).toBeLessThan(0.015);
    expect(ramp.logRatio).toBeGreaterThan(50);
  });

  it('counts a line once, however many multiples lie on it, and looks at the lowest too', () => {
    const blocks = toBlocks(made({ kind: 'ease', from: 0.8, to: 1.2 }, 4).prepared, 80);
    const once = findRamp(blocks, { ...search, multiples: [3.73] })!;
    expect(findRamp(blocks, { ...search, multiples: [3.77, 3.73, 3.75] })!.logRatio).toBe(once.logRatio);
    const both = findRamp(blocks, { ...search, multiples: [1, 3.73] })!;
    expect(both.logRatio).toBeGreaterThan(once.logRatio + 20);
  });

  it('in noise reaches a log ratio of 6 hardly ever (Ville’s inequality: once in 400)', () => {
    for (let seed = 1; seed <= 4; seed += 1) {
      const ramp = findRamp(toBlocks(noiseRecording('pink', 30, RATE, 2, seededRandom(30 + seed)), 80), search);
      expect(ramp!.logRatio).toBeLessThan(6);
    }
  });

  it('is looked for about the base that is given', () => {
    const d = made({ kind: 'ease', from: 0.8, to: 1.2 }, 4);
    expect(findRampTrack(d.prepared, OPTIONS)).not.toBeNull();
    expect(findRampTrack(d.prepared, { ...OPTIONS, baseHz: 150 })).toBeNull();
  });
});
