/** Which peak a finding is about. Sampled too slowly, it stands at the image of the finding's true frequency. */
import type { FindingReport, PeakReport } from '../../core/report/report.ts';
import { aliasOfHz } from '../../core/vehicle/alias.ts';

/** Farther from the expected place than this many standard uncertainties it is another peak. */
const REACH_SD = 3;
/** A difference this small is rounding, Hz. */
const ROUNDING_HZ = 1e-3;
/** A peak farther than this from the true frequency is its image, Hz. */
const IMAGE_FROM_HZ = 0.5;

const isNear = (peak: PeakReport, hz: number): boolean =>
  Math.abs(hz - peak.frequencyHz) <= REACH_SD * peak.frequencySdHz + ROUNDING_HZ;

/** The finding a peak is, or is the image of. */
export function findingOf(
  peak: PeakReport,
  findings: readonly FindingReport[],
  samplingRateHz: number,
): FindingReport | null {
  const found = findings.find(
    ({ run, frequencyHz }) => run === peak.run && isNear(peak, aliasOfHz(frequencyHz, samplingRateHz)),
  );
  return found ?? null;
}

/** The true frequency of a peak that is only the image of a finding, Hz; null where it stands where it is. */
export const trueHzOfImage = (peak: PeakReport, finding: FindingReport | null): number | null =>
  finding && Math.abs(finding.frequencyHz - peak.frequencyHz) > IMAGE_FROM_HZ ? finding.frequencyHz : null;
