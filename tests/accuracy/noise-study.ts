/**
 * How often noise alone gives a peak: `npx tsx tests/accuracy/noise-study.ts [recordings] [whole] [--resonances] [--list]`.
 * Noise of every colour, without a line in it: power density ∝ f^slope from −4 to +2, broken at a bend, with humps as
 * wide as a structure's resonances (damping 2 % and more) where asked, one to three axes that may be correlated, many
 * rates and lengths. At most 1 recording in 100 may yield a peak. With `whole`, the whole analysis is run instead of
 * the search alone, and the peaks of its report are counted. `--resonances` does the noise with resonances only.
 */
import { analyse } from '../../src/core/analyse.ts';
import type { Recording } from '../../src/core/reading/recording.ts';
import { findPeaks } from '../../src/core/signal/peaks/detect.ts';
import { complexArray, complexSpectrum, powerOfTwoAtLeast } from '../../src/core/signal/spectra/fft.ts';
import { prepare } from '../../src/core/signal/prepare/prepare.ts';
import { randomSource, type RandomSource } from '../../src/core/simulate/random.ts';
import { plainRecording } from './plain-recording.ts';
import { madeJob } from '../support/made-job.ts';

const RATES_HZ = [100, 104, 200, 400, 500] as const;

interface Colour {
  readonly slope: number;
  readonly bendHz: number;
  readonly slopeAbove: number;
  readonly humps: readonly { readonly hz: number; readonly damping: number; readonly height: number }[];
}

const drawColour = (random: RandomSource, humps: boolean): Colour => ({
  slope: random.between(-4, 2),
  bendHz: random.logBetween(5, 40),
  slopeAbove: random.between(-4, 2),
  humps: humps
    ? Array.from({ length: 3 }, () => ({
        hz: random.logBetween(3, 100),
        damping: random.logBetween(0.02, 0.2),
        height: random.logBetween(1, 300),
      }))
    : [],
});

const densityAt = ({ slope, bendHz, slopeAbove, humps }: Colour, hz: number): number => {
  const base = (Math.max(hz, 0.5) / bendHz) ** (hz < bendHz ? slope : slopeAbove);
  return humps.reduce((sum, h) => sum * (1 + h.height / (1 + ((hz - h.hz) / (h.damping * h.hz)) ** 2)), base);
};

/** Gaussian noise of a colour, rms 1, cut out of a stretch twice as long so that its ends do not meet. */
const noise = (colour: Colour, count: number, rateHz: number, random: RandomSource): Float64Array => {
  const size = powerOfTwoAtLeast(2 * count);
  const input = complexArray(size);
  for (let k = 1; k < size / 2; k++) {
    const a = Math.sqrt(densityAt(colour, (k * rateHz) / size));
    input.re[k] = a * random.normal();
    input.im[k] = a * random.normal();
  }
  const out = complexSpectrum(input).re.slice(0, count);
  const rms = Math.sqrt(out.reduce((sum, v) => sum + v * v, 0) / count);
  return out.map((v) => v / rms);
};

const recordingOf = (seed: number, humps: boolean): Recording => {
  const random = randomSource(seed, 'noise study');
  const rate = random.pick(RATES_HZ);
  const durationS = Math.round(random.between(20, 90));
  const count = durationS * rate;
  const axisCount = random.pick([1, 3, 3] as const);
  const colour = drawColour(random, humps);
  const shared = noise(colour, count, rate, random);
  const level = random.logBetween(0.02, 1);
  const axes = Array.from({ length: axisCount }, () => {
    const own = noise(colour, count, rate, random);
    const common = random.between(0, 0.9);
    return own.map((v, i) => level * (Math.sqrt(1 - common ** 2) * v + common * shared[i]!));
  });
  return plainRecording(axes, rate);
};

const job = madeJob(
  {
    tire: { kind: 'size', size: '265/70R17' },
    layout: 'rear-drive',
    axleRatio: 3.73,
    gearRatios: [0.74],
    cylinders: 8,
  },
  { file: 'noise.csv', speedMps: 27, speedSource: 'gps', gearRatio: 0.74, load: 'cruise' },
);

const peaksIn = (recording: Recording, whole: boolean): readonly number[] => {
  if (!whole) return findPeaks(prepare(recording)).map((peak) => peak.frequencyHz);
  const analysis = analyse(job, [recording]);
  return analysis.ok ? analysis.value.report.peaks.map((peak) => peak.frequencyHz) : [NaN];
};

const recordings = Number(process.argv[2] ?? 1000);
const whole = process.argv[3] === 'whole';
for (const humps of process.argv.includes('--resonances') ? [true] : [false, true]) {
  let withPeak = 0;
  for (let seed = 1; seed <= recordings; seed++) {
    const found = peaksIn(recordingOf(seed + (humps ? 500_000 : 0), humps), whole);
    if (found.length === 0) continue;
    withPeak++;
    if (process.argv.includes('--list')) console.log(seed, found.map((hz) => hz.toFixed(2)).join(' '));
  }
  console.log(
    `${humps ? 'with resonances' : 'coloured noise'}: ${withPeak} of ${recordings} recordings give a peak ` +
      `(${((100 * withPeak) / recordings).toFixed(2)} %; allowed 1 %)`,
  );
}
