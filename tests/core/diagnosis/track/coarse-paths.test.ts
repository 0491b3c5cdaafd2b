import { describe, expect, it } from 'vitest';
import { coarsePaths, singleSweeps } from '../../../../src/core/diagnosis/track/coarse-paths.ts';
import { sharpness } from '../../../../src/core/diagnosis/track/sharpness.ts';
import type { TrackSearch } from '../../../../src/core/diagnosis/track/track-search.ts';
import { relativeSpeedAt, type SpeedTrack } from '../../../../src/core/signal/speed/equal-angle.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 125;
const SECONDS = 60;
const WHEEL_HZ = 10;

const search: TrackSearch = {
  baseHz: WHEEL_HZ,
  multiples: [1, 2, 3, 4.1, 1.7, 2.5],
  tiedMultiples: null,
  logPrior: (scale) => -0.5 * (scale / 0.03) ** 2,
  imageFactors: () => [],
  wasSwept: false,
  logged: null,
  engineLogged: null,
  highLinesHz: [],
  highFiringHz: [],
};

/** Orders of the wheel at the given amplitudes, m/s², turned `turnedAt` s at mean speed, in white noise on three axes. */
function recording(orders: readonly (readonly [number, number])[], turnedAt: (t: number) => number): Prepared {
  const { normal } = seededRandom(29);
  const axes = [0.4, 0.6, 1].map((share) =>
    Float64Array.from({ length: RATE * SECONDS }, (_, i) => {
      const angle = 2 * Math.PI * WHEEL_HZ * turnedAt(i / RATE);
      return share * orders.reduce((sum, [order, a]) => sum + a * Math.cos(order * angle + order), 0) + 0.1 * normal();
    }),
  );
  return { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes }] };
}

const TIMES = Array.from({ length: SECONDS - 7 }, (_, i) => 4 + i);

/** Root mean square of what the nearest track is off the truth, each as a share of its mean. */
const nearest = (tracks: readonly SpeedTrack[], truth: (t: number) => number): number =>
  Math.min(
    ...tracks.map((track) => {
      const ratios = TIMES.map((t) => relativeSpeedAt(track, t) / truth(t));
      const mean = ratios.reduce((sum, r) => sum + r, 0) / ratios.length;
      return Math.sqrt(ratios.reduce((sum, r) => sum + (r / mean - 1) ** 2, 0) / ratios.length);
    }),
  );

const pathsOf = (prepared: Prepared): readonly SpeedTrack[] => coarsePaths(prepared, search, sharpness(prepared, RATE));

describe('coarse paths', () => {
  it('follow faint orders through a sweep so slow that a cruise’s long segments show it, where shorter ones do not', () => {
    const [from, to] = [0.9, 1.1];
    const turnedAt = (t: number): number => from * t + ((to - from) * t * t) / (2 * SECONDS);
    const amplitude = 0.015;
    const prepared = recording(
      [1, 2, 4.1].map((order) => [order, amplitude]),
      turnedAt,
    );
    // In segments of half the length the same orders are followed elsewhere: 2 % off.
    expect(nearest(pathsOf(prepared), (t) => from + ((to - from) * t) / SECONDS)).toBeLessThan(2e-3);
  });

  it('along single lines follow one faint order through a sweep, past a hum that stands in its way all the time', () => {
    const [from, to] = [0.85, 1.15];
    const turnedAt = (t: number): number => from * t + ((to - from) * t * t) / (2 * SECONDS);
    const swept = recording([[1, 0.035]], turnedAt);
    const hummed = {
      ...swept,
      pieces: swept.pieces.map(({ startS, axes }) => ({
        startS,
        axes: axes.map((axis) => axis.map((v, i) => v + 0.1 * Math.cos((2 * Math.PI * 10.3 * i) / RATE))),
      })),
    };
    const at = (t: number): number => from + ((to - from) * t) / SECONDS;
    expect(nearest(singleSweeps(hummed, search), at)).toBeLessThan(5e-3);
    expect(singleSweeps(hummed, { ...search, baseHz: null })).toEqual([]);
  });

  it('are none where no speed is told and no tone stands out, or the recording is shorter than a segment', () => {
    const prepared = recording([[4.1, 0.05]], (t) => t);
    expect(coarsePaths(prepared, { ...search, baseHz: null }, [])).toEqual([]);
    const short = {
      ...prepared,
      durationS: 3,
      pieces: prepared.pieces.map(({ startS, axes }) => ({
        startS,
        axes: axes.map((axis) => axis.slice(0, 3 * RATE)),
      })),
    };
    expect(coarsePaths(short, search, [])).toEqual([]);
  });
});
