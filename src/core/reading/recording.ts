import type { Note } from '../note.ts';

/** A file as the browser and the command line both hand it over. Large files arrive as chunks, in order. */
export interface SourceFile {
  readonly name: string;
  /** The bytes, whole or in consecutive chunks of any size. */
  readonly bytes: Uint8Array | AsyncIterable<Uint8Array>;
  /** Total length where known, for progress. */
  readonly sizeBytes?: number;
}

export type AxisName = 'x' | 'y' | 'z';

/** One acceleration axis, as the file had it. */
export interface Channel {
  readonly axis: AxisName;
  /** Header word or 'column 3'. */
  readonly columnName: string;
  /** Unit in the file. Samples in the recording are always m/s². */
  readonly unit: 'm/s²' | 'g' | 'mg' | 'mm/s²' | 'counts';
  /** Why this unit is believed, in a sentence. */
  readonly unitBecause: string;
  /** Factor that took the file's numbers to m/s². */
  readonly mps2PerUnit: number;
}

/** A piece of recording without a gap. All axes have the same number of samples. */
export interface Segment {
  /** Time of the first sample on the recording's own clock, s. */
  readonly startS: number;
  /** Sample times relative to startS, s; null where the samples are evenly spaced at the recording's rate. */
  readonly timeS: Float64Array | null;
  /** Acceleration per axis in channel order, m/s², gravity still in it. */
  readonly accelerationMps2: readonly Float64Array[];
}

/** A slow quantity logged beside the acceleration, on the recording's clock. Only rows that changed or were valid. */
export interface Track {
  readonly timeS: Float64Array;
  readonly value: Float64Array;
  /** Header word it came from. */
  readonly columnName: string;
  /** Unit in the file, in words. */
  readonly unit: string;
  /** Why this unit is believed. */
  readonly unitBecause: string;
  /** Smallest step seen between differing values, in the track's unit; tells a coarse logger from a fine one. */
  readonly step: number;
  /** Typical time between fresh values, s. */
  readonly intervalS: number;
}

export interface TimeBase {
  /** Where the rate comes from. */
  readonly from: 'stamps' | 'stated-in-file' | 'given-by-user';
  readonly because: string;
  /** Standard deviation of the sample times about even spacing, s (0 where no stamps). */
  readonly jitterSdS: number;
  /** True where the stamps' unevenness is their own coarseness or the logger's late writing, not uneven sampling. */
  readonly evenSampling: boolean;
}

/** Sampled acceleration with its time base. Plain data: can be posted to a worker and stored as it is. */
export interface Recording {
  readonly name: string;
  readonly samplingRateHz: number;
  readonly timeBase: TimeBase;
  /** Sum of the segments' lengths, s. */
  readonly durationS: number;
  readonly channels: readonly Channel[];
  readonly segments: readonly Segment[];
  /** Mean acceleration vector in channel order; null where the logger has already removed gravity. */
  readonly gravity: { readonly mps2: number; readonly direction: readonly number[] } | null;
  /** Road speed, m/s. */
  readonly roadSpeedMps?: Track;
  /** Road speed as the driven or mean wheel reports it, m/s. */
  readonly wheelSpeedMps?: Track;
  /** Engine speed, rev/min. */
  readonly engineSpeedRpm?: Track;
  /** Share of samples at the sensor's end stop, 0..1. */
  readonly clippedShare: number;
  /** Every decision and repair, in reading order. */
  readonly notes: readonly Note[];
}
