/** A sensor laid down anyhow. */
import type { RandomSource } from '../../src/core/simulate/random.ts';
import type { Rotation } from '../../src/core/simulate/scenario.ts';

/** Any orientation, each as likely (unit quaternion from four normals). */
export const randomRotation = (random: RandomSource): Rotation => {
  const q = [random.normal(), random.normal(), random.normal(), random.normal()];
  const n = Math.hypot(...q) || 1;
  const [w, x, y, z] = q.map((c) => c / n) as [number, number, number, number];
  return [
    1 - 2 * (y * y + z * z),
    2 * (x * y - w * z),
    2 * (x * z + w * y),
    2 * (x * y + w * z),
    1 - 2 * (x * x + z * z),
    2 * (y * z - w * x),
    2 * (x * z - w * y),
    2 * (y * z + w * x),
    1 - 2 * (x * x + y * y),
  ];
};
