/** Tones of no order that stand nearer than this, relative, are one: a resonance moves with load and warmth. Judgment. */
const SAME_TONE = 0.03;

/** True of two frequencies, Hz, at which a tone of no order is held to be the same one. */
export const isSameTone = (oneHz: number, otherHz: number): boolean => Math.abs(oneHz - otherHz) < SAME_TONE * oneHz;
