/** What the pictures show, in sentences for those who do not see them. */
import { feltText, frequencyText } from '../../core/report/format.ts';
import type { PeakReport } from '../../core/report/report.ts';
import { texts } from '../texts.ts';
import type { Domain } from './viewport.ts';

const words = texts.charts;

export function spectrumSummary(shown: Domain, peaks: readonly PeakReport[]): string {
  const [strongest] = peaks
    .filter(({ frequencyHz }) => frequencyHz >= shown[0] && frequencyHz <= shown[1])
    .toSorted((a, b) => b.feltLevel - a.feltLevel);
  const told = strongest
    ? words.strongest(
        frequencyText(strongest.frequencyHz),
        strongest.matches[0]?.label ?? texts.charts.parts.unknown,
        feltText(strongest.feltLevel),
      )
    : words.strongestNone;
  return words.spectrumSummary(frequencyText(shown[0]), frequencyText(shown[1]), told);
}

export function mapSummary(shown: Domain, [fromS, toS]: readonly [number, number]): string {
  return words.mapSummary(frequencyText(shown[0]), frequencyText(shown[1]), `${(toS - fromS).toFixed(0)} s`);
}
