import { describe, expect, it } from 'vitest';
import { loudStretch } from '../../../../src/core/signal/spectra/loud-stretch.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 100;

/** Noise of a standard deviation that depends on the time. */
const noisy = (levelAt: (t: number) => number, seconds = 30, startS = 0): Prepared => {
  const { normal } = seededRandom(8);
  const axis = Float64Array.from({ length: seconds * RATE }, (_, i) => levelAt(startS + i / RATE) * normal());
  return { samplingRateHz: RATE, durationS: seconds, up: null, pieces: [{ startS, axes: [axis] }] };
};
const within =
  (fromS: number, toS: number) =>
  (t: number): number =>
    t >= fromS && t < toS ? 1 : 0.1;

describe('where it shakes', () => {
  it('is told to half a second', () => {
    expect(loudStretch(noisy(within(10, 17)))).toEqual({ fromS: 10, toS: 17 });
    expect(loudStretch(noisy(within(50, 57), 30, 40))).toEqual({ fromS: 50, toS: 57 });
  });

  it('is told of a faint recording as of a loud one', () => {
    expect(loudStretch(noisy((t) => 1e-3 * within(10, 17)(t)))).toEqual({ fromS: 10, toS: 17 });
  });

  it('goes on through one quiet half second', () => {
    expect(loudStretch(noisy((t) => (t >= 13 && t < 13.5 ? 0.1 : within(10, 17)(t))))).toEqual({ fromS: 10, toS: 17 });
  });

  it('is the stretch with more shake in all of two', () => {
    const two = (t: number): number => Math.max(within(2, 6)(t), within(12, 19)(t));
    expect(loudStretch(noisy(two))).toEqual({ fromS: 12, toS: 19 });
  });

  it('is as long as can be judged, and lies in the recording', () => {
    expect(loudStretch(noisy(within(10, 12), 12))).toEqual({ fromS: 8, toS: 12 });
    expect(loudStretch(noisy(within(0, 2), 12))).toEqual({ fromS: 0, toS: 4 });
  });

  it('is nowhere in a piece too short to be judged', () => {
    const short = noisy(() => 1, 3);
    const long = noisy(() => 0.1, 20, 10);
    expect(loudStretch({ ...long, durationS: 23, pieces: [...short.pieces, ...long.pieces] })).toBeNull();
  });

  it('is nowhere where it shakes as much all the time, or most of it, or twice as much', () => {
    expect(loudStretch(noisy(() => 1))).toBeNull();
    expect(loudStretch(noisy(within(2, 29)))).toBeNull();
    expect(loudStretch(noisy(within(2, 28)))).toBeNull();
    expect(loudStretch(noisy((t) => 0.5 + 0.5 * within(10, 17)(t)))).toBeNull();
    expect(loudStretch(noisy(within(1, 3), 4.5))).toBeNull();
  });
});
