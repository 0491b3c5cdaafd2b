/** The evidence that the paragraph under the headline has not told word for word. */
import type { FindingReport, SharedOrigin } from '../../core/report/report.ts';

export interface EvidenceLeft {
  readonly evidence: Pick<FindingReport, 'for' | 'against' | 'missing'>;
  readonly shares: readonly SharedOrigin[];
  /** Whether the paragraph told some of it. */
  readonly isRest: boolean;
  readonly isEmpty: boolean;
}

export function evidenceLeft(finding: FindingReport, why: string): EvidenceLeft {
  const untold = (sentences: readonly string[]): string[] => sentences.filter((sentence) => !why.includes(sentence));
  const evidence = {
    for: untold(finding.for),
    against: untold(finding.against),
    missing: untold(finding.missing),
  };
  const shares = finding.sharesFrequencyWith.map((other) => ({
    ...other,
    separatedBy: why.includes(other.separatedBy) ? '' : other.separatedBy,
  }));
  return {
    evidence,
    shares,
    isRest: evidence.for.length < finding.for.length || evidence.against.length < finding.against.length,
    isEmpty: Object.values(evidence).every((sentences) => sentences.length === 0) && shares.length === 0,
  };
}
