/** An order read most surely: of two runs with the sensor mounted alike, motions with less noise count for more. */
import { inverse, traceOfProduct } from '../../signal/numeric/hermitian.ts';
import { levelOf, matricesOf } from '../../signal/speed/order-level.ts';
import type { OrderLevel } from '../../signal/speed/order-level.ts';
import type { OrderReadings } from '../../signal/speed/order-readings.ts';

/** Where noise is this share of the order's power it no longer matters, and all axes count alike. */
const NOISE_MATTERS = 0.003;

/**
 * Both levels with the motion weighed by one over the covariance of the noise beside the order, the least-variance mean of
 * what the axes tell of one change. The weights are scaled so that the first run's order keeps its power.
 */
export function weighed(one: OrderReadings, other: OrderReadings): [OrderLevel, OrderLevel] {
  const { axes } = one;
  const [a, b] = [matricesOf(one), matricesOf(other)];
  const plain = levelOf(one);
  if (!(plain.power > 0) || axes < 2) return [plain, levelOf(other)];
  const noise = a.noise.map((entry, q) => (entry + b.noise[q]!) / 2);
  for (let axis = 0; axis < axes; axis += 1) noise[axis]! += NOISE_MATTERS * plain.power;
  const raw = inverse(axes, noise);
  const order = a.at.map((entry, q) => entry - a.noise[q]!);
  const scale = plain.power / traceOfProduct(axes, raw, order);
  if (!(scale > 0)) return [plain, levelOf(other)];
  const weights = raw.map((entry) => scale * entry);
  return [levelOf(one, weights), levelOf(other, weights)];
}
