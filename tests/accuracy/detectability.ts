/**
 * Can the line be seen at all? A matched filter that knows the line's frequency and phase at every moment, and the
 * noise on each axis, has the signal-to-noise ratio
 *
 *   d = √( T · Σ aᵢ² / Sᵢ )
 *
 * with aᵢ the 0-to-peak amplitude and Sᵢ the one-sided noise density on axis i, T the length (energy aᵢ²T/2 over half
 * the one-sided density; e.g. Van Trees, Detection, Estimation, and Modulation Theory I, 1968, ch. 4). Even this
 * detector has some 1000 places to look (twenty lines, a few dozen speed scales), so that at one false claim in a
 * hundred cases each place may have 1e-5: 4.3 standard deviations, and 1.6 more to see it in 95 cases of 100.
 */
import { simulate } from '../../src/core/simulate/simulate.ts';
import type { Scenario } from '../../src/core/simulate/scenario.ts';

/** Below this the right answer is 'cannot tell'. */
export const UNSEEN_BELOW = 6;
/** From here on the fault must be named. Between the two either answer is right: the speed's wander is not known. */
export const SEEN_FROM = 8;

/** Seconds of road and sensor alone that the noise is measured from. */
const NOISE_S = 20;

/** One-sided density of each body axis near a frequency of the recording, (m/s²)²/Hz, road and sensor noise only. */
export const noiseDensity = (scenario: Scenario): ((hz: number) => readonly [number, number, number]) => {
  const run = simulate({
    ...scenario,
    drive: { ...scenario.drive, durationS: Math.min(NOISE_S, scenario.drive.durationS) },
    sensor: { ...scenario.sensor, mounting: [1, 0, 0, 0, 1, 0, 0, 0, 1], jitterS: 0, clockError: 0 },
    without: ['normal-orders', 'faults', 'manoeuvre'],
  });
  return (hz) => run.accelerationMps2.map((axis) => densityNear(axis, run.rateHz, hz)) as [number, number, number];
};

/** Mean of the Hann periodogram over ±0.6 Hz, by plain sums: few bins are wanted, of a long segment. */
const densityNear = (signal: Float64Array, rateHz: number, hz: number): number => {
  const n = signal.length;
  const mean = signal.reduce((a, b) => a + b, 0) / n;
  const window = Float64Array.from({ length: n }, (_, i) => 0.5 - 0.5 * Math.cos((2 * Math.PI * i) / n));
  const power = window.reduce((a, b) => a + b * b, 0);
  let sum = 0;
  let count = 0;
  for (let offset = -0.6; offset <= 0.6001; offset += 0.1) {
    const w = (2 * Math.PI * Math.abs(hz + offset)) / rateHz;
    const turn = 2 * Math.cos(w);
    let s1 = 0;
    let s2 = 0;
    for (let i = 0; i < n; i++) {
      const s0 = window[i]! * (signal[i]! - mean) + turn * s1 - s2;
      s2 = s1;
      s1 = s0;
    }
    sum += (2 * (s1 * s1 + s2 * s2 - turn * s1 * s2)) / (rateHz * power);
    count++;
  }
  return sum / count;
};

/** @param seenHz Where the line shows in the recording (its image where it is folded). */
export const detectability = (
  axisMps2: readonly [number, number, number],
  seenHz: number,
  durationS: number,
  density: (hz: number) => readonly [number, number, number],
): number => {
  const noise = density(seenHz);
  return Math.sqrt(durationS * axisMps2.reduce((sum, a, i) => sum + (a * a) / noise[i]!, 0));
};
