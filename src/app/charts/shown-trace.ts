/** The spectrum as it is looked at, and what it reads at a place. */
import type { RunPicture } from '../../core/report/analysis.ts';
import type { View } from '../state/view.svelte.ts';
import { levelOf, shareOfPeaks } from './level.ts';
import type { TraceInput } from './trace.ts';

/** The trace of the run's picture, in the reader's kind of level. */
export function shownTrace(view: View, picture: RunPicture): TraceInput {
  const { amplitudeMps2: amplitudes, stepHz } = (view.byAngle && picture.orderSpectrum) || picture.spectrum;
  return { amplitudes, stepHz, kind: view.levelKind, verticalShare: shareOfPeaks(view.peaks) };
}

/** The greatest level within reach of a place: what the picture shows there in one pixel. */
export function levelAt({ amplitudes, stepHz, kind, verticalShare }: TraceInput, hz: number, reachHz: number): number {
  const first = Math.max(0, Math.round((hz - reachHz) / stepHz));
  const last = Math.min(amplitudes.length - 1, Math.round((hz + reachHz) / stepHz));
  let level = 0;
  for (let bin = first; bin <= last; bin++) {
    level = Math.max(level, levelOf(kind, bin * stepHz, amplitudes[bin] ?? 0, verticalShare));
  }
  return level;
}
