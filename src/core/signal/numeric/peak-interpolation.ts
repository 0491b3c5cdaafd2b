/** Where between two bins a line is, and how high: T. Grandke, IEEE Trans. IM-32(2), 1983, for the Hann window. */

export interface Interpolated {
  /** Place of the line in bins (fractional). */
  readonly bin: number;
  /** Amplitude over the amplitude at its top bin. */
  readonly gain: number;
}

/**
 * Offset and amplitude of a steady line from the two largest bins of a Hann-windowed spectrum: r = |X_{k+1}|/|X_k|,
 * δ = (2r − 1)/(1 + r), A = A_k·πδ(1 − δ²)/sin πδ, k the left of the two. Exact for a lone line.
 * @param amplitude amplitude spectrum; @param top index of a local maximum, not at either end
 */
export const interpolateHann = (amplitude: Float64Array, top: number): Interpolated => {
  const rightHigher = amplitude[top + 1]! >= amplitude[top - 1]!;
  const left = rightHigher ? top : top - 1;
  const ratio = amplitude[left + 1]! / amplitude[left]!;
  const delta = Math.min(1, Math.max(0, (2 * ratio - 1) / (1 + ratio)));
  const lobe = hannLobe(delta);
  return { bin: left + delta, gain: amplitude[left]! / (lobe * amplitude[top]!) };
};

/** Hann main lobe at δ bins from its centre, 1 at 0: sin πδ/(πδ(1 − δ²)); ½ at ±1. */
export const hannLobe = (delta: number): number => {
  const d = Math.abs(delta);
  if (d < 1e-9) return 1;
  if (Math.abs(d - 1) < 1e-9) return 0.5;
  return Math.sin(Math.PI * d) / (Math.PI * d * (1 - d * d));
};
