/**
 * Dial readings around the clock, fitted for the first and second harmonic: once round is runout (off centre or
 * bent), twice round is ovality. Least squares; derived.
 */
import type { Complex } from '../../complex.ts';
import { angleDegOf, size } from '../../complex.ts';
import { leastSquares } from '../least-squares.ts';
import { radFromDeg } from '../../units.ts';
import type { Result } from '../../note.ts';
import { failure, success } from '../../note.ts';

export interface ClockReading {
  /** Place around the part, degrees from the mark, in one sense. */
  readonly angleDeg: number;
  readonly readingMm: number;
}

export interface RunoutFit {
  /** Greatest less least reading, mm: what the eye reads off the dial. */
  readonly tirMm: number;
  /** First harmonic as an indicator reading, mm: twice the eccentricity. */
  readonly runoutTirMm: number;
  /** Eccentricity as a vector, mm, in the angles of the readings: re towards 0°, im towards 90°. */
  readonly eccentricityMm: Complex;
  /** High spot of the first harmonic, degrees from the mark. */
  readonly highSpotDeg: number;
  /** Second harmonic as an indicator reading, mm; null with fewer than five places, which cannot tell it. */
  readonly ovalityTirMm: number | null;
  /** One of the two high spots of the second harmonic, 0..180 degrees; null as above. */
  readonly ovalSpotDeg: number | null;
  /** What neither harmonic explains, standard deviation of one reading, mm; null where no reading is to spare. */
  readonly scatterMm: number | null;
  /** Standard uncertainty of the first harmonic's indicator reading, mm; null as scatter. */
  readonly runoutTirSdMm: number | null;
  /** The one place that does not belong to the rest: a dent, or something under the tip. Null where there is none. */
  readonly oneOff: OneOff | null;
}

export interface OneOff {
  readonly angleDeg: number;
  /** How far it reads from where the other places say it should, mm. */
  readonly deviationMm: number;
  /** Once round by the other places alone, as an indicator reading, mm. */
  readonly restTirMm: number;
}

/** One place is told from the rest where it makes half of the whole movement and the rest fit five times better. */
const ONE_OFF_SHARE = 0.5;
const ONE_OFF_TIMES = 5;

/** Readings at even steps around the clock, the first at the mark. */
export const evenReadings = (readingsMm: readonly number[]): ClockReading[] =>
  readingsMm.map((readingMm, index) => ({ angleDeg: (360 * index) / readingsMm.length, readingMm }));

/**
 * Fit the harmonics.
 * @param readings at least three places; from five on ovality is told from runout
 */
export const fitRunout = (readings: readonly ClockReading[]): Result<RunoutFit> => {
  const numbers = readings.flatMap(({ angleDeg, readingMm }) => [angleDeg, readingMm]);
  const harmonics = readings.length >= 5 ? 2 : 1;
  const rows = readings.map(({ angleDeg }) => {
    const row = [1];
    for (let harmonic = 1; harmonic <= harmonics; harmonic++) {
      const angle = harmonic * radFromDeg(angleDeg);
      row.push(Math.cos(angle), Math.sin(angle));
    }
    return row;
  });
  const usable = readings.length >= 3 && numbers.every(Number.isFinite);
  const fit = usable
    ? leastSquares(
        rows,
        readings.map(({ readingMm }) => readingMm),
      )
    : null;
  if (fit === null) {
    return failure({
      code: 'too-few-dial-readings',
      key: 'readingsMm',
      message: `${readings.length} dial readings, or readings bunched on one side, do not tell runout.`,
      remedy: 'Read the dial at eight even steps around the part, starting at a paint mark.',
    });
  }
  const [, cosine = 0, sine = 0, cosineTwice = 0, sineTwice = 0] = fit.solution;
  const eccentricityMm: Complex = { re: cosine, im: sine };
  const oval: Complex = { re: cosineTwice, im: sineTwice };
  const readingsMm = readings.map(({ readingMm }) => readingMm);
  return success({
    tirMm: Math.max(...readingsMm) - Math.min(...readingsMm),
    runoutTirMm: 2 * size(eccentricityMm),
    eccentricityMm,
    highSpotDeg: angleDegOf(eccentricityMm),
    ovalityTirMm: harmonics === 2 ? 2 * size(oval) : null,
    ovalSpotDeg: harmonics === 2 ? angleDegOf(oval) / 2 : null,
    scatterMm: fit.scatter,
    oneOff: oneOffOf(rows, readings),
    // Around an even clock of N places each coefficient has the variance 2σ²/N.
    runoutTirSdMm: fit.scatter === null ? null : 2 * fit.scatter * Math.sqrt(2 / readings.length),
  });
};

/** The reading without which the others fit, where there is one. */
const oneOffOf = (rows: readonly (readonly number[])[], readings: readonly ClockReading[]): OneOff | null => {
  const values = readings.map(({ readingMm }) => readingMm);
  const tirMm = Math.max(...values) - Math.min(...values);
  const found = readings.flatMap(({ angleDeg }, index): (OneOff & { readonly scatterMm: number })[] => {
    const fit = leastSquares(rows.toSpliced(index, 1), values.toSpliced(index, 1));
    if (fit === null || fit.scatter === null) return [];
    const expected = rows[index]!.reduce((sum, term, column) => sum + term * fit.solution[column]!, 0);
    const [, cosine = 0, sine = 0] = fit.solution;
    const restTirMm = 2 * Math.hypot(cosine, sine);
    return [{ angleDeg, deviationMm: values[index]! - expected, restTirMm, scatterMm: fit.scatter }];
  });
  const [best] = found.sort((a, b) => a.scatterMm - b.scatterMm);
  if (best === undefined) return null;
  const { scatterMm, ...oneOff } = best;
  const deviation = Math.abs(oneOff.deviationMm);
  return tirMm > 0 && deviation >= ONE_OFF_SHARE * tirMm && deviation >= ONE_OFF_TIMES * scatterMm ? oneOff : null;
};
