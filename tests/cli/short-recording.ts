/** A short recording, made here: a tone of 20 Hz on the vertical axis, gravity, and seeded noise. */
import { seededRandom } from '../support/random.ts';

const RATE_HZ = 200;

export function shortCsv(seconds = 10, header = 'time (s),acc x (g),acc y (g),acc z (g)'): string {
  const random = seededRandom(7);
  const noise = (): number => 0.01 * random.normal();
  const rows = Array.from({ length: seconds * RATE_HZ }, (_, i) => {
    const t = i / RATE_HZ;
    const z = 1 + 0.1 * Math.sin(2 * Math.PI * 20 * t) + noise();
    return `${t.toFixed(3)},${noise().toFixed(5)},${noise().toFixed(5)},${z.toFixed(5)}\n`;
  });
  return `${header}\n${rows.join('')}`;
}

export const VEHICLE_WORDS = ['--tire', '265/70R17', '--axle', '3.73', '--speed', '62mph'] as const;
