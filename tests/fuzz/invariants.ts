/** What must hold whatever was read. */
import type { Problem } from '../../src/core/note.ts';
import type { Recording, Track } from '../../src/core/reading/recording.ts';
import type { Report } from '../../src/core/report/report.ts';
import { must } from './target.ts';

/** A sentence that was put together from what is not there. */
const UNFORMATTED = /\bundefined\b|\[object |\bNaN\b|\bInfinity\b/;

/** @param given the input as text; words that stand in it may be quoted */
export function checkProblem(problem: Problem, given: string): void {
  must(/^[a-z]+(-[a-z]+)*$/.test(problem.code), `the code ${problem.code} is not kebab-case`);
  must(problem.message.trim().length > 8, `${problem.code}: no message`);
  must(problem.remedy.trim().length > 8, `${problem.code}: no remedy`);
  must(problem.message.length < 700, `${problem.code}: a message of ${problem.message.length} characters`);
  must(
    !UNFORMATTED.test(problem.message + problem.remedy) || /undefined|\[object|nan|infinity/i.test(given),
    `${problem.code}: unformatted: ${problem.message}`,
  );
  for (const [name, value] of [
    ['line', problem.line],
    ['column', problem.column],
  ] as const)
    must(value === undefined || (Number.isInteger(value) && value >= 1), `${problem.code}: ${name} ${value}`);
}

const rising = (values: Float64Array): boolean => values.every((value, i) => i === 0 || value > values[i - 1]!);
const finite = (values: Float64Array): boolean => values.every(Number.isFinite);

export function checkRecording(recording: Recording): void {
  const { samplingRateHz, durationS, channels, segments, gravity, clippedShare, notes } = recording;
  must(Number.isFinite(samplingRateHz) && samplingRateHz > 0, `rate ${samplingRateHz}`);
  must(Number.isFinite(durationS) && durationS > 0, `duration ${durationS}`);
  must(channels.length >= 1 && channels.length <= 3, `${channels.length} channels`);
  must(new Set(channels.map(({ axis }) => axis)).size === channels.length, 'one axis twice');
  for (const { mps2PerUnit } of channels)
    must(Number.isFinite(mps2PerUnit) && mps2PerUnit > 0, `factor ${mps2PerUnit}`);
  must(segments.length > 0, 'no segment');
  let end = -Infinity;
  for (const { startS, timeS, accelerationMps2 } of segments) {
    must(Number.isFinite(startS), `segment starts at ${startS}`);
    must(startS > end, `a segment starts at ${startS}, the one before ends at ${end}`);
    must(accelerationMps2.length === channels.length, 'axes of a segment are not the channels');
    const rows = accelerationMps2[0]!.length;
    must(rows >= 16, `a segment of ${rows} rows`);
    for (const axis of accelerationMps2) {
      must(axis.length === rows, 'axes of unequal length');
      must(finite(axis), 'a sample that is no number');
    }
    must(timeS === null || (timeS.length === rows && finite(timeS) && rising(timeS)), 'times that do not run');
    end = startS + (timeS ? timeS.at(-1)! : (rows - 1) / samplingRateHz) - 1e-9;
  }
  if (gravity) {
    must(Number.isFinite(gravity.mps2), `gravity ${gravity.mps2}`);
    must(Math.abs(Math.hypot(...gravity.direction) - 1) < 1e-9, 'the direction of gravity has not length 1');
  }
  must(clippedShare >= 0 && clippedShare <= 1, `clipped share ${clippedShare}`);
  for (const track of [recording.roadSpeedMps, recording.wheelSpeedMps, recording.engineSpeedRpm])
    if (track) checkTrack(track);
  for (const { code, text } of notes) {
    must(text.trim().length > 5, `note ${code} without text`);
    must(
      !/\bundefined\b|\[object |\bNaN\b/.test(text) || /"[^"]*(undefined|object|NaN)/i.test(text),
      `note ${code}: ${text}`,
    );
  }
}

function checkTrack({ timeS, value, step, intervalS }: Track): void {
  must(timeS.length === value.length && timeS.length > 0, 'a track of unequal length');
  must(finite(timeS) && finite(value), 'a track holds what is no number');
  must(rising(timeS), 'a track whose time does not run');
  must(
    value.every((v) => v >= 0),
    'a negative speed',
  );
  must(Number.isFinite(step) && Number.isFinite(intervalS), `track step ${step}, interval ${intervalS}`);
}

/** Every number in a plain object is finite; JSON would print null for it. */
export function checkNumbers(value: unknown, path = 'report'): void {
  if (typeof value === 'number') must(Number.isFinite(value), `${path} is ${value}`);
  else if (Array.isArray(value)) value.forEach((item, i) => checkNumbers(item, `${path}[${i}]`));
  else if (typeof value === 'object' && value !== null)
    for (const [key, item] of Object.entries(value)) checkNumbers(item, `${path}.${key}`);
}

const adds = (items: readonly { probability: number }[], what: string): void => {
  const total = items.reduce((sum, { probability }) => sum + probability, 0);
  must(Math.abs(total - 1) < 1e-6, `${what} add up to ${total}`);
  for (const { probability } of items) must(probability >= 0 && probability <= 1 + 1e-9, `${what}: ${probability}`);
};

export function checkReport(report: Report): void {
  checkNumbers(report);
  for (const peak of report.peaks) {
    adds(peak.matches, `matches of ${peak.frequencyHz} Hz`);
    must(peak.amplitudeMps2 >= 0 && peak.frequencyHz > 0, `peak ${peak.frequencyHz} Hz, ${peak.amplitudeMps2} m/s²`);
  }
  for (const finding of report.findings) {
    must(finding.probability >= 0 && finding.probability <= 1 + 1e-9, `finding ${finding.probability}`);
    if (finding.causes.length > 0) adds(finding.causes, `causes of ${finding.label}`);
  }
  for (const { scale, scaleSd } of report.runs.map(({ speed }) => speed))
    must(scale > 0 && scaleSd >= 0, `speed scale ${scale} ± ${scaleSd}`);
  must(report.sentence.length > 5 && report.why.length > 5, 'an answer without words');
}
