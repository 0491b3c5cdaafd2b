/** The stretch of frequency that is shown: zoom and pan as pure functions. */

export type Domain = readonly [from: number, to: number];

/** Never zoomed closer than this share of the whole. */
const CLOSEST = 1 / 2000;

/** Zooms by a factor (above 1 is closer) and keeps the given place where it is. */
export function zoomAt(shown: Domain, whole: Domain, place: number, factor: number): Domain {
  const span = shown[1] - shown[0];
  const wanted = clamp(span / factor, (whole[1] - whole[0]) * CLOSEST, whole[1] - whole[0]);
  const share = clamp((place - shown[0]) / span, 0, 1);
  const from = place - share * wanted;
  return keepInside([from, from + wanted], whole);
}

/** Moves by a distance; stops at the ends. */
export function pan(shown: Domain, whole: Domain, distance: number): Domain {
  return keepInside([shown[0] + distance, shown[1] + distance], whole);
}

/** Moves just far enough that a place is inside, with a margin of a tenth. */
export function reveal(shown: Domain, whole: Domain, place: number): Domain {
  const margin = (shown[1] - shown[0]) / 10;
  if (place < shown[0] + margin) return pan(shown, whole, place - margin - shown[0]);
  if (place > shown[1] - margin) return pan(shown, whole, place + margin - shown[1]);
  return shown;
}

function keepInside([from, to]: Domain, whole: Domain): Domain {
  const span = Math.min(to - from, whole[1] - whole[0]);
  const start = clamp(from, whole[0], whole[1] - span);
  return [start, start + span];
}

const clamp = (value: number, low: number, high: number): number => Math.min(high, Math.max(low, value));
