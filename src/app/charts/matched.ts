/** Which lines the peaks are matched to. */
import type { MatchReport, PeakReport } from '../../core/report/report.ts';

/** Below this a match is a possibility, not drawn as a drop. */
const DRAWN_FROM = 0.5;

/** The origin a peak most likely has, where one is more likely than all others together. */
export function likelyMatch(peak: PeakReport): MatchReport | null {
  const [first] = peak.matches;
  return first && first.probability >= DRAWN_FROM && first.order !== null ? first : null;
}

/** Labels of all lines some peak is matched to. */
export const matchedMarks = (peaks: readonly PeakReport[]): ReadonlySet<string> =>
  new Set(peaks.map(likelyMatch).flatMap((match) => (match ? [match.label] : [])));
