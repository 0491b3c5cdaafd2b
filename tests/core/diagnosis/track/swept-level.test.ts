import { describe, expect, it } from 'vitest';
import { isSweep, withSweptLevel } from '../../../../src/core/diagnosis/track/swept-level.ts';
import type { Peak } from '../../../../src/core/signal/peaks/peak.ts';
import type { Prepared } from '../../../../src/core/signal/spectra/spectrum.ts';
import { seededRandom } from '../../../support/random.ts';

const RATE = 200;
const SECONDS = 60;
const MEAN_HZ = 20;

/** From 0.8 to 1.2 of the mean speed, evenly: the phase is the closed integral 0.8·t + 0.2·t²/30. */
const track = { timeS: Float64Array.of(0, SECONDS), relative: Float64Array.of(0.8, 1.2) };
const turnsAt = (t: number): number => MEAN_HZ * (0.8 * t + (0.2 * t * t) / SECONDS);

const recording = (at: (t: number) => number): Prepared => {
  const { normal } = seededRandom(5);
  const samples = Float64Array.from({ length: SECONDS * RATE }, (_, i) => at(i / RATE) + 0.02 * normal());
  return { samplingRateHz: RATE, durationS: SECONDS, up: null, pieces: [{ startS: 0, axes: [samples] }] };
};

const peak = (amplitudeMps2: number): Peak => ({
  frequencyHz: MEAN_HZ,
  frequencySdHz: 0.01,
  amplitudeMps2,
  amplitudeSdMps2: 0.001,
  axisAmplitudeMps2: [amplitudeMps2],
  verticalShare: null,
  widthHz: 0.05,
  limitWidthHz: 0.04,
  overFloorDb: 20,
  falseAlarmProbability: 1e-9,
  smoothAlarmProbability: 1e-9,
  lineProbability: 1,
});

/** A resonance turns the order's phase by half a turn in the middle: as one line its halves cancel. */
const turned = (t: number): number => 0.1 * Math.cos(2 * Math.PI * turnsAt(t) + (t > 31 ? Math.PI : 0));

describe('the level of a swept order', () => {
  it('is that of its blocks where a resonance turned its phase', () => {
    const { amplitudeMps2, axisAmplitudeMps2 } = withSweptLevel(peak(0.004), recording(turned), track);
    // The block on the turn is lost, some 1 in 30, and the strongest do not count.
    expect(amplitudeMps2).toBeGreaterThan(0.093);
    expect(amplitudeMps2).toBeLessThan(0.101);
    expect(axisAmplitudeMps2[0]).toBeCloseTo(amplitudeMps2, 9);
  });

  it('stays the one line’s where that holds all of it', () => {
    const whole = peak(0.1);
    const even = recording((t) => 0.1 * Math.cos(2 * Math.PI * turnsAt(t)));
    expect(withSweptLevel(whole, even, track)).toBe(whole);
  });

  it('is not raised by a tone that keeps to the clock and is crossed', () => {
    const weak = peak(0.012);
    const crossed = recording((t) => 0.012 * Math.cos(2 * Math.PI * turnsAt(t)) + 0.3 * Math.cos(2 * Math.PI * 21 * t));
    expect(withSweptLevel(weak, crossed, track).amplitudeMps2).toBeLessThan(0.03);
  });

  it('is left alone on a cruise, however it drifted', () => {
    const drift = { timeS: track.timeS, relative: Float64Array.of(0.97, 1.03) };
    const one = peak(0.004);
    expect(withSweptLevel(one, recording(turned), drift)).toBe(one);
    expect([isSweep(drift), isSweep(track)]).toEqual([false, true]);
  });
});
