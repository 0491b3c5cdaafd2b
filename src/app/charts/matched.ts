/** Which lines the peaks are matched to. */
import type { FindingReport, MatchReport, PeakReport } from '../../core/report/report.ts';
import { findingOf } from './finding-peak.ts';

/** Below this a match is a possibility, not drawn as a drop, */
const DRAWN_FROM = 0.5;
/** unless the peak is what was found: then whatever the answer names beside it is drawn too. */
const SUSPECTED_FROM = 0.1;

/** The origin a peak most likely has, where one is more likely than all others together. */
function likelyMatch(peak: PeakReport): MatchReport | null {
  const [first] = peak.matches;
  return first && first.probability >= DRAWN_FROM && first.order !== null ? first : null;
}

/** The origins drawn for a peak: the likely one, and all suspects of what was found. */
export function drawnMatches(peak: PeakReport, isFinding: boolean): readonly MatchReport[] {
  if (isFinding) return peak.matches.filter(({ order, probability }) => order !== null && probability > SUSPECTED_FROM);
  const likely = likelyMatch(peak);
  return likely ? [likely] : [];
}

/** Labels of all lines that are drawn as the origin of some peak. */
export const matchedMarks = (
  peaks: readonly PeakReport[],
  findings: readonly FindingReport[],
  samplingRateHz: number,
): ReadonlySet<string> =>
  new Set(
    peaks.flatMap((peak) =>
      drawnMatches(peak, findingOf(peak, findings, samplingRateHz) !== null).map(({ label }) => label),
    ),
  );
