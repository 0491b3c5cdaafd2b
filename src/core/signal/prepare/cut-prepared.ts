/** Parts of a prepared recording. */
import type { Span } from '../../reading/cut-recording.ts';
import type { Prepared } from '../spectra/spectrum.ts';

/** What lies within some spans of the recording's clock. Samples are not copied. */
export const cutPrepared = (prepared: Prepared, spans: readonly Span[]): Prepared => {
  const { samplingRateHz: rate } = prepared;
  const pieces = prepared.pieces.flatMap(({ startS, axes }) =>
    spans.flatMap(({ fromS, toS }) => {
      const count = axes[0]?.length ?? 0;
      const from = Math.min(count, Math.max(0, Math.ceil((fromS - startS) * rate)));
      const to = Math.min(count, Math.max(0, Math.ceil((toS - startS) * rate)));
      return to - from < 2 ? [] : [{ startS: startS + from / rate, axes: axes.map((axis) => axis.subarray(from, to)) }];
    }),
  );
  const samples = pieces.reduce((sum, { axes }) => sum + (axes[0]?.length ?? 0), 0);
  return { ...prepared, durationS: samples / rate, pieces };
};
