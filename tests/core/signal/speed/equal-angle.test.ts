import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { composeTracks, inverseTrack, withUnitMean } from '../../../../src/core/signal/speed/combine-tracks.ts';
import { findPeaks } from '../../../../src/core/signal/peaks/detect.ts';
import {
  referenceClock,
  relativeSpeedAt,
  resampleToEqualAngle,
  STEADY,
  type SpeedTrack,
} from '../../../../src/core/signal/speed/equal-angle.ts';
import { normals, preparedOf, samples, tone } from '../made.ts';

const RATE = 200;
const trackOf = (timeS: readonly number[], relative: readonly number[]): SpeedTrack => ({
  timeS: Float64Array.from(timeS),
  relative: Float64Array.from(relative),
});

/** Tracks of two to six knots, half to double the reference speed. */
const tracks = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 90 }), fc.integer({ min: 50, max: 200 })), { minLength: 2, maxLength: 6 })
  .map((steps) => {
    let t = 1;
    const timeS = steps.map(([step]) => (t += step / 10));
    return trackOf(
      timeS,
      steps.map(([, r]) => r / 100),
    );
  });

describe('the reference clock', () => {
  it('worked by hand: from 1 to 2 over 10 s is 15 s of turning, a parabola between', () => {
    const { fromClock, toClock } = referenceClock(trackOf([5, 15], [1, 2]));
    expect([3, 5, 10, 15, 17].map(fromClock)).toEqual([3, 5, 5 + 5 + 1.25, 20, 24]);
    expect([3, 5, 11.25, 20, 24].map(toClock)).toEqual([3, 5, 10, 15, 17]);
  });

  // K. R. Fyfe & E. D. S. Munck, MSSP 11(2), 1997: θ = b₁t + b₂t² through three pulses. Pulses 0, 0.10, 0.19 s, one a
  // turn: b₁ 59.1574757, b₂ 36.7437737 rad; times of ¼, ½, ¾, 1, 1¼, 1½ turns worked from them.
  it('agrees with the parabola through three shaft pulses', () => {
    const [b1, b2] = [59.1574757, 36.7437737];
    const speed = (t: number): number => (b1 + 2 * b2 * t) / (2 * Math.PI);
    const { toClock } = referenceClock(trackOf([0, 0.2], [speed(0), speed(0.2)]));
    const known = [0.0261287506, 0.0514607405, 0.0760646968, 0.1, 0.1233183721, 0.1460651923];
    known.forEach((t, i) => expect(toClock(0.25 * (i + 1))).toBeCloseTo(t, 8));
  });

  it('there and back is where it was, on any track and beyond its ends', () => {
    fc.assert(
      fc.property(tracks, fc.integer({ min: -100, max: 700 }), (track, tenth) => {
        const { fromClock, toClock } = referenceClock(track);
        expect(toClock(fromClock(tenth / 10))).toBeCloseTo(tenth / 10, 8);
        // The slope is the relative speed.
        const slope = (fromClock(tenth / 10 + 1e-5) - fromClock(tenth / 10 - 1e-5)) / 2e-5;
        expect(slope).toBeCloseTo(relativeSpeedAt(track, tenth / 10), 3);
      }),
      { numRuns: 300, seed: 8 },
    );
    const { fromClock, toClock } = referenceClock(STEADY);
    expect([fromClock(7), toClock(7)]).toEqual([7, 7]);
  });
});

describe('resampling to equal angle', () => {
  /** 18 Hz at relative speed 1, pulled up from 0.7 to 1.3 over 40 s. */
  const pull = trackOf([0, 40], [0.7, 1.3]);
  const turnedAt = (t: number): number => 0.7 * t + (0.6 / 80) * t * t;

  it('makes a pull-up over a factor of 1.86 a line at its order: number within 0.2 %, amplitude within 5 %', () => {
    const normal = normals(3);
    const made = samples(
      40 * RATE,
      RATE,
      (t) =>
        0.5 * Math.cos(2 * Math.PI * 18 * turnedAt(t) + 1) +
        0.2 * Math.cos(2 * Math.PI * 45 * turnedAt(t)) +
        0.1 * normal(),
    );
    const even = resampleToEqualAngle(preparedOf([made], RATE), pull);
    const peaks = findPeaks(even, { highestHz: 60 });
    expect(peaks.length).toBe(2);
    expect(Math.abs(peaks[0]!.frequencyHz / 18 - 1)).toBeLessThan(0.002);
    expect(Math.abs(peaks[1]!.frequencyHz / 45 - 1)).toBeLessThan(0.002);
    // The order between the two is known far better still.
    expect(peaks[1]!.frequencyHz / peaks[0]!.frequencyHz).toBeCloseTo(2.5, 3);
    expect(Math.abs(peaks[0]!.amplitudeMps2 / 0.5 - 1)).toBeLessThan(0.05);
    expect(Math.abs(peaks[1]!.amplitudeMps2 / 0.2 - 1)).toBeLessThan(0.05);
    expect(peaks[0]!.limitWidthHz).toBeLessThan(0.04);
  });

  it('gives sample for sample what the motion is at equal angles, at a rate that loses nothing', () => {
    const made = samples(40 * RATE, RATE, (t) => Math.cos(2 * Math.PI * 18 * turnedAt(t)));
    const even = resampleToEqualAngle(preparedOf([made], RATE), pull);
    expect(even.samplingRateHz).toBeCloseTo(RATE / 0.7, 9);
    expect(even.durationS).toBeCloseTo(40, 1);
    const { startS, axes } = even.pieces[0]!;
    let worst = 0;
    for (let i = 50; i < axes[0]!.length - 50; i += 1) {
      worst = Math.max(worst, Math.abs(axes[0]![i]! - Math.cos(2 * Math.PI * 18 * (startS + i / even.samplingRateHz))));
    }
    expect(worst).toBeLessThan(1e-3);
  });

  it('undone by the inverse track, the signal is what it was', () => {
    const made = samples(20 * RATE, RATE, (t) => tone(0.5, 21, 0.3)(t) + tone(0.3, 37)(t));
    // Half a second between knots would leave 3 ms: what is straight on one clock is not on the other.
    const timeS = Array.from({ length: 401 }, (_, i) => i / 20);
    const wavy = trackOf(
      timeS,
      timeS.map((t) => 1 + 0.2 * Math.sin(t / 2)),
    );
    const there = resampleToEqualAngle(preparedOf([made], RATE), wavy);
    const back = resampleToEqualAngle(there, inverseTrack(wavy));
    const { startS, axes } = back.pieces[0]!;
    let worst = 0;
    for (let i = 100; i < axes[0]!.length - 100; i += 1) {
      const t = startS + i / back.samplingRateHz;
      worst = Math.max(worst, Math.abs(axes[0]![i]! - tone(0.5, 21, 0.3)(t) - tone(0.3, 37)(t)));
    }
    expect(worst).toBeLessThan(0.02);
  });

  it('keeps pieces apart, and a steady track changes nothing', () => {
    const piece = (startS: number, n: number): { startS: number; axes: Float64Array[] } => ({
      startS,
      axes: [samples(n, RATE, (t) => Math.cos(2 * Math.PI * 18 * turnedAt(startS + t)))],
    });
    const made = { samplingRateHz: RATE, durationS: 15, pieces: [piece(2, 1000), piece(20, 2000)], up: [0, 0, 1] };
    const even = resampleToEqualAngle(made, pull);
    expect(even.pieces.map((p) => p.startS)).toEqual([turnedAt(2), turnedAt(20)].map((t) => expect.closeTo(t, 9)));
    const { startS, axes } = even.pieces[1]!;
    const i = 700;
    expect(axes[0]![i]).toBeCloseTo(Math.cos(2 * Math.PI * 18 * (startS + i / even.samplingRateHz)), 3);
    expect(even.up).toEqual([0, 0, 1]);
    const same = resampleToEqualAngle(made, STEADY);
    expect(same.samplingRateHz).toBe(RATE);
    same.pieces[0]!.axes[0]!.forEach((v, k) => expect(v).toBeCloseTo(made.pieces[0]!.axes[0]![k]!, 6));
  });
});

describe('tracks put together', () => {
  it('a track and its inverse make a steady one', () => {
    fc.assert(
      fc.property(tracks, (track) => {
        const both = composeTracks(track, inverseTrack(track));
        both.relative.forEach((r) => expect(r).toBeCloseTo(1, 9));
      }),
      { numRuns: 60, seed: 9 },
    );
  });

  it('one on the other’s clock: reference time is the one clock read by the other', () => {
    const outer = trackOf([0, 10, 20], [0.8, 1.2, 1]);
    const inner = trackOf([0, 5, 30], [1.1, 0.9, 1]);
    // Straight lines of speed multiply to parabolas: knots every 0.1 s keep the composed track near them.
    const fine = (track: SpeedTrack): SpeedTrack => {
      const timeS = Array.from({ length: 301 }, (_, i) => i / 10);
      return trackOf(
        timeS,
        timeS.map((t) => relativeSpeedAt(track, t)),
      );
    };
    const both = referenceClock(composeTracks(fine(outer), fine(inner)));
    const [a, b] = [referenceClock(outer), referenceClock(inner)];
    for (const t of [1, 4.3, 9, 15.5, 20]) expect(both.fromClock(t)).toBeCloseTo(b.fromClock(a.fromClock(t)), 3);
  });

  it('a mean of one over the pieces, gaps left out', () => {
    const made = {
      ...{ samplingRateHz: 10, durationS: 20, up: null },
      pieces: [0, 30].map((startS) => ({ startS, axes: [new Float64Array(100)] })),
    };
    // 0 … 10 s at 2 rising to 3, 30 … 40 s at 5: mean (2.5 + 5)/2.
    const track = withUnitMean(trackOf([0, 10, 30, 40], [2, 3, 5, 5]), made);
    expect(Array.from(track.relative)).toEqual([2, 3, 5, 5].map((r) => expect.closeTo(r / 3.75, 12)));
    expect(Array.from(track.timeS)).toEqual([0, 10, 30, 40]);
  });
});
