/** What dial readings at several places say together: harmonics, indexing, unbalance. */
import { forceOfUnbalanceN } from '../balance/balance-grade.ts';
import { angleDegOf, size } from '../../complex.ts';
import type { RunoutMeasurement, RunoutPlace } from '../measurement.ts';
import type { RunoutFit } from './runout.ts';
import { evenReadings, fitRunout } from './runout.ts';
import type { IndexPosition } from './runout-index.ts';
import { indexPositions, splitByFlange, splitByTurning } from './runout-index.ts';
import { tubeUnbalance } from './runout-unbalance.ts';
import { success } from '../../note.ts';
import type { Result } from '../../note.ts';

export type Fits = ReadonlyMap<RunoutPlace, RunoutFit>;

/** Harmonics at every place that was read around the clock. */
export function fitsOf(measurements: readonly RunoutMeasurement[]): Result<Fits> {
  const fits = new Map<RunoutPlace, RunoutFit>();
  for (const { place, readingsMm } of measurements) {
    if (readingsMm === undefined) continue;
    const fit = fitRunout(evenReadings(readingsMm));
    if (!fit.ok) return fit;
    fits.set(place, fit.value);
  }
  return success(fits);
}

export interface Turned {
  readonly readingsMm: readonly number[];
  readonly steps: number;
}

/**
 * What each bolt position would leave at the shaft's end on the flange: from the flange's own runout where it was
 * read, else from a second reading with the shaft turned; null where neither was.
 */
export function indexing(
  fits: Fits,
  end: 'tube-front' | 'tube-rear',
  boltCount: number,
  turned: Turned | null,
): Result<readonly IndexPosition[] | null> {
  const now = fits.get(end);
  const flange = fits.get('companion-flange-radial');
  if (now === undefined) return success(null);
  if (turned !== null) {
    const after = fitRunout(evenReadings(turned.readingsMm));
    if (!after.ok) return after;
    const split = splitByTurning(now.eccentricityMm, after.value.eccentricityMm, turned.steps, boltCount);
    return success(indexPositions(split, boltCount));
  }
  if (flange === undefined) return success(null);
  return success(indexPositions(splitByFlange(now.eccentricityMm, flange.eccentricityMm), boltCount));
}

export interface TubePlanes {
  readonly bowTirMm: number;
  readonly planes: readonly {
    readonly at: string;
    readonly unbalanceGmm: number;
    readonly angleDeg: number;
    readonly forceN: number | null;
  }[];
}

/** Unbalance of a tube read around the clock at all three stations; null where one is missing or spoiled by a dent. */
export function tubePlanes(fits: Fits, massKg: number, rpm: number | null): TubePlanes | null {
  const [front, middle, rear] = (['tube-front', 'tube-middle', 'tube-rear'] as const).map((place) => fits.get(place));
  if (!front || !middle || !rear || front.oneOff || middle.oneOff || rear.oneOff) return null;
  const { bowMm, frontGmm, rearGmm } = tubeUnbalance(
    front.eccentricityMm,
    middle.eccentricityMm,
    rear.eccentricityMm,
    massKg,
  );
  const planes = [
    { at: 'front end', vector: frontGmm },
    { at: 'rear end', vector: rearGmm },
  ].map(({ at, vector }) => ({
    at,
    unbalanceGmm: size(vector),
    angleDeg: angleDegOf(vector),
    forceN: rpm === null ? null : forceOfUnbalanceN(size(vector), rpm),
  }));
  return { bowTirMm: 2 * size(bowMm), planes };
}
