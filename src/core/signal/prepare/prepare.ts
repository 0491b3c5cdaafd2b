/** Recording → Prepared: even samples, gravity and slow drift taken out, the direction of gravity kept. */
import type { Note } from '../../note.ts';
import type { Recording, Segment } from '../../reading/recording.ts';
import { withoutDrift } from './drift.ts';
import { resampleEvenly } from './resample.ts';
import type { Prepared } from '../spectra/spectrum.ts';

/** A piece shorter than this cannot tell lines apart that matter (two bins of 1 Hz), s. */
const SHORTEST_PIECE_S = 2;

const evenAxes = (segment: Segment, samplingRateHz: number): Float64Array[] =>
  segment.timeS
    ? resampleEvenly(segment.timeS, segment.accelerationMps2, samplingRateHz)
    : [...segment.accelerationMps2];

/**
 * Even pieces without gravity or drift.
 *
 * Where a segment carries sample times it is resampled evenly at the recording's rate. From each axis its slow part is
 * taken (below about 0.5 Hz: gravity, grade, braking). Pieces under 2 s are left out unless there is nothing longer;
 * `preparationNotes` says so.
 */
export const prepare = (recording: Recording): Prepared => {
  const { samplingRateHz } = recording;
  const kept = keptSegments(recording);
  const pieces = kept.map((segment) => ({
    startS: segment.startS + (segment.timeS ? segment.timeS[0]! : 0),
    axes: evenAxes(segment, samplingRateHz).map((axis) => withoutDrift(axis, samplingRateHz)),
  }));
  const samples = pieces.reduce((sum, piece) => sum + piece.axes[0]!.length, 0);
  return {
    samplingRateHz,
    durationS: samples / samplingRateHz,
    pieces,
    up: recording.gravity ? recording.gravity.direction : null,
  };
};

const lengthS = (segment: Segment, samplingRateHz: number): number =>
  (segment.accelerationMps2[0]?.length ?? 0) / samplingRateHz;

const keptSegments = ({ segments, samplingRateHz }: Recording): readonly Segment[] => {
  const filled = segments.filter((segment) => (segment.accelerationMps2[0]?.length ?? 0) > 1);
  const long = filled.filter((segment) => lengthS(segment, samplingRateHz) >= SHORTEST_PIECE_S);
  if (long.length > 0) return long;
  const longest = [...filled].sort((a, b) => lengthS(b, samplingRateHz) - lengthS(a, samplingRateHz));
  return longest.slice(0, 1);
};

/** What preparation left out or changed, for the report. */
export const preparationNotes = (recording: Recording): readonly Note[] => {
  const kept = new Set(keptSegments(recording));
  const dropped = recording.segments.filter((segment) => !kept.has(segment));
  const notes: Note[] = [];
  if (dropped.length > 0) {
    const seconds = dropped.reduce((sum, segment) => sum + lengthS(segment, recording.samplingRateHz), 0);
    notes.push({
      code: 'short-pieces-left-out',
      severity: seconds > 0.1 * recording.durationS ? 'warning' : 'info',
      text:
        `${dropped.length} ${dropped.length === 1 ? 'piece' : 'pieces'} between gaps, ${seconds.toFixed(1)} s in all, ` +
        `${dropped.length === 1 ? 'was' : 'were'} left out: under ${SHORTEST_PIECE_S} s a piece cannot tell lines apart.`,
    });
  }
  if (recording.segments.some((segment) => kept.has(segment) && segment.timeS)) {
    notes.push({
      code: 'resampled-evenly',
      severity: 'info',
      text: `Uneven samples were resampled evenly at ${Number(recording.samplingRateHz.toPrecision(5))} Hz.`,
    });
  }
  return notes;
};
