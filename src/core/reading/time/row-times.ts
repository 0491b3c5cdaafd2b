/** The time of every row and where it comes from: stamps, a rate the file states, or a rate given by hand. */
import type { Note, Problem } from '../../note.ts';
import type { Place } from '../layout/columns.ts';
import type { Layout } from '../layout/layout.ts';
import { readingProblems } from '../problems.ts';
import type { TimeBase } from '../recording.ts';
import { repairRows, repairStamps } from '../repair/repair.ts';
import type { Table } from '../rows/row-sink.ts';
import { StampGroups } from '../repair/stamp-groups.ts';
import { fitTimeLine } from './time-base.ts';
import type { TimeLine } from './time-base.ts';
import { decideTimeUnit } from './time-unit.ts';

export interface RowTimes {
  readonly rateHz: number;
  /** Time of every row, s; null where rows are evenly spaced and nothing else is known. */
  readonly times: Float64Array | null;
  /** Rows left after repeated ones were dropped; the axes are shortened in place to as many. */
  readonly rows: number;
  readonly uniform: boolean;
  readonly breaks: readonly number[];
  readonly holes: TimeLine['holes'];
  readonly timeBase: TimeBase;
  /** Rows that were dropped, rising: rows after them have moved up. */
  readonly dropped: readonly number[];
}

const hz = (value: number): string => `${Number(value.toPrecision(4))} Hz`;

export function timeOfRows(
  layout: Layout,
  table: Table,
  place: Place,
  givenRateHz: number | undefined,
  notes: Note[],
): RowTimes | Problem {
  const { time } = layout.roles;
  const stated = layout.statedRate;
  const fallback = givenRateHz ?? stated?.rateHz;
  if (!time || !table.stamps) {
    if (fallback === undefined) return readingProblems.noSamplingRate(place.file, place.line);
    return byRate(table, fallback, givenRateHz, stated?.text ?? '', notes);
  }
  const line = byStamps(layout, table, place, givenRateHz, notes);
  if (line !== null && 'code' in line && line.code !== 'time-unit-unclear') return line;
  if (line !== null && !('code' in line)) {
    compareRates(line.rateHz, fallback, notes);
    return line;
  }
  if (fallback !== undefined) {
    notes.push({
      code: 'time-column-not-used',
      severity: 'warning',
      text: `The time column "${time.name}" ${line ? 'names no unit' : 'does not run'}; the rate of ${hz(fallback)} is used instead.`,
    });
    return byRate(table, fallback, givenRateHz, stated?.text ?? '', notes);
  }
  return line ?? readingProblems.timeStandsStill(place.file, layout.bodyLine, time.name);
}

function byRate(table: Table, writtenHz: number, given: number | undefined, text: string, notes: Note[]): RowTimes {
  const because = given !== undefined ? `${hz(writtenHz)} was given by hand` : `the file states "${text}"`;
  const { rows, dropped } = repairRows(null, table.axes, notes);
  const rateHz = (writtenHz * rows) / table.rows;
  notes.push({
    code: 'rate-not-from-stamps',
    severity: 'info',
    text: `Sampling rate: ${because}; lost rows cannot be noticed.`,
  });
  const timeBase: TimeBase = {
    from: given !== undefined ? 'given-by-user' : 'stated-in-file',
    because,
    jitterSdS: 0,
    evenSampling: true,
  };
  return { rateHz, times: null, rows, uniform: true, breaks: [], holes: [], timeBase, dropped };
}

function byStamps(
  layout: Layout,
  table: Table,
  place: Place,
  givenRateHz: number | undefined,
  notes: Note[],
): RowTimes | Problem | null {
  const time = layout.roles.time!;
  const stamps = table.stamps!;
  const own: Note[] = [];
  const setBacks = repairStamps(stamps, table.clockWrapS, own);
  const { rows, dropped } = setBacks.length
    ? { rows: stamps.length, dropped: [] }
    : repairRows(stamps, table.axes, own);
  const used = stamps.subarray(0, rows);
  // Rows that were left out since have moved the others.
  const lost = dropped.length === 0 ? table.lostBefore : [];
  const meanStep = new StampGroups(used, lost).typicalStep;
  if (!(meanStep > 0)) return null;
  const unit = decideTimeUnit(time, table.firstStamp, meanStep) ?? unitOfRate(givenRateHz, meanStep);
  if (!unit) return readingProblems.timeUnitUnclear(place.file, layout.bodyLine, time.name, meanStep);
  if (unit.factor !== 1) for (let i = 0; i < rows; i++) used[i] = used[i]! * unit.factor;
  const fitted = fitTimeLine(used, setBacks, lost, table.axes);
  if (!fitted) return null;
  notes.push(...own, {
    code: 'time-base',
    severity: 'info',
    text: `${time.because}; ${unit.because}. ${hz(fitted.rateHz)}: ${fitted.because}.`,
  });
  if (unit.overruled)
    notes.push({
      code: 'time-unit-overruled',
      severity: 'warning',
      text: `"${time.name}" says ${unit.overruled}, but ${unit.because}.`,
    });
  noteHoles(fitted, setBacks.length, notes);
  const timeBase: TimeBase = {
    from: 'stamps',
    because: `${unit.because}; ${fitted.because}`,
    jitterSdS: fitted.jitterSdS,
    evenSampling: fitted.even,
  };
  return {
    rateHz: fitted.rateHz,
    times: used,
    rows,
    uniform: fitted.uniform,
    breaks: fitted.breaks,
    holes: fitted.holes,
    timeBase,
    dropped,
  };
}

function unitOfRate(
  rateHz: number | undefined,
  meanStep: number,
): { unit: string; factor: number; because: string; overruled?: string } | null {
  if (rateHz === undefined) return null;
  for (const [unit, factor] of [
    ['s', 1],
    ['ms', 1e-3],
    ['µs', 1e-6],
    ['ns', 1e-9],
  ] as const)
    if (Math.abs(meanStep * factor * rateHz - 1) < 0.1)
      return { unit, factor, because: `in ${unit} the steps fit the rate given by hand` };
  return null;
}

function noteHoles(line: TimeLine, setBacks: number, notes: Note[]): void {
  const gaps = line.breaks.length - setBacks;
  if (gaps > 0)
    notes.push({
      code: 'gaps',
      severity: 'warning',
      text: `${gaps} ${gaps === 1 ? 'gap' : 'gaps'} in the time stamps; the recording is split there and nothing is filled in.`,
    });
  const missing = line.holes.reduce((sum, hole) => sum + hole.missing, 0);
  if (missing > 0)
    notes.push({
      code: 'samples-missing',
      severity: 'warning',
      text: `${missing} single ${missing === 1 ? 'sample is' : 'samples are'} missing in ${line.holes.length} ${line.holes.length === 1 ? 'place' : 'places'}; the times around them are kept.`,
    });
}

function compareRates(rateHz: number, other: number | undefined, notes: Note[]): void {
  if (other === undefined || Math.abs(other / rateHz - 1) < 0.02) return;
  notes.push({
    code: 'rate-contradicts-stamps',
    severity: 'warning',
    text: `A rate of ${hz(other)} is stated, but the time stamps run at ${hz(rateHz)}; the stamps are used.`,
  });
}
