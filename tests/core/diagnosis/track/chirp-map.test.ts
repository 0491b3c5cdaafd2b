import { describe, expect, it } from 'vitest';
import { againstItsMiddle, chirpMap } from '../../../../src/core/diagnosis/track/chirp-map.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 100;
const SECONDS = 60;

/** Two axes of white noise with a hum that stays and a line that rises evenly from 20 to 30 Hz. */
const recording = (): Prepared => {
  const { normal } = seededRandom(5);
  const axes = [1, 0.5].map((share) =>
    Float64Array.from({ length: RATE * SECONDS }, (_, i) => {
      const t = i / RATE;
      const swept = 20 * t + (10 * t * t) / (2 * SECONDS);
      return share * (0.3 * Math.cos(2 * Math.PI * 12 * t) + 0.3 * Math.cos(2 * Math.PI * swept)) + 0.1 * normal();
    }),
  );
  return { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes }] };
};

const options = { segmentS: 2.56, hopS: 1, ratesPerS: Float64Array.of(-0.007, 0, 0.007) };

describe('a map of powers against what is usual at each frequency', () => {
  it('takes a hum for noise and leaves a line that moves as it is', () => {
    const map = chirpMap(recording(), options)!;
    const against = againstItsMiddle(map);
    const { bins, stepHz } = map;
    const row = 20;
    const highest = (excess: Float32Array, hz: number): number =>
      Math.max(...[-1, 0, 1].map((d) => excess[(row * 3 + 1) * bins + Math.round(hz / stepHz) + d]!));
    const lineHz = 20 + (10 * map.timeS[row]!) / SECONDS;
    // 0.3²·256/(4·0.1²)·⅔ and a quarter of it on the other axis: some 500 times the noise, either of them.
    expect(highest(map.excess, 12)).toBeGreaterThan(200);
    expect(highest(map.excess, lineHz)).toBeGreaterThan(100);
    expect(highest(against.excess, 12)).toBeLessThan(5);
    expect(highest(against.excess, lineHz) / highest(map.excess, lineHz)).toBeGreaterThan(0.5);
    // Nothing is made louder.
    against.excess.forEach((value, i) => expect(value).toBeLessThanOrEqual(map.excess[i]!));
  });
});
