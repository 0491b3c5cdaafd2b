/** Cutting pieces into overlapped segments and transforming each axis of each. */
import { complexArray, isPowerOfTwo, realSpectrum, realSpectrumPair, type ComplexArray } from './fft.ts';
import type { Prepared } from './spectrum.ts';

/** A segment: which piece, and where it begins in it. */
export interface Cut {
  readonly piece: number;
  readonly offset: number;
}

/** Whole segments of the given length in every piece, `hop` samples apart. */
export const cutSegments = (prepared: Prepared, length: number, hop: number): readonly Cut[] => {
  const cuts: Cut[] = [];
  prepared.pieces.forEach(({ axes }, piece) => {
    const n = axes[0]?.length ?? 0;
    for (let offset = 0; offset + length <= n; offset += hop) cuts.push({ piece, offset });
  });
  return cuts;
};

/**
 * Transforms the windowed segments one axis at a time and hands each spectrum over (bins 0 … ⌊size/2⌋, unscaled).
 * The spectrum handed over is reused for the next: read it, do not keep it. Order: cut by cut, axis by axis.
 */
export const forEachSpectrum = (
  prepared: Pick<Prepared, 'pieces'>,
  cuts: readonly Cut[],
  window: Float64Array,
  axes: readonly number[],
  use: (spectrum: ComplexArray, cut: number, axis: number) => void,
  size: number = window.length,
): void => {
  const length = window.length;
  const bins = Math.floor(size / 2) + 1;
  const paired = isPowerOfTwo(size) && size >= 2;
  const buffers = [new Float64Array(length), new Float64Array(length)] as const;
  const outs = [complexArray(bins), complexArray(bins)] as const;
  const fill = (into: Float64Array, cut: Cut, axis: number): void => {
    const samples = prepared.pieces[cut.piece]!.axes[axis]!;
    for (let i = 0; i < length; i++) into[i] = samples[cut.offset + i]! * window[i]!;
  };
  let waiting: { cut: number; axis: number } | null = null;
  cuts.forEach((cut, index) => {
    for (const axis of axes) {
      if (!paired) {
        fill(buffers[0], cut, axis);
        use(realSpectrum(buffers[0], size, outs[0]), index, axis);
      } else if (!waiting) {
        fill(buffers[0], cut, axis);
        waiting = { cut: index, axis };
      } else {
        fill(buffers[1], cut, axis);
        realSpectrumPair(buffers[0], buffers[1], size, outs[0], outs[1]);
        use(outs[0], waiting.cut, waiting.axis);
        use(outs[1], index, axis);
        waiting = null;
      }
    }
  });
  const last = waiting as { cut: number; axis: number } | null;
  if (last) use(realSpectrum(buffers[0], size, outs[0]), last.cut, last.axis);
};
