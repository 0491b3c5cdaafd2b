/** A line-like maximum of the spectrum, over all axes together. */
export interface Peak {
  readonly frequencyHz: number;
  /** Standard uncertainty, Hz. */
  readonly frequencySdHz: number;
  /** Root-sum-square over the axes of the 0-to-peak amplitudes, m/s² (the true amplitude of a straight-line motion). */
  readonly amplitudeMps2: number;
  readonly amplitudeSdMps2: number;
  /** 0-to-peak amplitude on each channel, m/s². */
  readonly axisAmplitudeMps2: readonly number[];
  /** Share of the power along gravity, 0..1; null where gravity's direction is unknown. */
  readonly verticalShare: number | null;
  /** Full width at half power, Hz, and the least the analysis could have shown for a pure line. */
  readonly widthHz: number;
  readonly limitWidthHz: number;
  /** Wander of its frequency that its phases leave room for, Hz (rms); absent where it was read in slices. */
  readonly wanderHz?: number;
  /** Level over the local noise floor, dB, in the analysis that found it. */
  readonly overFloorDb: number;
  /** Probability that noise alone, smooth or of a resonance, gives a peak this high anywhere in the spectrum. */
  readonly falseAlarmProbability: number;
  /** The same of smooth noise. */
  readonly smoothAlarmProbability: number;
  /** How narrow and steady it is: probability that this is a line rather than a resonance shaken by the road. */
  readonly lineProbability: number;
}
