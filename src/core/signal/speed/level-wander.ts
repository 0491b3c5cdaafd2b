/**
 * The lasting level of an order in runs made alike. Its level wanders about that, and slowly: a run of a minute shows
 * only a few independent moments of it, so the scatter of its blocks alone makes a run look far surer than it is. How
 * much and how slowly it wanders is taken as unknown, weighed by what the blocks of all runs show, and carried into
 * the uncertainty.
 *
 * The wander is a Gaussian process with the correlation (1 + t/τ)·e^(−t/τ) (Matérn's with ν = 3/2: M. L. Stein,
 * Interpolation of Spatial Data, Springer 1999, §2.7), the mean is the generalised least-squares one.
 */
import { logSum, sharesOf } from '../numeric/log-weights.ts';
import { blockScatter } from './order-level.ts';
import type { OrderLevel } from './order-level.ts';

/** How the level may follow the speed: with this power of it, so well known, and how likely that is. */
export interface SpeedLaw {
  readonly weight: number;
  readonly exponent: number;
  readonly exponentSd: number;
}

/** One guess of wander and law, how likely it is beside the others, and what the levels are under it. */
export interface LevelCase {
  readonly weight: number;
  /** Power at relative speed 1 over the run's plain mean power, run by run, and the exponent all runs share. */
  readonly relative: readonly number[];
  readonly exponent: number;
  /** Covariance of these, the exponent last. */
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Standard deviations of the amplitude about its mean, and time constants, s. Judgment: 8 %, two in three within a factor
 * of 1.6 and nineteen in twenty within 2.7; and a second as likely as ten.
 */
const WANDER_SD = [0.01, 0.02, 0.035, 0.055, 0.08, 0.115, 0.16, 0.23, 0.32] as const;
const WANDER_TIME_S = [1, 1.7, 2.8, 4.6, 7.7, 13] as const;
const USUAL_SD = 0.08;
const USUAL_SPREAD = 0.5;
const logPriorOfSd = (sd: number): number => -0.5 * (Math.log(sd / USUAL_SD) / USUAL_SPREAD) ** 2;
/** Longer runs are read in means of neighbouring blocks, so that the matrices stay small. */
const MOST_VALUES = 48;
/** Neighbouring half-overlapped Hann blocks share this much of their noise: its correlation in amplitude is 1/6. */
const SHARED_NOISE = 1 / 6;
/** A power of the speed holds nearby only: over a wider change of speed (root mean square of ln) it is not asked for. */
const NEARBY = 0.02;

/** @param levels of one order in runs made alike; each with more power than its noise hides */
export function levelCases(levels: readonly OrderLevel[], laws: readonly SpeedLaw[]): readonly LevelCase[] {
  const cases = likelyCases(levels, laws);
  const weights = sharesOf(cases.map(({ logLikelihood }) => logLikelihood));
  return cases.map(({ relative, exponent, covariance }, i) => ({
    weight: weights[i]!,
    relative,
    exponent,
    covariance,
  }));
}

/** ln of how likely the blocks of a run are, whatever wander and law, but for a constant of the number of blocks. */
export function levelEvidence(level: OrderLevel, laws: readonly SpeedLaw[]): number {
  const likelihoods = likelyCases([level], laws).map(({ logLikelihood }) => logLikelihood);
  // The cases weigh powers over the level: as powers they are that much less dense.
  return logSum(likelihoods) - readingsOf(level).values.length * Math.log(level.power);
}

type LikelyCase = LevelCase & { readonly logLikelihood: number };

function likelyCases(levels: readonly OrderLevel[], laws: readonly SpeedLaw[]): readonly LikelyCase[] {
  const runs = levels.map(readingsOf);
  return WANDER_TIME_S.flatMap((timeS) => {
    const shapes = runs.map(({ values, stepS }) => correlations(values.length, stepS / timeS));
    return WANDER_SD.flatMap((sd) => {
      const fits = runs.map((run, r) => whitened(run, shapes[r]!, 4 * sd * sd));
      return laws.map((law) => {
        const one = joined(fits, runs, law);
        return { ...one, logLikelihood: one.logLikelihood + logPriorOfSd(sd) };
      });
    });
  });
}

interface Readings {
  /** Power of each block, noise taken out, over the plain mean. */
  readonly values: readonly number[];
  /** What a power of one of the amplitude's speed adds to each. */
  readonly slopes: readonly number[];
  readonly stepS: number;
  /** Variance of one value by noise alone, and the share of it that neighbours have in common. */
  readonly scatter: number;
  readonly shared: number;
  /** Of the noise that was taken out. */
  readonly noiseVariance: number;
}

function readingsOf(level: OrderLevel): Readings {
  const { power, noisePower, noisePowerSd, blockPowers, blockLogSpeeds, stepS } = level;
  const together = Math.ceil(blockPowers.length / MOST_VALUES);
  const count = Math.floor(blockPowers.length / together);
  const means = (all: readonly number[]): number[] =>
    Array.from({ length: count }, (_, k) => meanOf(all.slice(k * together, (k + 1) * together)));
  const nearby = Math.sqrt(meanOf(blockLogSpeeds.map((s) => s * s))) < NEARBY;
  // A mean of n blocks: n variances and 2(n − 1) shares; its end blocks still share with the next mean.
  const factor = (1 + (2 * (together - 1) * SHARED_NOISE) / together) / together;
  return {
    values: means(blockPowers).map((value) => (value - noisePower) / power),
    slopes: means(blockLogSpeeds).map((s) => (nearby ? 2 * s : 0)),
    stepS: stepS * together,
    scatter: (factor * blockScatter(level)) / power ** 2,
    shared: SHARED_NOISE / together ** 2 / factor,
    noiseVariance: (noisePowerSd / power) ** 2,
  };
}

const meanOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** (1 + x)·e^(−x) for all distances along an even row. */
const correlations = (count: number, step: number): Float64Array =>
  Float64Array.from({ length: count }, (_, lag) => (1 + lag * step) * Math.exp(-lag * step));

/** Sums over one run's readings made independent: of ones (1), slopes (s) and values (v). */
interface Sums {
  readonly oneOne: number;
  readonly oneSlope: number;
  readonly slopeSlope: number;
  readonly oneValue: number;
  readonly slopeValue: number;
  readonly valueValue: number;
  readonly logDeterminant: number;
}

function whitened({ values, slopes, scatter, shared }: Readings, shape: Float64Array, variance: number): Sums {
  const factor = choleskyOfRow(
    Float64Array.from(shape, (rho, lag) => variance * rho + scatter * (lag === 0 ? 1 : lag === 1 ? shared : 0)),
  );
  const one = solved(factor, new Float64Array(values.length).fill(1));
  const slope = solved(factor, Float64Array.from(slopes));
  const value = solved(factor, Float64Array.from(values));
  return {
    oneOne: product(one, one),
    oneSlope: product(one, slope),
    slopeSlope: product(slope, slope),
    oneValue: product(one, value),
    slopeValue: product(slope, value),
    valueValue: product(value, value),
    logDeterminant: factor.reduce((sum, row, i) => sum + 2 * Math.log(row[i]!), 0),
  };
}

const product = (a: Float64Array, b: Float64Array): number => a.reduce((sum, x, i) => sum + x * b[i]!, 0);

/** A level for each run and one exponent for all, the levels unknown, the exponent with the law as its prior. */
function joined(
  fits: readonly Sums[],
  runs: readonly Readings[],
  { weight, exponent, exponentSd }: SpeedLaw,
): LikelyCase {
  const prior = 1 / exponentSd ** 2;
  const total = (pick: (sums: Sums) => number): number => fits.reduce((sum, fit) => sum + pick(fit), 0);
  // The levels are eliminated first: what is left tells of the exponent.
  const information = prior + total((f) => f.slopeSlope - f.oneSlope ** 2 / f.oneOne);
  const found = (prior * exponent + total((f) => f.slopeValue - (f.oneSlope * f.oneValue) / f.oneOne)) / information;
  const relative = fits.map((f) => (f.oneValue - f.oneSlope * found) / f.oneOne);
  const misfit =
    prior * (found - exponent) ** 2 +
    total(
      (f) =>
        f.valueValue -
        f.oneValue ** 2 / f.oneOne +
        found ** 2 * (f.slopeSlope - f.oneSlope ** 2 / f.oneOne) -
        2 * found * (f.slopeValue - (f.oneSlope * f.oneValue) / f.oneOne),
    );
  const lean = [...fits.map((f) => -f.oneSlope / f.oneOne), 1];
  const covariance = lean.map((a, i) =>
    lean.map(
      (b, k) => (a * b) / information + (i === k && i < fits.length ? 1 / fits[i]!.oneOne + runs[i]!.noiseVariance : 0),
    ),
  );
  return {
    weight,
    relative,
    exponent: found,
    covariance,
    logLikelihood:
      Math.log(weight) -
      0.5 * (misfit + total((f) => f.logDeterminant + Math.log(f.oneOne)) + Math.log(information / prior)),
  };
}

/** Lower Cholesky factor of the symmetric matrix whose entries depend on the distance to the diagonal alone. */
function choleskyOfRow(row: Float64Array): readonly Float64Array[] {
  const n = row.length;
  const factor = Array.from({ length: n }, (_, i) => new Float64Array(i + 1));
  // What rounding could make negative: the smoothest wanders make nearly singular matrices.
  const ridge = 1e-9 * row[0]!;
  for (let i = 0; i < n; i += 1) {
    const own = factor[i]!;
    for (let j = 0; j <= i; j += 1) {
      const other = factor[j]!;
      let sum = row[i - j]! + (i === j ? ridge : 0);
      for (let k = 0; k < j; k += 1) sum -= own[k]! * other[k]!;
      own[j] = i === j ? Math.sqrt(sum) : sum / other[j]!;
    }
  }
  return factor;
}

/** L⁻¹·v, in place. */
function solved(factor: readonly Float64Array[], values: Float64Array): Float64Array {
  for (let i = 0; i < values.length; i += 1) {
    let sum = values[i]!;
    for (let k = 0; k < i; k += 1) sum -= factor[i]![k]! * values[k]!;
    values[i] = sum / factor[i]![i]!;
  }
  return values;
}
