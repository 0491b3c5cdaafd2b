/** The time-frequency map as pixels: more ink where it shook more (darker on paper, lighter on the dark screen). */
import type { TimeFrequency } from '../../core/signal/spectra/spectrum.ts';
import type { Domain } from './viewport.ts';

export interface MapTone {
  /** Colour of the ink, 0..255 each. */
  readonly ink: readonly [number, number, number];
  /** Levels at which the ink is absent and full, m/s². */
  readonly faintMps2: number;
  readonly fullMps2: number;
}

/**
 * Levels between which the ink runs: from the median (the floor) to near the greatest, so that a strong line does not
 * wash out the rest.
 */
export function toneRange(amplitudes: Float32Array): { faintMps2: number; fullMps2: number } {
  const step = Math.max(1, Math.floor(amplitudes.length / 20_000));
  const sample: number[] = [];
  for (let index = 0; index < amplitudes.length; index += step) {
    const value = amplitudes[index] ?? 0;
    if (value > 0) sample.push(value);
  }
  sample.sort((a, b) => a - b);
  const at = (share: number): number => sample[Math.floor(share * (sample.length - 1))] ?? 1;
  const faintMps2 = at(0.35);
  return { faintMps2, fullMps2: Math.max(at(0.998), faintMps2 * 10) };
}

/** Strength of the ink at a level, 0..1, logarithmic between the two ends. */
export function inkAt(amplitudeMps2: number, { faintMps2, fullMps2 }: Omit<MapTone, 'ink'>): number {
  if (!(amplitudeMps2 > faintMps2)) return 0;
  return Math.min(1, Math.log(amplitudeMps2 / faintMps2) / Math.log(fullMps2 / faintMps2));
}

/**
 * Draws the shown stretch of frequency. Each pixel takes the greatest level of the cells it covers, so that no line is
 * lost when there are more cells than pixels. Time runs upward: the first column of the map is the lowest row.
 *
 * @returns RGBA bytes, width·height·4, ink over transparent.
 */
export function mapPixels(
  map: TimeFrequency,
  shown: Domain,
  width: number,
  height: number,
  tone: MapTone,
): Uint8ClampedArray<ArrayBuffer> {
  const pixels = new Uint8ClampedArray(width * height * 4);
  const { bins, stepHz, amplitudeMps2 } = map;
  const times = map.timeS.length;
  const hzPerPixel = (shown[1] - shown[0]) / width;
  for (let row = 0; row < height; row++) {
    const fromTime = Math.floor(((height - 1 - row) * times) / height);
    const toTime = Math.max(fromTime + 1, Math.floor(((height - row) * times) / height));
    for (let column = 0; column < width; column++) {
      const fromHz = shown[0] + column * hzPerPixel;
      const fromBin = Math.max(0, Math.round(fromHz / stepHz));
      const toBin = Math.max(fromBin + 1, Math.round((fromHz + hzPerPixel) / stepHz));
      let greatest = 0;
      for (let time = fromTime; time < Math.min(toTime, times); time++) {
        for (let bin = fromBin; bin < Math.min(toBin, bins); bin++) {
          greatest = Math.max(greatest, amplitudeMps2[time * bins + bin] ?? 0);
        }
      }
      const at = (row * width + column) * 4;
      pixels[at] = tone.ink[0];
      pixels[at + 1] = tone.ink[1];
      pixels[at + 2] = tone.ink[2];
      pixels[at + 3] = 255 * inkAt(greatest, tone);
    }
  }
  return pixels;
}
