/** Where a run shook in some part only, all of it may show nothing, or not clearly what: a closer look at that part. */
import type { Note } from '../../note.ts';
import { cutRecording, type Span } from '../../reading/cut-recording.ts';
import { loudStretch, widened } from '../../signal/spectra/loud-stretch.ts';
import { relativeSpeedAt } from '../../signal/speed/equal-angle.ts';
import type { RunCondition, Vehicle } from '../../vehicle/vehicle.ts';
import { observeRun } from './observe-run.ts';
import type { RunEvidence } from './run-evidence.ts';

/** Logged values this long before and after a part are used: its speed is drawn through them, and they may be late, s. */
const LOG_AROUND_S = 2;

/** Parts of a run, in order of time, and why they are looked at alone: '…, where it shook most, is judged: …'. */
export interface Part {
  readonly spans: readonly Span[];
  readonly because: string;
}

const SHOOK_MOST =
  'where it shook most, is judged: the speed changed fast, and over all of the run nothing stands out that could be felt.';
/** Why such parts are looked at in which an order shook. */
export const AN_ORDER_SHOOK = 'where an order shook that all of the run does not show for certain, is judged.';
const LIKE_THE_OTHER =
  'where it was as fast as the run it is compared with was where that shook, is judged: the speed changed fast.';

/** So many parts are named. */
const MOST_NAMED = 3;

const listed = (spans: readonly Span[], digits: number): string => {
  const named = spans.slice(0, MOST_NAMED);
  const texts = named.map(({ fromS, toS }) => `${fromS.toFixed(digits)} to ${toS.toFixed(digits)} s`);
  return texts.length < 2 ? texts.join() : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;
};

/** '70 to 80 s', '10 to 14 s and 25 to 29 s'. */
export const spansText = (spans: readonly Span[]): string => listed(spans, 0);

/** 'in 70 to 80 s only', 'in 10 to 14 s and 25 to 29 s only', 'at times only, as in 1 to 5 s, 15 to 19 s and 29 to 35 s'. */
export const partsText = (spans: readonly Span[]): string =>
  spans.length > MOST_NAMED ? `at times only, as in ${listed(spans, 0)}` : `in ${listed(spans, 0)} only`;

const note = ({ spans, because }: Part): Note => ({
  code: 'part-of-drive',
  severity: 'info',
  text: `Only ${spans.length > MOST_NAMED ? 'such parts as ' : ''}${listed(spans, 1)}, ${because}`,
});

/** Where a run whose speed changed fast shook far more than elsewhere; null where none did, or no log tells the speed. */
export const loudPart = ({ changedFast, prepared }: RunEvidence): Part | null => {
  const span = changedFast ? loudStretch(prepared) : null;
  return span && { spans: [span], because: SHOOK_MOST };
};

interface Speeds {
  readonly leastMps: number;
  readonly mostMps: number;
}

/** The logged speed of a run that changed fast, m/s, at times on its clock; null of any other run. */
const speedsOf = ({
  changedFast,
  tracks: [track],
  condition,
}: RunEvidence): { timeS: number; mps: number }[] | null => {
  const { speedMps } = condition;
  if (!changedFast || !track || speedMps === undefined) return null;
  return Array.from(track.timeS, (timeS) => ({ timeS, mps: speedMps * relativeSpeedAt(track, timeS) }));
};

const speedsWithin = (run: RunEvidence, { spans }: Part): Speeds | null => {
  const isIn = (timeS: number): boolean => spans.some(({ fromS, toS }) => timeS >= fromS && timeS <= toS);
  const within = (speedsOf(run) ?? []).filter(({ timeS }) => isIn(timeS)).map(({ mps }) => mps);
  return within.length < 2 ? null : { leastMps: Math.min(...within), mostMps: Math.max(...within) };
};

/** The longest part of a run in which it was as fast as another one was in its own part; null where it never was. */
export const partLike = (run: RunEvidence, other: RunEvidence, othersPart: Part): Part | null => {
  const speeds = speedsWithin(other, othersPart);
  if (!speeds) return null;
  let longest: Span | null = null;
  let fromS: number | null = null;
  for (const { timeS, mps } of speedsOf(run) ?? []) {
    if (mps < speeds.leastMps || mps > speeds.mostMps) fromS = null;
    else {
      fromS ??= timeS;
      if (!longest || timeS - fromS > longest.toS - longest.fromS) longest = { fromS, toS: timeS };
    }
  }
  const span = longest && widened(longest, run.prepared);
  return span && { spans: [span], because: LIKE_THE_OTHER };
};

/**
 * The runs again, each cut to its part.
 * @param stated stated[i] belongs to runs[i]
 * @param parts parts[i] of runs[i]; null for all of it
 */
export const observeParts = (
  vehicle: Vehicle,
  runs: readonly RunEvidence[],
  stated: readonly RunCondition[],
  parts: readonly (Part | null)[],
): readonly RunEvidence[] =>
  runs.map((run, i) => {
    const part = parts[i];
    if (!part) return run;
    const cut = cutRecording(run.recording, part.spans, LOG_AROUND_S);
    const notes = [...run.recording.notes, note(part)];
    return { ...observeRun(vehicle, stated[i] ?? {}, { ...cut, notes }, run.name), part: part.spans };
  });
