/** Pointer, pinch and wheel over a chart, turned into frequencies. One attachment; knows no chart. */
import type { Attachment } from 'svelte/attachments';

export interface PointerActions {
  /** Frequency under a place, px from the left edge of the element. */
  readonly hzAt: (xPx: number) => number;
  readonly cursor: (hz: number | null) => void;
  readonly pick: (hz: number) => void;
  readonly zoom: (placeHz: number, factor: number) => void;
  readonly pan: (distanceHz: number) => void;
  /** A stretch being drawn with the pointer, px; null when it ends or is given up. */
  readonly band: (stretch: readonly [number, number] | null) => void;
  readonly zoomTo: (fromHz: number, toHz: number) => void;
}

/** A pointer that moved less than this was a tap, px. */
const TAP_PX = 5;
const WHEEL_ZOOM = 1.0016;

/** `actions` is asked anew at each event, so that it may close over changing scales. */
export function chartPointer(actions: () => PointerActions): Attachment<HTMLElement> {
  return (element) => {
    const down = new Map<number, number>();
    let start: number | null = null;
    let panning = false;
    const place = (event: MouseEvent): number => event.clientX - element.getBoundingClientRect().left;

    const onDown = (event: PointerEvent): void => {
      if (event.button !== 0) return;
      down.set(event.pointerId, place(event));
      element.setPointerCapture(event.pointerId);
      start = down.size === 1 ? place(event) : null;
      panning = event.shiftKey && start !== null;
      actions().band(null);
      actions().cursor(actions().hzAt(place(event)));
    };
    const onMove = (event: PointerEvent): void => {
      const { hzAt, cursor, band, pan } = actions();
      const x = place(event);
      const before = down.get(event.pointerId);
      if (before !== undefined && down.size === 2) {
        pinch(event.pointerId, x);
        return;
      }
      cursor(hzAt(x));
      if (before === undefined || event.pointerType === 'touch') return;
      if (panning) {
        pan(hzAt(before) - hzAt(x));
        down.set(event.pointerId, x);
        start = null;
      } else if (start !== null && Math.abs(x - start) > TAP_PX) band([Math.min(start, x), Math.max(start, x)]);
    };
    const pinch = (pointerId: number, x: number): void => {
      const { hzAt, zoom, pan } = actions();
      const other = [...down].find(([id]) => id !== pointerId)?.[1] ?? 0;
      const before = down.get(pointerId) ?? x;
      down.set(pointerId, x);
      const [was, is] = [Math.abs(before - other), Math.abs(x - other)];
      const middle = (x + other) / 2;
      pan(hzAt((before + other) / 2) - hzAt(middle));
      if (was > 20 && is > 20) zoom(hzAt(middle), is / was);
    };
    const onUp = (event: PointerEvent): void => {
      const { hzAt, pick, band, zoomTo } = actions();
      const x = place(event);
      if (down.delete(event.pointerId) && start !== null) {
        if (Math.abs(x - start) <= TAP_PX) pick(hzAt(x));
        else if (event.pointerType !== 'touch') zoomTo(hzAt(Math.min(start, x)), hzAt(Math.max(start, x)));
      }
      start = null;
      band(null);
    };
    const onCancel = (event: PointerEvent): void => {
      down.delete(event.pointerId);
      start = null;
      actions().band(null);
    };
    // A finger that is lifted leaves the reading behind: there is no hovering with it.
    const onLeave = (event: PointerEvent): void => {
      if (down.size === 0 && event.pointerType !== 'touch') actions().cursor(null);
    };
    // A page that is scrolled past must not zoom: the wheel belongs to the chart once it has been clicked, or with Ctrl.
    const onWheel = (event: WheelEvent): void => {
      const { hzAt, zoom, pan } = actions();
      const x = place(event);
      if (Math.abs(event.deltaX) > Math.abs(event.deltaY)) {
        event.preventDefault();
        pan(hzAt(event.deltaX) - hzAt(0));
      } else if (event.ctrlKey || element.contains(document.activeElement)) {
        event.preventDefault();
        zoom(hzAt(x), WHEEL_ZOOM ** -(event.deltaY * (event.ctrlKey ? 4 : 1)));
      }
    };
    element.addEventListener('pointerdown', onDown);
    element.addEventListener('pointermove', onMove);
    element.addEventListener('pointerup', onUp);
    element.addEventListener('pointercancel', onCancel);
    element.addEventListener('pointerleave', onLeave);
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => {
      element.removeEventListener('pointerdown', onDown);
      element.removeEventListener('pointermove', onMove);
      element.removeEventListener('pointerup', onUp);
      element.removeEventListener('pointercancel', onCancel);
      element.removeEventListener('pointerleave', onLeave);
      element.removeEventListener('wheel', onWheel);
    };
  };
}
