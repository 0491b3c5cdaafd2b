/** Repairs of time stamps; the list of all repairs stands in repair.ts. Each works in place and tells what it did. */
import type { Note } from '../../note.ts';
import { medianOf } from '../layout/gravity-size.ts';

const plural = (count: number, one: string, many = `${one}s`): string => `${count} ${count === 1 ? one : many}`;

/** Counters of this many bits start again from zero: common in small loggers. */
const COUNTER_SIZES = [2 ** 16, 2 ** 24, 2 ** 31, 2 ** 32];

/**
 * A clock without a date starts again at midnight (or on the hour), a counter of 16 or 32 bits at its end: the stamps
 * after it are moved up by the length of the round.
 *
 * @param stamps differences from the first stamp, in the column's unit
 * @param clockWrap length of the clock's round in that unit, 0 for numbers
 */
export function unwrap(stamps: Float64Array, clockWrap: number, notes: Note[]): void {
  let offset = 0;
  let rounds = 0;
  let before = NaN;
  const step = Math.max(1e-12, medianStep(stamps));
  const round = (drop: number): number => {
    if (clockWrap > 0) return drop > clockWrap / 2 ? clockWrap : 0;
    return COUNTER_SIZES.find((size) => drop < size && drop > size - 50 * step) ?? 0;
  };
  for (let i = 0; i < stamps.length; i++) {
    const stamp = stamps[i]!;
    if (Number.isNaN(stamp)) continue;
    if (stamp < before) {
      const size = round(before - stamp);
      if (size > 0) {
        offset += size;
        rounds++;
      }
    }
    before = stamp;
    stamps[i] = stamp + offset;
  }
  if (rounds === 0) return;
  const what =
    clockWrap > 0 ? 'The clock passed midnight or the full hour' : 'The time counter reached its end and started again';
  notes.push({
    code: 'clock-wrapped',
    severity: 'info',
    text: `${what} ${plural(rounds, 'time')}; the time is continued.`,
  });
}

const medianStep = (stamps: Float64Array): number => {
  const steps: number[] = [];
  const stride = Math.max(1, Math.floor(stamps.length / 4000));
  for (let i = 1; i < stamps.length; i += stride) {
    const step = stamps[i]! - stamps[i - 1]!;
    if (step > 0) steps.push(step);
  }
  return medianOf(steps) || 0;
};

/**
 * A stamp that falls out of line while its neighbours run on is a misread one; it and stamps that cannot be read are
 * set between their neighbours. @returns number of stamps set
 */
export function replaceStrayStamps(stamps: Float64Array, notes: Note[]): void {
  let unreadable = 0;
  for (let i = 0; i < stamps.length; i++) if (Number.isNaN(stamps[i]!)) unreadable++;
  let stray = removeFarStamps(stamps);
  for (let i = 1; i + 1 < stamps.length; i++) {
    const before = stamps[i - 1]!;
    const here = stamps[i]!;
    const after = stamps[i + 1]!;
    if (!(after >= before) || (here >= before && here <= after)) continue;
    // Only this stamp is out of line: its neighbours are in order without it.
    stamps[i] = NaN;
    stray++;
  }
  if (unreadable + stray > 0) fillBetween(stamps);
  if (unreadable > 0)
    notes.push({
      code: 'stamps-unreadable',
      severity: 'warning',
      text: `${plural(unreadable, 'time stamp')} could not be read; set between the neighbors.`,
    });
  if (stray > 0)
    notes.push({
      code: 'stamps-out-of-line',
      severity: 'warning',
      text: `${plural(stray, 'time stamp')} out of line with both neighbors; set between them.`,
    });
}

/** A stamp this many lengths of the recording away from the middle is no pause but a misread number; judgment. */
const FAR = 1e5;

/** Stamps beyond all reason become unreadable, or one of them would eat the precision of all. @returns how many */
function removeFarStamps(stamps: Float64Array): number {
  const stride = Math.max(1, Math.floor(stamps.length / 4000));
  const sample = Float64Array.from({ length: Math.floor(stamps.length / stride) }, (_, i) => stamps[i * stride]!);
  const middle = medianOf(sample);
  const reach = FAR * medianStep(stamps) * stamps.length;
  let far = 0;
  if (!(reach > 0)) return 0;
  for (let i = 0; i < stamps.length; i++) {
    if (!(Math.abs(stamps[i]! - middle) > reach)) continue;
    stamps[i] = NaN;
    far++;
  }
  return far;
}

/** Straight lines over missing stamps; at the ends the median step is carried on. */
function fillBetween(stamps: Float64Array): void {
  const step = medianStep(stamps);
  let last = -1;
  for (let i = 0; i <= stamps.length; i++) {
    if (i < stamps.length && Number.isNaN(stamps[i]!)) continue;
    for (let k = last + 1; k < i; k++) {
      if (last < 0) stamps[k] = i < stamps.length ? stamps[i]! - (i - k) * step : k * step;
      else if (i === stamps.length) stamps[k] = stamps[last]! + (k - last) * step;
      else stamps[k] = stamps[last]! + ((stamps[i]! - stamps[last]!) * (k - last)) / (i - last);
    }
    last = i;
  }
}

/**
 * A clock that was set back, or a second recording appended to the first: stamps fall and then run on from the lower
 * value. The time is continued one step after the last stamp and the recording is split there, because nobody knows
 * how long the break was.
 *
 * @returns rows at which a new piece begins
 */
export function continueAfterSetBack(stamps: Float64Array, notes: Note[]): number[] {
  const step = medianStep(stamps);
  const breaks: number[] = [];
  let offset = 0;
  for (let i = 1; i < stamps.length; i++) {
    stamps[i] = stamps[i]! + offset;
    const drop = stamps[i - 1]! - stamps[i]!;
    // A stamp or two may trade places in a hurried logger; further back means another time.
    if (drop <= Math.max(2 * step, 1e-9)) continue;
    const move = drop + step;
    stamps[i] = stamps[i]! + move;
    offset += move;
    breaks.push(i);
  }
  if (breaks.length > 0)
    notes.push({
      code: 'clock-set-back',
      severity: 'warning',
      text: `The time stamps jump back ${plural(breaks.length, 'time')} (first at row ${breaks[0]! + 1}); the recording is split there, and the length of the break is not known.`,
    });
  return breaks;
}
