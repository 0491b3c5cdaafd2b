/** The level of the spectrum under the cursor. */
import type { View } from '../state/view.svelte.ts';
import type { LevelRead } from './readout-words.ts';
import { levelAt, shownTrace } from './shown-trace.ts';

/** A pixel of a usual picture, as a share of what is shown. */
const PIXEL_SHARE = 1 / 800;

export function cursorLevel(view: View): LevelRead | null {
  const { cursorHz, picture } = view;
  if (cursorHz === null || picture === null) return null;
  const reachHz = (view.shown[1] - view.shown[0]) * PIXEL_SHARE;
  return { kind: view.levelKind, value: levelAt(shownTrace(view, picture), cursorHz, reachHz) };
}
