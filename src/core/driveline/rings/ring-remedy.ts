/** What puts right the rings that a joint has: the same rings sorted otherwise, or rings of the sizes it needs. */
import { inchFromMm } from '../../units.ts';
import type { LimitOverrides } from '../limits/limit.ts';
import type { RingAxis } from '../measurement.ts';
import { judgeRings } from './ring-seat.ts';
import { selectRings } from './ring-selection.ts';

const size = (mm: number): string => `${mm.toFixed(2)} mm (${inchFromMm(mm).toFixed(4)} in)`;

/** Sizes closer than this, mm, are one ring's. */
const ONE_SIZE_MM = 0.005;

/**
 * A joint that was apart often has its rings back in other places: then they need only be sorted.
 * @returns a sentence; null where the rings are right, or no rings would do
 */
export const ringRemedy = (axes: readonly RingAxis[], limits?: LimitOverrides): string | null => {
  const judged = judgeRings(axes, limits);
  if (!judged.ok || judged.value.inside) return null;
  const fitted = axes.flatMap(({ ring1Mm, ring2Mm }) => [ring1Mm, ring2Mm]);
  const stock = fitted.map((thicknessMm) => ({ thicknessMm, count: 1 }));
  const selection = selectRings(axes, stock, limits);
  if (!selection.ok) return null;
  const { best, centers, neededMm } = selection.value;
  if (best !== null && centers) {
    const places = best.axes.map(
      ({ ring1Mm, ring2Mm }, axis) => `axis ${axis + 1}: ${size(ring1Mm)} at ring 1 and ${size(ring2Mm)} at ring 2`,
    );
    return `The same rings do it, sorted otherwise: ${places.join('; ')}.`;
  }
  if (neededMm.some(({ ring1Mm, ring2Mm }) => ring1Mm[1] <= 0 || ring2Mm[1] <= 0)) return null;
  const span = ([least, most]: readonly [number, number]): string => `${size(Math.max(least, 0))} to ${size(most)}`;
  const needed = neededMm.map(({ ring1Mm, ring2Mm }, axis) =>
    Math.abs(ring1Mm[0] - ring2Mm[0]) < ONE_SIZE_MM
      ? `axis ${axis + 1}: two equal rings of ${span(ring1Mm)}`
      : `axis ${axis + 1}: ${span(ring1Mm)} at ring 1 and ${span(ring2Mm)} at ring 2`,
  );
  return `No sorting of these rings centers the joint with its end play. It needs, ${needed.join('; ')}.`;
};
