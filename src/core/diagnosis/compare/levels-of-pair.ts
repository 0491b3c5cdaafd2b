/** An order read most surely in two runs with the sensor mounted alike. */
import { inverse, traceOfProduct } from '../../signal/numeric/hermitian.ts';
import { levelOf, matricesOf } from '../../signal/speed/order-level.ts';
import type { OrderLevel } from '../../signal/speed/order-level.ts';
import type { OrderReadings } from '../../signal/speed/order-readings.ts';

/** Where noise is less than this share of the order's power, how well the track fits it matters more. */
const NOISE_MATTERS = 0.01;
/** Noise that is added to that of all axes, as a share of the order's power: beyond this, less noise tells no more. */
const NOISE_ENOUGH = 0.003;

/**
 * Both levels: where noise does not matter in either, the whole lobe on all axes; else the middle of it, the motion
 * weighed by one over the covariance of the noise beside the order, the least-variance mean of what the axes tell of one
 * change. The weights are scaled so that the first run's order keeps its power.
 */
export function levelsOfPair(one: OrderReadings, other: OrderReadings): [OrderLevel, OrderLevel] {
  const plain = [levelOf(one), levelOf(other)] as const;
  if (plain.every(({ power, noisePower }) => noisePower < NOISE_MATTERS * power))
    return [levelOf(one, { wholeLobe: true }), levelOf(other, { wholeLobe: true })];
  const { axes } = one;
  const [{ power }] = plain;
  if (!(power > 0) || axes < 2) return [...plain];
  const [a, b] = [matricesOf(one), matricesOf(other)];
  const noise = a.noise.map((entry, q) => (entry + b.noise[q]!) / 2);
  for (let axis = 0; axis < axes; axis += 1) noise[axis]! += NOISE_ENOUGH * power;
  const raw = inverse(axes, noise);
  const order = a.at.map((entry, q) => entry - a.noise[q]!);
  const scale = power / traceOfProduct(axes, raw, order);
  if (!(scale > 0)) return [...plain];
  const weights = raw.map((entry) => scale * entry);
  return [levelOf(one, { weights }), levelOf(other, { weights })];
}
