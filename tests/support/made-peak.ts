/** A sharp, strong peak at 30 Hz for tests of what is made of peaks. */
import type { Peak } from '../../src/core/signal/peaks/peak.ts';

export const madePeak = (changes: Partial<Peak> = {}): Peak => ({
  frequencyHz: 30,
  frequencySdHz: 0.001,
  amplitudeMps2: 0.2,
  amplitudeSdMps2: 0.002,
  axisAmplitudeMps2: [0.2],
  verticalShare: null,
  widthHz: 0.03,
  limitWidthHz: 0.03,
  overFloorDb: 30,
  falseAlarmProbability: 1e-9,
  smoothAlarmProbability: 1e-9,
  lineProbability: 1,
  ...changes,
});
