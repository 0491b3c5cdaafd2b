/**
 * How well a steady line's frequency is read: `npx tsx tests/accuracy/frequency-study.ts [trials]`.
 * One line in white noise, one axis, 30 s at 200 Hz, signal-to-noise per sample (A²/2σ²) from −20 to +20 dB, frequency
 * and phase at random. The root-mean-square error is held against the Cramér–Rao bound for one real tone of unknown
 * amplitude and phase, var f = 12·fs²/((2π)²·η·N(N² − 1)) with η = A²/(2σ²) (S. M. Kay, Fundamentals of Statistical
 * Signal Processing: Estimation Theory, 1993, ex. 3.14): at most 1.1 times. The true value must lie within two stated
 * standard uncertainties in 93 to 97 trials of 100.
 */
import { findPeaks } from '../../src/core/signal/peaks/detect.ts';
import { prepare } from '../../src/core/signal/prepare/prepare.ts';
import { randomSource } from '../../src/core/simulate/random.ts';
import { plainRecording } from './plain-recording.ts';

const RATE_HZ = 200;
const LENGTH_S = 30;
const N = RATE_HZ * LENGTH_S;

const boundHz = (snr: number): number => Math.sqrt((12 * RATE_HZ ** 2) / ((2 * Math.PI) ** 2 * snr * N * (N * N - 1)));

export interface FrequencyTrials {
  readonly found: number;
  /** Root-mean-square error over the bound, and share within two stated standard uncertainties. */
  readonly overBound: number;
  readonly within: number;
}

const frequencyTrials = (snrDb: number, trials: number): FrequencyTrials => {
  const snr = 10 ** (snrDb / 10);
  let square = 0;
  let within = 0;
  let found = 0;
  for (let trial = 0; trial < trials; trial++) {
    const random = randomSource(trial, `frequency study ${snrDb}`);
    const hz = random.between(5, 90);
    const phase = random.between(0, 2 * Math.PI);
    const a = Math.sqrt(2 * snr);
    const samples = Float64Array.from(
      { length: N },
      (_, i) => a * Math.cos((2 * Math.PI * hz * i) / RATE_HZ + phase) + random.normal(),
    );
    const peaks = findPeaks(prepare(plainRecording([samples], RATE_HZ)));
    const nearest = peaks.sort((p, q) => Math.abs(p.frequencyHz - hz) - Math.abs(q.frequencyHz - hz))[0];
    if (!nearest || Math.abs(nearest.frequencyHz - hz) > 2 / LENGTH_S) continue;
    found++;
    const error = nearest.frequencyHz - hz;
    square += error * error;
    if (Math.abs(error) <= 2 * nearest.frequencySdHz) within++;
  }
  return { found, overBound: Math.sqrt(square / found) / boundHz(snr), within: within / found };
};

if (process.argv[1]?.endsWith('frequency-study.ts')) {
  const trials = Number(process.argv[2] ?? 500);
  console.log('dB per sample   found   rms error / bound   within 2 sd');
  for (let db = -20; db <= 20; db += 5) {
    const { found, overBound, within } = frequencyTrials(db, trials);
    console.log(
      `${String(db).padStart(13)} ${String(found).padStart(7)} ${overBound.toFixed(3).padStart(19)} ` +
        `${(100 * within).toFixed(1).padStart(11)} %`,
    );
  }
}
