/**
 * How well a tone keeps together if it moves in step with a track, more than in step, against it, or not at all: over the
 * whole recording, where its phase holds, or slice by slice, where a sweep takes it through resonances that turn it.
 */
import { complexArray, complexSpectrum, powerOfTwoAtLeast } from '../../signal/spectra/fft.ts';
import { median, runningMedian } from '../../signal/numeric/statistics.ts';
import { basebandAt, type Baseband, type WholeSpectra } from './basebands.ts';
import { growingEvidence, type EvidenceOf } from './line-evidence.ts';
import { timeAhead, type SpeedTrack } from '../../signal/speed/equal-angle.ts';

/** ln evidence (against noise) that the tone is one line that moves by `slopeHz` per unit of a track's relative speed. */
export interface Motion {
  /** It does not move. */
  readonly still: number;
  /** Moving with the track of that index; cached by slope. */
  readonly along: (track: number, slopeHz: number) => number;
}

/** The frequency is searched this many natural bins to each side. */
const SEARCH_BINS = 2;
const PADDING = 2;
/** Noise is read this far to each side, Hz. */
const NOISE_HZ = 3;

/** Samples of a band that are taken together. */
interface Slice {
  readonly from: number;
  readonly to: number;
}

const wholeOf = ({ axes }: Baseband): Slice => ({ from: 0, to: axes[0]?.re.length ?? 0 });

const driftOf = ({ startS, stepS, axes }: Baseband, track: SpeedTrack): Float64Array =>
  timeAhead(track, startS, stepS, axes[0]?.re.length ?? 0);

/** Powers over frequency of a slice of a band, axis by axis, the motion taken out; index 0 is the band's centre. */
const powers = (
  band: Baseband,
  drift: Float64Array | null,
  slopeHz: number,
  { from, to }: Slice,
): readonly Float64Array[] => {
  const n = to - from;
  const size = PADDING * powerOfTwoAtLeast(n);
  // The windowed turn back is the same for all axes.
  const turn = complexArray(n);
  for (let i = 0; i < n; i++) {
    const window = 0.5 - 0.5 * Math.cos((2 * Math.PI * (i + 0.5)) / n);
    const phase = drift ? -2 * Math.PI * slopeHz * drift[from + i]! : 0;
    turn.re[i] = Math.cos(phase) * window;
    turn.im[i] = Math.sin(phase) * window;
  }
  const input = complexArray(size);
  return band.axes.map(({ re, im }) => {
    for (let i = 0; i < n; i++) {
      const c = turn.re[i]!;
      const s = turn.im[i]!;
      input.re[i] = re[from + i]! * c - im[from + i]! * s;
      input.im[i] = re[from + i]! * s + im[from + i]! * c;
    }
    const out = complexSpectrum(input);
    return out.re.map((r, k) => r * r + out.im[k]! * out.im[k]!);
  });
};

const nearCentre = (power: Float64Array, reach: number): number[] => {
  const values: number[] = [];
  for (let k = -reach; k <= reach; k++) values.push(power[(k + power.length) % power.length]!);
  return values;
};

/** Where a band holds its most evidence. */
export interface Top {
  readonly frequencyHz: number;
  readonly evidence: number;
}

/** The strongest place within `reachHz` of a frequency once a motion by `slopeHz` with the track is taken out. */
export const topAlong = (
  spectra: WholeSpectra,
  track: SpeedTrack,
  slopeHz: number,
  frequencyHz: number,
  reachHz: number,
): Top => {
  const band = basebandAt(spectra, frequencyHz);
  const drift = driftOf(band, track);
  const binHz = 1 / (PADDING * powerOfTwoAtLeast(band.axes[0]?.re.length ?? 0) * band.stepS);
  const reach = Math.ceil(reachHz / binHz);
  const around = Math.round(NOISE_HZ / binHz);
  const sums = new Float64Array(2 * reach + 1);
  for (const power of powers(band, drift, slopeHz, wholeOf(band))) {
    const near = nearCentre(power, reach + around);
    const noise = runningMedian(Float64Array.from(near), around);
    for (let i = 0; i < sums.length; i++)
      sums[i]! += (near[i + around]! * Math.LN2) / Math.max(noise[i + around]!, 1e-300);
  }
  let at = 0;
  for (let i = 1; i < sums.length; i++) if (sums[i]! > sums[at]!) at = i;
  return {
    frequencyHz: frequencyHz + (at - reach) * binHz,
    evidence: growingEvidence(band.axes.length)(sums[at]!),
  };
};

/** A band's power over frequency about its centre, axis by axis, some motion taken out. */
type Near = readonly (readonly number[])[];

/** ln evidence at each bin about the centre of a slice, if the tone moves by `slopeHz` per unit of a drift. */
type EvidenceNear = (drift: Float64Array | null, slopeHz: number) => readonly number[];

const evidenceNear = (
  band: Baseband,
  drifts: readonly Float64Array[],
  frequencyHz: number,
  slice: Slice,
  evidenceOf: EvidenceOf,
): EvidenceNear => {
  const n = slice.to - slice.from;
  const binHz = 1 / (PADDING * powerOfTwoAtLeast(n) * band.stepS);
  const reach = Math.max(1, Math.ceil(SEARCH_BINS / (n * band.stepS) / binHz));
  const around = Math.max(reach, Math.round(NOISE_HZ / binHz));
  const nearAlong = (drift: Float64Array | null, slopeHz: number): Near =>
    powers(band, drift, slopeHz, slice).map((power) => nearCentre(power, around));
  // A strong line fills the band beside it where it is not held to stand: the noise is what stands there least.
  const usual = [nearAlong(null, 0), ...drifts.map((drift) => nearAlong(drift, frequencyHz))];
  const noise = band.axes.map((_, a) =>
    Math.max(Math.min(...usual.map((near) => median(near[a]!))) / Math.LN2, 1e-300),
  );
  return (drift, slopeHz) => {
    const known = drift === null ? 0 : slopeHz === frequencyHz ? drifts.indexOf(drift) + 1 : -1;
    const near = usual[known] ?? nearAlong(drift, slopeHz);
    return Array.from({ length: 2 * reach + 1 }, (_, i) =>
      evidenceOf(near.reduce((sum, axis, a) => sum + axis[i + around - reach]! / noise[a]!, 0)),
    );
  };
};

const slicesOf = (band: Baseband, sliceS: number): readonly Slice[] => {
  const n = band.axes[0]?.re.length ?? 0;
  const count = Math.max(1, Math.round((n * band.stepS) / sliceS));
  const length = Math.floor(n / count);
  return Array.from({ length: count }, (_, k) => ({ from: k * length, to: (k + 1) * length }));
};

/**
 * @param sliceS a tone's phase holds for this long at least, s: all the time, unless a sweep took it through resonances
 */
export const motionOf = (
  spectra: WholeSpectra,
  tracks: readonly SpeedTrack[],
  frequencyHz: number,
  sliceS = Infinity,
): Motion => {
  const band = basebandAt(spectra, frequencyHz);
  const evidenceOf: EvidenceOf = growingEvidence(band.axes.length);
  const drifts = tracks.map((track) => driftOf(band, track));
  const nearOf = (slice: Slice): EvidenceNear => evidenceNear(band, drifts, frequencyHz, slice, evidenceOf);
  const ways = [[nearOf(wholeOf(band))]];
  if (sliceS < Infinity) ways.push(slicesOf(band, sliceS).map(nearOf));
  const evidenceIn = (drift: Float64Array | null, slopeHz: number): number =>
    Math.max(
      ...ways.map((slices) => {
        const [first, ...rest] = slices.map((near) => near(drift, slopeHz));
        return Math.max(...first!.map((evidence, i) => rest.reduce((sum, other) => sum + other[i]!, evidence)));
      }),
    );
  const still = evidenceIn(null, 0);
  const cache = new Map<string, number>();
  return {
    still,
    along: (track, slopeHz) => {
      const key = `${track} ${slopeHz.toFixed(2)}`;
      const known = cache.get(key);
      if (known !== undefined) return known;
      const drift = drifts[track];
      const value = drift ? evidenceIn(drift, slopeHz) : 0;
      cache.set(key, value);
      return value;
    },
  };
};
