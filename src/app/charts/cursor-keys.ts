/** What the keyboard does over a chart. */
import type { View } from '../state/view.svelte.ts';

export const ZOOM = 1.6;

/** @returns True where the key meant something here. */
export function cursorKey(view: View, key: string, isShift: boolean, spanPx: number): boolean {
  const span = view.shown[1] - view.shown[0];
  const at = view.cursorHz ?? view.shown[0];
  const step = (span / Math.max(spanPx, 1)) * (isShift ? 1 : 4);
  const actions: Readonly<Record<string, () => void>> = {
    ArrowRight: () => view.moveCursor(at + step),
    ArrowLeft: () => view.moveCursor(at - step),
    ArrowUp: () => view.moveCursor(at + step),
    ArrowDown: () => view.moveCursor(at - step),
    PageUp: () => view.moveCursor(at + span / 10),
    PageDown: () => view.moveCursor(at - span / 10),
    Home: () => view.moveCursor(view.whole[0]),
    End: () => view.moveCursor(view.whole[1]),
    n: () => view.stepPeak(1),
    p: () => view.stepPeak(-1),
    '+': () => view.zoom(view.zoomHz, ZOOM),
    '=': () => view.zoom(view.zoomHz, ZOOM),
    '-': () => view.zoom(view.zoomHz, 1 / ZOOM),
    '0': () => view.showAll(),
  };
  const action = actions[key.length === 1 ? key.toLowerCase() : key];
  action?.();
  return action !== undefined;
}
