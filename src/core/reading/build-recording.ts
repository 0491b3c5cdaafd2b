/** From the columns of a file to a recording: time base, units, repairs, gravity, speeds. */
import type { Note, Problem } from '../note.ts';
import { STANDARD_GRAVITY_MPS2 } from '../units.ts';
import type { AxisColumn } from './layout/acceleration-columns.ts';
import { decideUnits, unitByHand } from './acceleration-unit.ts';
import { clippedShare } from './repair/clipping.ts';
import type { Place } from './layout/columns.ts';
import type { Layout } from './layout/layout.ts';
import { readingProblems } from './problems.ts';
import type { Body } from './rows/read-body.ts';
import type { Recording, Segment, Track } from './recording.ts';
import { notesOfReading, repairValues, SHORTEST_PIECE_ROWS } from './repair/repair.ts';
import type { RowRange } from './repair/repair-values.ts';
import type { Table } from './rows/row-sink.ts';
import type { Given } from './given.ts';
import { withoutDropouts } from './repair/speed-dropouts.ts';
import { meanOfWheels, speedTrack } from './speed-track.ts';
import { timeOfRows } from './time/row-times.ts';
import type { RowTimes } from './time/row-times.ts';

/** Below this not even a wheel at road speed (10 to 15 Hz) is under half the rate with room to spare. */
const LEAST_RATE_HZ = 20;
/** A nominal 20 Hz may come out a little lower. */
const RATE_TOLERANCE = 0.97;

export function buildRecording(layout: Layout, body: Body, place: Place, given: Given): Recording | Problem {
  const { table } = body;
  const notes: Note[] = [...layout.notes, ...notesOfReading(body)];
  const line = layout.bodyLine;
  if (table.rows === 0) return readingProblems.noUsableRows(place.file, line, 'none has a readable acceleration');
  if (table.rows < SHORTEST_PIECE_ROWS) return tooFew(body, place.file, line);
  const live = liveAxes(layout, table, notes);
  if (live.columns.length === 0)
    return readingProblems.noUsableRows(place.file, line, 'no acceleration cell is a number');
  const byHand = given.accelerationUnit ? unitByHand(given.accelerationUnit) : null;
  const units = decideUnits(live.columns, live.axes, { ...place, line }, byHand, layout.statedUnit);
  if ('code' in units) return units;
  notes.push(...units.notes);
  const timed = timeOfRows(layout, { ...table, axes: live.axes }, place, given.samplingRateHz, notes);
  if ('code' in timed) return timed;
  if (timed.rateHz < LEAST_RATE_HZ * RATE_TOLERANCE)
    return readingProblems.rateTooLow(place.file, line, timed.rateHz, LEAST_RATE_HZ);
  const axes = live.axes.map((axis) => axis.subarray(0, timed.rows));
  axes.forEach((axis, k) => scale(axis, units.channels[k]!.mps2PerUnit));
  if (axes.every((axis) => axis.every((value) => value === axis[0])))
    return readingProblems.constantAcceleration(place.file, line);
  const ranges = repairValues(axes, timed.breaks, timed.rateHz, notes);
  const usable = ranges.reduce((sum, [from, to]) => sum + to - from, 0);
  if (usable < SHORTEST_PIECE_ROWS) return readingProblems.tooFewRows(place.file, line, usable, SHORTEST_PIECE_ROWS);
  const segments = ranges.map((range) => segment(axes, timed, range, ranges.length === 1));
  const clipped = clippedShare(axes, ranges);
  if (clipped > 0)
    notes.push({
      code: 'values-clipped',
      severity: 'warning',
      text: `${percent(clipped)} of the samples stand at the end stop of the sensor; peaks are cut off and harmonics of them are not real.`,
    });
  const tracks = speeds(layout, table, timed, notes);
  const gravity = gravityOf(axes, ranges, notes);
  return {
    name: place.file,
    samplingRateHz: timed.rateHz,
    timeBase: timed.timeBase,
    durationS: segments.reduce((sum, piece) => sum + lengthS(piece, timed.rateHz), 0),
    channels: units.channels,
    segments,
    gravity,
    ...tracks,
    clippedShare: clipped,
    notes,
  };
}

/** A short recording, or one most of whose lines are no rows of numbers: recording longer would not help that. */
function tooFew({ table, lastLine }: Body, file: string, line: number): Problem {
  return lastLine - line > 2 * table.rows
    ? readingProblems.fewReadable(file, line, table.rows)
    : readingProblems.tooFewRows(file, line, table.rows, SHORTEST_PIECE_ROWS);
}

/** Axes whose column holds a number at all; a dead one is left out and told. */
function liveAxes(
  layout: Layout,
  table: Table,
  notes: Note[],
): { columns: readonly AxisColumn[]; axes: Float64Array[] } {
  const live = table.axes.map((axis) => axis.some((value) => !Number.isNaN(value)));
  layout.roles.axes.forEach(({ name }, k) => {
    if (!live[k])
      notes.push({ code: 'axis-empty', severity: 'warning', text: `"${name}" holds no number and is left out.` });
  });
  return { columns: layout.roles.axes.filter((_, k) => live[k]), axes: table.axes.filter((_, k) => live[k]) };
}

const percent = (share: number): string => `${Number((100 * share).toPrecision(2))} %`;

function scale(axis: Float64Array, factor: number): void {
  if (factor !== 1) for (let i = 0; i < axis.length; i++) axis[i] = axis[i]! * factor;
}

function lengthS(piece: Segment, rateHz: number): number {
  const samples = piece.accelerationMps2[0]?.length ?? 0;
  return piece.timeS ? (piece.timeS.at(-1) ?? 0) + 1 / rateHz : samples / rateHz;
}

function segment(axes: readonly Float64Array[], timed: RowTimes, [from, to]: RowRange, whole: boolean): Segment {
  // One piece of everything keeps its memory; several pieces get their own, so that each can be posted alone.
  const cut = (values: Float64Array): Float64Array =>
    whole && from === 0 && to === values.length && values.byteLength === values.buffer.byteLength
      ? values
      : values.slice(from, to);
  const { times } = timed;
  const startS = times ? times[from]! : from / timed.rateHz;
  const even = !times || (timed.uniform && !timed.holes.some(({ row }) => row > from && row < to));
  return {
    startS,
    timeS: even || !times ? null : times.slice(from, to).map((time) => time - startS),
    accelerationMps2: axes.map(cut),
  };
}

/** Mean vector over all pieces; null where it is far from gravity's size, or cannot be known from one or two axes. */
function gravityOf(axes: readonly Float64Array[], ranges: readonly RowRange[], notes: Note[]): Recording['gravity'] {
  let rows = 0;
  const sums = axes.map(() => 0);
  for (const [from, to] of ranges) {
    rows += to - from;
    axes.forEach((axis, k) => {
      let sum = 0;
      for (let i = from; i < to; i++) sum += axis[i]!;
      sums[k]! += sum;
    });
  }
  const vector = sums.map((sum) => sum / rows);
  const mps2 = Math.hypot(...vector);
  const ratio = mps2 / STANDARD_GRAVITY_MPS2;
  if (ratio > 0.5 && ratio < 1.5 && (axes.length === 3 || Math.abs(ratio - 1) < 0.15)) {
    if (Math.abs(ratio - 1) > 0.1)
      notes.push({
        code: 'gravity-odd',
        severity: 'warning',
        text: `Gravity reads ${mps2.toFixed(1)} m/s² instead of 9.8: levels may be off by as much.`,
      });
    return { mps2, direction: vector.map((part) => part / mps2) };
  }
  const text =
    axes.length === 3
      ? 'The mean acceleration is not gravity: the logger has removed it, so up and sideways cannot be told apart.'
      : `${axes.length} of three axes recorded; the direction of gravity is not known.`;
  notes.push({ code: 'gravity-not-known', severity: 'info', text });
  return null;
}

/** How many of the rising numbers are at most this. */
function countUpTo(rising: readonly number[], limit: number): number {
  let low = 0;
  let high = rising.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (rising[middle]! <= limit) low = middle + 1;
    else high = middle;
  }
  return low;
}

type Tracks = Pick<Recording, 'roadSpeedMps' | 'wheelSpeedMps' | 'engineSpeedRpm'>;

function speeds(layout: Layout, table: Table, timed: RowTimes, notes: Note[]): Tracks {
  const { roadSpeed, wheelSpeeds, engineSpeed } = layout.roles;
  const timeOf = (row: number): number => {
    const now = row - countUpTo(timed.dropped, row);
    return timed.times ? timed.times[Math.min(timed.rows - 1, now)]! : now / timed.rateHz;
  };
  let slot = 0;
  const tracks: { -readonly [K in keyof Tracks]: Track } = {};
  const found = (track: Track | null, name: string): Track | null => {
    if (!track) notes.push({ code: 'speed-column-empty', severity: 'info', text: `"${name}" holds no usable value.` });
    return track;
  };
  const followed = (track: Track | null, name: string): Track | null => {
    const whole = found(track, name);
    if (!whole) return null;
    const { track: left, count, seconds } = withoutDropouts(whole);
    if (count > 0)
      notes.push({
        code: 'speed-dropouts',
        severity: 'warning',
        text: `"${name}" falls to nought from a drive, or rises from it, at once: ${count} ${count === 1 ? 'time' : 'times'}, ${seconds.toFixed(0)} s in all, taken for a lost signal and left out.`,
      });
    return left.value.length > 0 ? left : null;
  };
  if (roadSpeed) {
    const track = followed(speedTrack(roadSpeed, table.speeds[slot++]!, table.rows, timeOf, 'speed'), roadSpeed.name);
    if (track) tracks.roadSpeedMps = track;
  }
  if (wheelSpeeds.length > 0) {
    const { column, sparse } = meanOfWheels(wheelSpeeds, table.speeds.slice(slot, slot + wheelSpeeds.length));
    slot += wheelSpeeds.length;
    const track = followed(speedTrack(column, sparse, table.rows, timeOf, 'speed'), column.name);
    if (track) tracks.wheelSpeedMps = track;
  }
  if (engineSpeed) {
    const track = found(speedTrack(engineSpeed, table.speeds[slot]!, table.rows, timeOf, 'turning'), engineSpeed.name);
    if (track) tracks.engineSpeedRpm = track;
  }
  return tracks;
}
