/** What readings around the clock say: harmonics, re-indexing, and the unbalance of the tube. */
import { polar } from '../../../core/complex.ts';
import type { RunoutMeasurement, RunoutPlace } from '../../../core/driveline/measurement.ts';
import type { RunoutFit } from '../../../core/driveline/runout/runout.ts';
import type { MatchMounting } from '../../../core/driveline/runout/match-mounting.ts';
import { matchMounting } from '../../../core/driveline/runout/match-mounting.ts';
import type { IndexPosition } from '../../../core/driveline/runout/runout-index.ts';
import type { TubePlanes } from '../../../core/driveline/runout/runout-places.ts';
import { fitsOf, indexing, tubePlanes } from '../../../core/driveline/runout/runout-places.ts';
import type { Job } from '../../../core/job/job.ts';
import { radFromDeg } from '../../../core/units.ts';
import type { Pixel } from '../../plot/round-picture.ts';
import { MIDDLE, pixelOf } from '../../plot/round-picture.ts';
import { subjectOf } from '../all-forms.ts';
import type { FilledForm } from '../entry.ts';
import { massOf } from '../forms/facts.ts';
import { flangeEndOf } from '../forms/runout.ts';
import { speedsInJob } from '../judge-in-job.ts';

export interface RunoutFacts {
  readonly readingsMm: readonly number[];
  readonly fit: RunoutFit;
  /** Other places of the job that were read around the clock. */
  readonly others: readonly RunoutPlace[];
  readonly bolts: number | null;
  readonly positions: readonly IndexPosition[] | null;
  /** True where turned readings were typed that cannot be used. */
  readonly turnedWrong: boolean;
  readonly tube: TubePlanes | null;
  readonly isShaft: boolean;
  /** Where tire or rim are read radially: the tire turned on the rim; null while one of the two is missing. */
  readonly isRadialWheel: boolean;
  readonly match: MatchMounting | null;
}

/** Null while the place was not read around the clock. */
export function runoutFacts({ entry, measurement }: FilledForm, job: Job): RunoutFacts | null {
  if (measurement?.kind !== 'runout' || measurement.readingsMm === undefined) return null;
  const kept = job.measurements.filter(
    (one): one is RunoutMeasurement =>
      one.kind === 'runout' && one.readingsMm !== undefined && subjectOf(one) !== subjectOf(measurement),
  );
  const fits = fitsOf([...kept, measurement]);
  const fit = fits.ok ? fits.value.get(measurement.place) : undefined;
  if (!fits.ok || fit === undefined) return null;
  const bolts = boltsOf(entry.number('bolts'));
  const end = flangeEndOf(entry);
  const steps = entry.number('turnedBy');
  const turnedMm = entry.list('turned')?.map(({ value }) => value);
  const isTurned = bolts !== null && turnedMm !== undefined && steps !== undefined;
  const turned = isTurned && Number.isInteger(steps) && steps % bolts !== 0 ? { readingsMm: turnedMm, steps } : null;
  const positions = bolts === null ? null : indexing(fits.value, `tube-${end}`, bolts, turned);
  const mass = massOf(entry, job, end);
  const speeds = speedsInJob(job, measurement.driveshaft, entry.number('rpm'));
  return {
    readingsMm: measurement.readingsMm,
    fit,
    others: kept.map(({ place }) => place),
    bolts,
    positions: positions?.ok ? positions.value : null,
    turnedWrong: (turnedMm !== undefined && turned === null) || positions?.ok === false,
    tube: mass === null ? null : tubePlanes(fits.value, mass.massKg, speeds.ok ? speeds.value.driveshaftRpm : null),
    isShaft: /^(tube|companion)/u.test(measurement.place),
    isRadialWheel: /^(tire|wheel)-radial$/u.test(measurement.place),
    match: matchMounting(fits.value, job.limits),
  };
}

const boltsOf = (bolts: number | undefined): number | null =>
  bolts !== undefined && Number.isInteger(bolts) && bolts >= 2 && bolts <= 48 ? bolts : null;

/** Share of the picture's radius at which the mean reading stands, and how far the readings reach from there. */
const MEAN_AT = 0.62;
const REACH = 0.34;

export interface ClockPicture {
  readonly readings: readonly Pixel[];
  /** Both harmonics together, and the first alone. */
  readonly both: string;
  readonly once: string;
  readonly highSpot: Pixel;
  readonly meanRadius: number;
}

const CURVE_STEPS = 72;

/** Places of the readings and the fitted curves in a round picture, deviations drawn much too large. */
export function clockPicture(readingsMm: readonly number[], fit: RunoutFit): ClockPicture {
  const mean = readingsMm.reduce((sum, mm) => sum + mm, 0) / readingsMm.length;
  const once = (degrees: number): number => (fit.runoutTirMm / 2) * Math.cos(radFromDeg(degrees - fit.highSpotDeg));
  const twice = (degrees: number): number =>
    fit.ovalSpotDeg === null ? 0 : ((fit.ovalityTirMm ?? 0) / 2) * Math.cos(2 * radFromDeg(degrees - fit.ovalSpotDeg));
  const greatest = Math.max(1e-6, ...readingsMm.map((mm) => Math.abs(mm - mean)), fit.runoutTirMm / 2);
  const at = (degrees: number, deviationMm: number): Pixel =>
    pixelOf(polar(MEAN_AT + (REACH * deviationMm) / greatest, degrees), 1);
  const curve = (deviation: (degrees: number) => number): string =>
    Array.from({ length: CURVE_STEPS }, (_, step) => {
      const degrees = (360 * step) / CURVE_STEPS;
      const [x, y] = at(degrees, deviation(degrees));
      return `${step === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`;
    }).join('') + 'Z';
  const [, top] = at(0, 0);
  return {
    readings: readingsMm.map((mm, place) => at((360 * place) / readingsMm.length, mm - mean)),
    both: curve((degrees) => once(degrees) + twice(degrees)),
    once: curve(once),
    highSpot: at(fit.highSpotDeg, fit.runoutTirMm / 2),
    meanRadius: MIDDLE - top,
  };
}
