/**
 * Whether a second correction fits amplitude-only runs almost as well. Each amplitude is a circle for the trial's
 * effect; circles whose centres stand nearly in a row (positions bunched together) meet at two places, one the mirror
 * image of the other in that row. Derived.
 */
import type { AmplitudeBalanceInput } from './amplitude-trials.ts';
import type { Complex } from '../../complex.ts';
import { add, angleBetweenDeg, angleDegOf, polar, scale, size, subtract, wrapDeg } from '../../complex.ts';
import { leastSquares } from '../least-squares.ts';

/** Misfit a second answer may have and still count, as a share of the amplitude as found, where none is known. */
const READING_ERROR_SHARE = 0.05;
/** A second answer nearer than this, degrees of correction angle, is the same one. */
const SAME_DEG = 30;

/**
 * A second correction that fits, if there is one.
 * @param found the trial's effect already found: size in the amplitude's unit, and the angle where it adds in full
 */
export const rivalOf = (
  input: AmplitudeBalanceInput,
  found: { readonly effect: number; readonly angleDeg: number },
): { readonly weight: number; readonly angleDeg: number } | null => {
  const effect = polar(found.effect, found.angleDeg);
  const centres = input.positions.map(({ angleDeg }) => polar(-input.baseline.amplitude, angleDeg));
  const rival = settle(input, centres, mirrored(effect, centres));
  const readings = [input.baseline, ...input.positions];
  const sd = Math.hypot(...readings.map(({ amplitudeSd }) => amplitudeSd ?? 0)) / Math.sqrt(readings.length);
  const allowed = 2 * (sd > 0 ? sd : READING_ERROR_SHARE * input.baseline.amplitude);
  const angleDeg = angleDegOf(rival);
  if (angleBetweenDeg(angleDeg, found.angleDeg) <= SAME_DEG || misfit(input, centres, rival) > allowed) return null;
  return { weight: (input.trialWeight * input.baseline.amplitude) / size(rival), angleDeg: wrapDeg(angleDeg + 180) };
};

/** Mirror image in the straight line that fits the centres best. */
const mirrored = (point: Complex, centres: readonly Complex[]): Complex => {
  const middle = scale(
    centres.reduce((sum, centre) => add(sum, centre), { re: 0, im: 0 }),
    1 / centres.length,
  );
  // Twice the angle of the line is the angle of the summed squares of the centres about their middle.
  const squares = centres
    .map((centre) => subtract(centre, middle))
    .reduce((sum, { re, im }) => ({ re: sum.re + re * re - im * im, im: sum.im + 2 * re * im }), { re: 0, im: 0 });
  const lineDeg = angleDegOf(squares) / 2;
  const from = subtract(point, middle);
  return add(middle, polar(size(from), 2 * lineDeg - angleDegOf(from)));
};

const misfit = ({ positions }: AmplitudeBalanceInput, centres: readonly Complex[], point: Complex): number => {
  const squares = positions.map(({ amplitude }, index) => (size(subtract(point, centres[index]!)) - amplitude) ** 2);
  return Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / positions.length);
};

/** Gauss-Newton steps to the nearest point that fits the circles best, halved where they would make it worse. */
const settle = (input: AmplitudeBalanceInput, centres: readonly Complex[], start: Complex): Complex => {
  let point = start;
  for (let round = 0; round < 20; round++) {
    const spokes = centres.map((centre) => subtract(point, centre));
    const rows = spokes.map((spoke) => [spoke.re / (size(spoke) || 1), spoke.im / (size(spoke) || 1)]);
    const missing = spokes.map((spoke, index) => input.positions[index]!.amplitude - size(spoke));
    const [re = 0, im = 0] = leastSquares(rows, missing)?.solution ?? [];
    let step: Complex = { re, im };
    const now = misfit(input, centres, point);
    while (size(step) > 1e-9 * size(start) && misfit(input, centres, add(point, step)) > now) step = scale(step, 0.5);
    if (size(step) <= 1e-9 * size(start)) break;
    point = add(point, step);
  }
  return point;
};
