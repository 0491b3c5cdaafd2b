/** Samples made by a study, as a recording: even, in m/s², gravity not in it. */
import type { AxisName, Recording, Track } from '../../src/core/reading/recording.ts';

const AXES: readonly AxisName[] = ['x', 'y', 'z'];

export const plainRecording = (
  axes: readonly Float64Array[],
  samplingRateHz: number,
  roadSpeedMps?: Track,
): Recording => ({
  name: 'study',
  samplingRateHz,
  timeBase: { from: 'stated-in-file', because: 'made by a study', jitterSdS: 0, evenSampling: true },
  durationS: axes[0]!.length / samplingRateHz,
  channels: axes.map((_, a) => ({
    axis: AXES[a]!,
    columnName: AXES[a]!,
    unit: 'm/s²',
    unitBecause: 'made by a study',
    mps2PerUnit: 1,
  })),
  segments: [{ startS: 0, timeS: null, accelerationMps2: axes }],
  gravity: null,
  ...(roadSpeedMps && { roadSpeedMps }),
  clippedShare: 0,
  notes: [],
});
