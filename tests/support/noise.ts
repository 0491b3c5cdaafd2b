/** Noise of many colours, made in the time domain by recursive filters, for tests of detection. */
import type { Prepared } from '../../src/core/signal/spectra/spectrum.ts';
import type { Random } from './random.ts';

export type NoiseColour =
  | 'white'
  | 'pink'
  | 'red'
  | 'violet'
  | 'hump'
  | 'resonance'
  | 'many resonances'
  | 'band edge'
  | 'level steps'
  | 'bumps'
  | 'coarse steps';

const white = (n: number, random: Random): Float64Array => Float64Array.from({ length: n }, random.normal);

/** Response of one lightly damped mode to a force, unit noise gain aside: a two-pole recursion. */
export const mode = (x: Float64Array, frequencyHz: number, damping: number, rate: number): Float64Array => {
  const w = (2 * Math.PI * frequencyHz) / rate;
  const r = Math.exp(-damping * w);
  const c = 2 * r * Math.cos(w * Math.sqrt(1 - damping * damping));
  const out = new Float64Array(x.length);
  let y1 = 0;
  let y2 = 0;
  for (let i = 0; i < x.length; i++) {
    const y = x[i]! + c * y1 - r * r * y2;
    out[i] = y * (1 - r);
    y2 = y1;
    y1 = y;
  }
  return out;
};

const lowPass = (x: Float64Array, cornerHz: number, rate: number): Float64Array => {
  const a = Math.exp((-2 * Math.PI * cornerHz) / rate);
  let y = 0;
  return x.map((v) => (y = a * y + (1 - a) * v));
};

const added = (a: Float64Array, b: Float64Array, gain = 1): Float64Array => a.map((v, i) => v + gain * b[i]!);

/** One axis-independent source of the colour. The first two seconds are run in and dropped. */
const source = (colour: NoiseColour, n: number, rate: number, random: Random): Float64Array => {
  const lead = Math.round(2 * rate);
  const m = n + lead;
  const between = (low: number, high: number): number => low * (high / low) ** random.uniform();
  const base = white(m, random);
  let out: Float64Array = base;
  const resonances = (count: number): Float64Array => {
    let sum: Float64Array = base.map((v) => 0.02 * v);
    for (let i = 0; i < count; i++) {
      const f = between(4, Math.min(100, 0.4 * rate));
      // Height of the top over the floor: 5 to 40 dB.
      const gain = 0.02 * Math.sqrt(between(3, 1e4)) * 2 * Math.sin((2 * Math.PI * f) / rate);
      sum = added(sum, mode(white(m, random), f, 0.01 + 0.01 * random.uniform(), rate), gain);
    }
    return sum;
  };
  if (colour === 'pink')
    for (const f of [0.5, 5, 50]) out = added(out, lowPass(white(m, random), f, rate), 30 / Math.sqrt(f));
  if (colour === 'red')
    out = added(
      out.map((v) => v * 0.01),
      lowPass(base, 1, rate),
      30,
    );
  if (colour === 'violet') out = out.map((v, i) => v - (base[i - 1] ?? 0));
  if (colour === 'hump')
    out = added(out, mode(white(m, random), between(8, 20), 0.05 + 0.2 * random.uniform(), rate), 30);
  if (colour === 'resonance') out = resonances(1);
  if (colour === 'many resonances') out = resonances(6);
  if (colour === 'band edge') {
    out = base.map((v) => 0.01 * v);
    let band: Float64Array = white(m, random);
    for (let i = 0; i < 8; i++) band = lowPass(band, between(20, 30), rate);
    out = added(out, band, 30);
  }
  if (colour === 'level steps') {
    let level = 1;
    out = base.map((v) => {
      if (random.uniform() < 1 / (5 * rate)) level = between(0.2, 5);
      return v * level;
    });
  }
  if (colour === 'bumps') {
    const kicks = base.map((v) => (random.uniform() < 0.5 / rate ? 200 * v : 0));
    out = added(out, mode(kicks, between(8, 20), 0.05, rate), 3);
  }
  if (colour === 'coarse steps') out = out.map((v) => Math.round(v));
  return out.slice(lead);
};

/** A recording of nothing but noise: `axes` channels that share part of their sources, as one body does. */
export const noiseRecording = (
  colour: NoiseColour,
  durationS: number,
  rate: number,
  axes: number,
  random: Random,
): Prepared => {
  const n = Math.round(durationS * rate);
  const shared = source(colour, n, rate, random);
  const direction = Array.from({ length: axes }, () => random.normal());
  const channels = direction.map((d) => {
    const own = colour === 'resonance' ? white(n, random).map((v) => 0.01 * v) : source(colour, n, rate, random);
    const gain = 0.3 + random.uniform();
    return own.map((v, i) => gain * v + d * shared[i]!);
  });
  return { samplingRateHz: rate, durationS, pieces: [{ startS: 0, axes: channels }], up: null };
};

/** Adds a steady tone, amplitude per axis. */
export const withTone = (
  prepared: Prepared,
  frequencyHz: number,
  amplitude: readonly number[],
  phase = 0,
): Prepared => ({
  ...prepared,
  pieces: prepared.pieces.map(({ startS, axes }) => ({
    startS,
    axes: axes.map((axis, a) =>
      axis.map(
        (v, i) =>
          v + amplitude[a]! * Math.cos(2 * Math.PI * frequencyHz * (startS + i / prepared.samplingRateHz) + phase),
      ),
    ),
  })),
});
