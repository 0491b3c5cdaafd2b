import { describe, expect, it } from 'vitest';
import { findTracks } from '../../../../src/core/diagnosis/track/find-tracks.ts';
import type { TrackSearch } from '../../../../src/core/diagnosis/track/track-search.ts';
import { relativeSpeedAt, type SpeedTrack } from '../../../../src/core/signal/speed/equal-angle.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 125;
const SECONDS = 60;
/** The engine's firing order, above half the rate, and a line of the driveshaft: both go as the speed does. */
const FIRING_HZ = 150;
const SHAFT_HZ = 41;
const DEPTH = 0.012;
const PERIOD_S = 47;

const speedAt = (t: number): number => 1 + DEPTH * Math.sin((2 * Math.PI * t) / PERIOD_S);
/** ∫ of the speed: the phase of an order in closed form. */
const turnedAt = (t: number): number =>
  t + ((DEPTH * PERIOD_S) / (2 * Math.PI)) * (1 - Math.cos((2 * Math.PI * t) / PERIOD_S));

const recording = (firing: number, shaft: number): Prepared => {
  const { normal } = seededRandom(11);
  const axes = [0.4, 0.6, 1].map((share) =>
    Float64Array.from({ length: RATE * SECONDS }, (_, i) => {
      const turned = 2 * Math.PI * turnedAt(i / RATE);
      return share * (firing * Math.cos(FIRING_HZ * turned) + shaft * Math.cos(SHAFT_HZ * turned)) + 0.05 * normal();
    }),
  );
  return { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes }] };
};

/** 150 Hz at 125 a second shows at 25 Hz and moves six times as much of its own: the vehicle's speed is its sixth. */
const search: TrackSearch = {
  baseHz: 10,
  multiples: [1, 2, 4.1],
  tiedMultiples: null,
  logPrior: (scale) => -0.5 * (scale / 0.03) ** 2,
  imageFactors: () => [(FIRING_HZ - RATE) / FIRING_HZ],
  logged: null,
  engineLogged: null,
  highLinesHz: [],
  highFiringHz: [],
};

const overMean = (values: readonly number[]): readonly number[] => {
  const mean = values.reduce((sum, v) => sum + v, 0) / values.length;
  return values.map((v) => v / mean);
};

const TIMES = Array.from({ length: 2 * SECONDS - 7 }, (_, i) => 2 + i / 2);
/** Greatest difference of the track that comes nearest, as shares of the mean. */
const nearest = (tracks: readonly SpeedTrack[], truth: (t: number) => number): number =>
  Math.min(
    ...tracks.map((track) => {
      const found = overMean(TIMES.map((t) => relativeSpeedAt(track, t)));
      return Math.max(...overMean(TIMES.map(truth)).map((value, i) => Math.abs(found[i]! - value)));
    }),
  );

describe('the history of the speed', () => {
  it('is found by an image that wanders over hertz beside faint lines of the vehicle, and so is the image’s own', () => {
    const { tracks } = findTracks(recording(0.3, 0.02), search);
    // Closed forms: of the speed to a part in 1000, of the image to an eighth of a hertz in its three.
    expect(nearest(tracks, speedAt)).toBeLessThan(1e-3);
    expect(nearest(tracks, (t) => 1 + (FIRING_HZ / (FIRING_HZ - RATE)) * (speedAt(t) - 1))).toBeLessThan(5e-3);
  });
});
