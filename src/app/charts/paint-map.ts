/** Puts the map's pixels on a canvas. */
import type { TimeFrequency } from '../../core/signal/spectra/spectrum.ts';
import { mapPixels, toneRange } from './map-image.ts';
import type { Domain } from './viewport.ts';

interface PaintOptions {
  readonly map: TimeFrequency;
  readonly shown: Domain;
  /** CSS px. */
  readonly width: number;
  readonly height: number;
  readonly dark: boolean;
}

const INK_ON_PAPER = [27, 31, 36] as const;
const INK_ON_DARK = [236, 232, 223] as const;
const ranges = new WeakMap<TimeFrequency, { faintMps2: number; fullMps2: number }>();

export function paintMap(canvas: HTMLCanvasElement, { map, shown, width, height, dark }: PaintOptions): void {
  if (width <= 0 || height <= 0) return;
  canvas.width = Math.round(width);
  canvas.height = Math.round(height);
  canvas.style.width = `${width}px`;
  canvas.style.height = `${height}px`;
  const range = ranges.get(map) ?? toneRange(map.amplitudeMps2);
  ranges.set(map, range);
  const pixels = mapPixels(map, shown, canvas.width, canvas.height, {
    ink: dark ? INK_ON_DARK : INK_ON_PAPER,
    ...range,
  });
  canvas.getContext('2d')?.putImageData(new ImageData(pixels, canvas.width, canvas.height), 0, 0);
}
