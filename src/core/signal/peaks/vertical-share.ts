/** How much of a line's shake is up and down, where the road's own shake may hide that. */
import { outer, trace, traceOfProduct, type Hermitian } from '../numeric/hermitian.ts';

/** Axes of a recording in which both horizontal directions are known. */
const ALL_AXES = 3;

/**
 * Mean square of a line's amplitude along gravity. Noise is taken off the reading; but where that leaves less there than
 * along a horizontal axis, it may be the noise that took it. Then the amplitude is taken for complex normal, before the
 * reading as strong as along each horizontal axis; the mean square after it is told (Wiener's estimate and what it leaves
 * open, e.g. Kay, Fundamentals of Statistical Signal Processing I, 1993, ch. 11).
 * @param readPower along gravity, noise taken off, (m/s²)²
 * @param noisePower what was taken off, (m/s²)²
 * @param horizontalPower over both horizontal axes, (m/s²)²
 */
export const likelyVerticalPower = (readPower: number, noisePower: number, horizontalPower: number): number => {
  const before = horizontalPower / 2;
  if (readPower >= before || !(before > 0)) return Math.max(0, readPower);
  const kept = before / (before + noisePower);
  return kept * kept * Math.max(0, readPower + noisePower) + kept * noisePower;
};

/**
 * @param power packed outer product of the line's amplitudes, noise taken off, (m/s²)²
 * @param noise what noise leaves of that where there is no line, (m/s²)²
 * @param up unit vector against gravity
 * @returns share of the power that is along gravity, 0..1
 */
export const verticalShare = (axes: number, power: Hermitian, noise: Hermitian, up: readonly number[]): number => {
  const along = outer(axes, { re: up.slice(0, axes), im: up.slice(0, axes).map(() => 0) });
  const total = Math.max(trace(axes, power), 1e-30);
  const read = traceOfProduct(axes, power, along);
  const vertical = axes < ALL_AXES ? read : likelyVerticalPower(read, traceOfProduct(axes, noise, along), total - read);
  // Of what is no more than noise no direction is known: none is made of it.
  return Math.min(1, Math.max(0, vertical / Math.max(total, trace(axes, noise))));
};
