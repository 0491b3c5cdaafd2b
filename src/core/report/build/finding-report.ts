/** A finding as the report tells it, and the basis from which its causes are ranked. */
import { acrossRuns } from '../../diagnosis/findings/across-runs.ts';
import { beatingWith } from '../../diagnosis/findings/beats.ts';
import type { Companion, FindingBasis } from '../../diagnosis/evidence/case.ts';
import { growthInSweep } from '../../diagnosis/findings/growth-in-sweep.ts';
import { trueToneOf } from '../../diagnosis/findings/true-tone.ts';
import type { Finding } from '../../diagnosis/findings/finding.ts';
import type { RunInference } from '../../diagnosis/matching/infer-run.ts';
import type { OriginShare } from '../../diagnosis/matching/match.ts';
import { heldWithin } from '../../diagnosis/origins/held-speed.ts';
import { expectedPlace } from '../../diagnosis/matching/place.ts';
import { reasonsAcrossRuns } from '../../diagnosis/findings/reasons-across-runs.ts';
import { reasonsOf } from '../../diagnosis/findings/reasons.ts';
import { separatedBy } from '../../diagnosis/findings/separation.ts';
import type { Vehicle } from '../../vehicle/vehicle.ts';
import type { CauseReport, FindingReport, SharedOrigin } from '../report.ts';
import { orderReport, SHARED_FROM } from './order-report.ts';

const sharedWith = (finding: Finding, vehicle: Vehicle): SharedOrigin[] => {
  const { chosen, match, inference } = finding;
  if (!chosen) return [];
  const at = (share: OriginShare) => ({
    origin: share.origin,
    image: share.image,
    trueHz: expectedPlace(inference, share.origin).hz,
  });
  return match.lines
    .filter((share) => share.origin.line.label !== chosen.origin.line.label && share.probability >= SHARED_FROM)
    .map((share) => ({
      part: share.origin.line.part,
      ...(share.origin.line.name === undefined ? {} : { name: share.origin.line.name }),
      order: share.origin.line.order,
      label: share.origin.line.label,
      probability: share.probability,
      separatedBy: separatedBy(at(chosen), at(share), vehicle, inference.run.condition),
    }));
};

const companionsOf = (inference: RunInference, label: string): Companion[] =>
  inference.origins.flatMap((origin) => {
    const { part, order, role } = origin.line;
    const { amplitudeMps2, feltLevel, visibility } = orderReport(inference, origin);
    if (origin.line.label === label || amplitudeMps2 === null || feltLevel === null) return [];
    // Above half the rate there is a level only where the image was seen.
    const seen = visibility !== 'not-seen';
    return [
      {
        part,
        order,
        ...(role === undefined ? {} : { role }),
        label: origin.line.label,
        amplitudeMps2,
        feltLevel,
        seen,
      },
    ];
  });

export const findingBasis = (finding: Finding, inferences: readonly RunInference[]): FindingBasis => {
  const { peak } = finding.match.tone;
  const { run } = finding.inference;
  const across = acrossRuns(finding, inferences);
  const growth = across.speedExponent ?? growthInSweep(finding);
  return {
    part: finding.part,
    ...(finding.name === undefined ? {} : { name: finding.name }),
    order: finding.order,
    label: finding.label,
    ...(finding.role === undefined ? {} : { role: finding.role }),
    probability: finding.probability,
    run: run.name,
    frequencyHz: finding.trueHz,
    // Of all of the run, as those of its companions are.
    amplitudeMps2: trueToneOf(finding.inference, finding.chosen, finding.match.tone).amplitudeMps2,
    feltLevel: finding.feltLevel,
    perceived: finding.perceived,
    verticalShare: peak.verticalShare,
    companions: companionsOf(finding.inference, finding.label),
    ...across,
    ...(typeof growth === 'string' ? { growthHiddenBy: growth } : { speedExponent: growth }),
    heldWithin: heldWithin(peak),
    beats: beatingWith(finding).length > 0,
  };
};

export const findingReport = (
  finding: Finding,
  causes: readonly CauseReport[],
  vehicle: Vehicle,
  inferences: readonly RunInference[],
): FindingReport => {
  const { for: reasons, against, missing } = reasonsOf(finding, vehicle);
  return {
    part: finding.part,
    ...(finding.name === undefined ? {} : { name: finding.name }),
    order: finding.order,
    label: finding.label,
    probability: finding.probability,
    run: finding.inference.run.name,
    frequencyHz: finding.trueHz,
    frequencySdHz: finding.frequencySdHz,
    ...(finding.during && { during: finding.during }),
    amplitudeMps2: finding.amplitudeMps2,
    feltLevel: finding.feltLevel,
    perceived: finding.perceived,
    overRoad: Number.isFinite(finding.overRoad) ? finding.overRoad : null,
    sharesFrequencyWith: sharedWith(finding, vehicle),
    for: [...reasons, ...reasonsAcrossRuns(finding, inferences)],
    against,
    missing,
    causes,
  };
};
