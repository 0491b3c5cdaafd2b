/** Why a peak is held to be this, and why not that, in words. */
import type { UnitSystem } from '../../core/report/format.ts';
import {
  accelerationText,
  feltText,
  frequencyWithSdText,
  percentText,
  significant,
  velocityText,
} from '../../core/report/format.ts';
import type { FindingReport, MatchReport, PeakReport } from '../../core/report/report.ts';
import { velocityMmpsOfSine } from '../../core/units.ts';
import { texts } from '../texts.ts';
import type { TermId } from '../texts/glossary.ts';

const words = texts.sheet;
/** Axes are named in the order of the recording's channels. */
const AXES = ['x', 'y', 'z'];

/** How far a line was from the peak, in standard uncertainties of both together. */
export function distanceInSd(match: MatchReport, peak: PeakReport): number | null {
  if (match.expectedHz === undefined) return null;
  const sd = Math.hypot(match.expectedSdHz ?? 0, peak.frequencySdHz);
  return sd > 0 ? Math.abs(match.expectedHz - peak.frequencyHz) / sd : null;
}

/** 'expected at 84.2 ± 0.2 Hz, 0.4 standard uncertainties away'. Empty for fixed and unknown origins. */
export function matchSentence(match: MatchReport, peak: PeakReport): string {
  const distance = distanceInSd(match, peak);
  if (distance === null || match.expectedHz === undefined) return '';
  const expected = frequencyWithSdText(match.expectedHz, match.expectedSdHz ?? 0);
  const how = distance < 0.1 ? words.peakSpot : words.peakAway(distance.toFixed(1));
  const sentence = words.peakExpected(expected, how);
  return match.alias ? `${sentence}, ${words.peakAlias}` : sentence;
}

/** A figure of a peak, with the word that is explained beside its name. */
export type PeakRow = readonly [name: string, value: string, term?: TermId];

/**
 * The peak's own figures.
 *
 * @param finding What it is the image of, whose velocity and felt level are those of the true frequency; else null.
 */
export function peakRows(peak: PeakReport, finding: FindingReport | null, units: UnitSystem): PeakRow[] {
  const velocityMmps = finding ? velocityMmpsOfSine(peak.amplitudeMps2, finding.frequencyHz) : peak.velocityMmps;
  const rows: PeakRow[] = [
    [words.peakLevel, accelerationText(peak.amplitudeMps2)],
    [words.peakVelocity, velocityText(velocityMmps, units)],
    [words.columns.felt, feltText((finding ?? peak).feltLevel), 'felt'],
    [words.peakOverFloor, `${peak.overFloorDb.toFixed(0)} dB`, 'noise-floor'],
    [words.peakNoise, chanceOfNoise(peak.falseAlarmProbability), 'false-alarm'],
  ];
  if (peak.verticalShare !== null)
    rows.push([words.peakVertical, words.peakVerticalValue(percentText(peak.verticalShare))]);
  const axes = peak.axisAmplitudeMps2.map((mps2, index) => `${AXES[index] ?? index + 1} ${significant(mps2, 2)}`);
  if (axes.length > 1) rows.push([words.peakAxes, `${axes.join(', ')} m/s²`]);
  return rows;
}

const chanceOfNoise = (probability: number): string =>
  probability < 1e-4 ? 'under 1 in 10,000' : percentText(probability);
