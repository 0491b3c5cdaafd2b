import { describe, expect, it } from 'vitest';
import { findTracks } from '../../../../src/core/diagnosis/track/find-tracks.ts';
import type { TrackSearch } from '../../../../src/core/diagnosis/track/track-search.ts';
import { relativeSpeedAt, type SpeedTrack } from '../../../../src/core/signal/speed/equal-angle.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 1500;
const SECONDS = 20;
const MESH_HZ = 427;
const SHAFT_HZ = 38.8;

/** ln of a speed that swings, and the turns of a line under it, in closed form to first order of the depth. */
interface Swing {
  readonly depth: number;
  readonly periodS: number;
}
const ROAD: Swing = { depth: 0.006, periodS: 14 };
const OTHER: Swing = { depth: 0.008, periodS: 9 };
const omega = ({ periodS }: Swing): number => (2 * Math.PI) / periodS;
const speedAt = (swing: Swing, t: number): number => 1 + swing.depth * Math.sin(omega(swing) * t);
const turnedAt = (swing: Swing, t: number): number =>
  t + (swing.depth / omega(swing)) * (1 - Math.cos(omega(swing) * t));

interface Tone {
  readonly hz: number;
  readonly amplitude: number;
  readonly swing: Swing;
}

const recording = (tones: readonly Tone[]): Prepared => {
  const { normal } = seededRandom(5);
  const axes = [0.4, 0.6, 1].map((share) =>
    Float64Array.from({ length: RATE * SECONDS }, (_, i) =>
      tones.reduce(
        (sum, { hz, amplitude, swing }) =>
          sum + share * amplitude * Math.cos(2 * Math.PI * hz * turnedAt(swing, i / RATE)),
        0.1 * normal(),
      ),
    ),
  );
  return { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes }] };
};

const search = (highLinesHz: readonly number[], highFiringHz: readonly number[] = []): TrackSearch => ({
  baseHz: 10.4,
  multiples: [1, 2, 3.73, 7.46],
  tiedMultiples: null,
  highLinesHz,
  highFiringHz,
  logPrior: (scale) => -0.5 * (scale / 0.03) ** 2,
  imageFactors: () => [],
  wasSwept: false,
  logged: null,
  engineLogged: null,
});

/** Root mean square of ln(track over speed), both over their own means. */
const errorOf = (track: SpeedTrack, swing: Swing): number => {
  const ratios = Array.from({ length: 181 }, (_, k) => {
    const t = 1 + k / 10;
    return Math.log(relativeSpeedAt(track, t) / speedAt(swing, t));
  });
  const mean = ratios.reduce((sum, r) => sum + r, 0) / ratios.length;
  return Math.sqrt(ratios.reduce((sum, r) => sum + (r - mean) ** 2, 0) / ratios.length);
};

describe('lines above the band in which the speed is looked for', () => {
  const whine = recording([{ hz: MESH_HZ, amplitude: 0.1, swing: ROAD }]);

  it('tell the speed where nothing below shows it', () => {
    expect(findTracks(whine, search([])).tracks).toEqual([]);
    const [track] = findTracks(whine, search([MESH_HZ])).tracks;
    expect(errorOf(track!, ROAD)).toBeLessThan(2e-4);
  });

  it('of firing are asked only where nothing below shows the speed', () => {
    const [track] = findTracks(whine, search([], [MESH_HZ])).tracks;
    expect(errorOf(track!, ROAD)).toBeLessThan(2e-4);
    const below = recording([
      { hz: SHAFT_HZ, amplitude: 0.3, swing: ROAD },
      { hz: MESH_HZ, amplitude: 0.1, swing: OTHER },
    ]);
    const told = search([], [MESH_HZ]);
    expect(findTracks(below, told).tracks).toEqual(findTracks(below, search([])).tracks);
  });

  it('do not overrule the orders below where they move otherwise', () => {
    const both = recording([
      { hz: SHAFT_HZ, amplitude: 0.3, swing: ROAD },
      { hz: 2 * SHAFT_HZ, amplitude: 0.2, swing: ROAD },
      { hz: 1.1 * MESH_HZ, amplitude: 0.2, swing: OTHER },
    ]);
    const [track] = findTracks(both, search([MESH_HZ])).tracks;
    expect(errorOf(track!, ROAD)).toBeLessThan(1e-3);
  });
});
