import { describe, expect, it } from 'vitest';
import { findTracks } from '../../../../src/core/diagnosis/track/find-tracks.ts';
import type { TrackSearch } from '../../../../src/core/diagnosis/track/track-search.ts';
import { relativeSpeedAt, type SpeedTrack } from '../../../../src/core/signal/speed/equal-angle.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';
import { swayingSpeed } from '../../../support/swaying-speed.ts';

const RATE = 125;
const SECONDS = 60;
/** The engine's firing order, above half the rate, and a line of the driveshaft: both go as the speed does. */
const FIRING_HZ = 150;
const SHAFT_HZ = 41;
const speed = swayingSpeed([{ depth: 0.012, periodS: 47 }]);

/** @param line of a time, before it is sampled */
const sampled = (line: (t: number) => number, rate: number, noise = 0.05): Prepared => {
  const { normal } = seededRandom(11);
  const axes = [0.4, 0.6, 1].map((share) =>
    Float64Array.from({ length: rate * SECONDS }, (_, i) => share * line(i / rate) + noise * normal()),
  );
  return { samplingRateHz: rate, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes }] };
};

const recording = (firing: number, shaft: number): Prepared =>
  sampled((t) => {
    const turned = 2 * Math.PI * speed.turnedAt(t);
    return firing * Math.cos(FIRING_HZ * turned) + shaft * Math.cos(SHAFT_HZ * turned);
  }, RATE);

/** 150 Hz at 125 a second shows at 25 Hz and moves six times as much of its own: the vehicle's speed is its sixth. */
const search: TrackSearch = {
  baseHz: 10,
  multiples: [1, 2, 4.1],
  tiedMultiples: null,
  logPrior: (scale) => -0.5 * (scale / 0.03) ** 2,
  imageFactors: () => [(FIRING_HZ - RATE) / FIRING_HZ],
  wasSwept: false,
  logged: null,
  engineLogged: null,
  highLinesHz: [],
  highFiringHz: [],
};

/** Line above half the rate of a slow recording, alone, of a speed that a foot on the pedal moves: its image is at 11 Hz. */
const ALONE_HZ = 89;
const SLOW_RATE = 100;
const IMAGE_FACTOR = (ALONE_HZ - SLOW_RATE) / ALONE_HZ;
const unsteady = swayingSpeed([
  { depth: 0.008, periodS: 31 },
  { depth: 0.008, periodS: 9 },
]);

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
    expect(nearest(tracks, speed.at)).toBeLessThan(1e-3);
    expect(nearest(tracks, (t) => 1 + (FIRING_HZ / (FIRING_HZ - RATE)) * (speed.at(t) - 1))).toBeLessThan(5e-3);
  });

  it('is found by an image alone that moves faster, of its own, than any line of the vehicle does', () => {
    const alone = sampled((t) => 0.2 * Math.cos(2 * Math.PI * ALONE_HZ * unsteady.turnedAt(t)), SLOW_RATE, 0.1);
    const { tracks } = findTracks(alone, { ...search, imageFactors: () => [IMAGE_FACTOR] });
    // Closed form: the image moves by the line's own hertz, the other way; it must be told to a tenth of a hertz.
    const imageAt = (t: number): number => 1 + (unsteady.at(t) - 1) / IMAGE_FACTOR;
    expect(nearest(tracks, imageAt)).toBeLessThan(0.1 / (SLOW_RATE - ALONE_HZ));
  });

  it('is found by a weak line alone that a road covers on every axis of a turned sensor, but not in a quiet direction', () => {
    const { normal } = seededRandom(3);
    const count = RATE * SECONDS;
    const road = Float64Array.from({ length: count }, () => normal());
    // Over 60 s the line holds about as much as the road’s noise in a bin of any axis, and a thousand times the sensor’s own.
    const axes = [
      { ofRoad: 1, ofLine: 0.6 },
      { ofRoad: 0.8, ofLine: -0.8 },
      { ofRoad: -0.5, ofLine: 0.2 },
    ].map(({ ofRoad, ofLine }) =>
      road.map((shake, i) => {
        const turned = 2 * Math.PI * speed.turnedAt(i / RATE);
        return ofRoad * shake + ofLine * 0.025 * Math.cos(12 * turned) + 0.02 * normal();
      }),
    );
    const rough: Prepared = { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes }] };
    const { tracks } = findTracks(rough, { ...search, baseHz: 12, imageFactors: () => [] });
    expect(tracks).toHaveLength(1);
    // The speed sways by 1.2 percent.
    expect(nearest(tracks, speed.at)).toBeLessThan(3e-3);
  });

  it('is two histories, the engine’s and the road’s, where these slip against each other', () => {
    const engine = swayingSpeed([
      { depth: 0.012, periodS: 47 },
      { depth: 0.006, periodS: 13 },
    ]);
    const road = swayingSpeed([{ depth: 0.009, periodS: 29 }]);
    const slipping = sampled((t) => {
      const turned = 2 * Math.PI * engine.turnedAt(t);
      const rolled = 2 * Math.PI * road.turnedAt(t);
      return 0.5 * Math.cos(15.2 * turned) + 0.2 * Math.cos(30.4 * turned) + 0.3 * Math.cos(12 * rolled);
    }, RATE);
    const { tracks } = findTracks(slipping, {
      ...search,
      baseHz: 12,
      multiples: [1, 15.2 / 12],
      imageFactors: () => [-0.2],
    });
    expect(tracks).toHaveLength(2);
    expect(nearest(tracks, engine.at)).toBeLessThan(2e-3);
    expect(nearest(tracks, road.at)).toBeLessThan(2e-3);
  });

  it('of a run driven as a sweep is found by one faint line alone; of another run so much is not believed', () => {
    const sweep = (t: number): number => 0.8 + (0.4 * t) / SECONDS;
    const turnedAt = (t: number): number => 0.8 * t + (0.2 * t * t) / SECONDS;
    // A quarter of the noise’s standard deviation, on the loudest axis; of the other lines nothing is there.
    const faint = sampled((t) => 0.025 * Math.cos(2 * Math.PI * 10 * turnedAt(t)), RATE, 0.1);
    const multiples = [1, 2, 4.1, 1.7, 2.5, 3.3, 1.31, 2.17, 3.71, 1.13, 2.83, 5.2, 4.6, 5.7];
    const tracksOf = (wasSwept: boolean): readonly SpeedTrack[] =>
      findTracks(faint, { ...search, multiples, imageFactors: () => [], wasSwept }).tracks;
    expect(nearest(tracksOf(true), sweep)).toBeLessThan(1e-2);
    expect(tracksOf(false)).toEqual([]);
  });
});
