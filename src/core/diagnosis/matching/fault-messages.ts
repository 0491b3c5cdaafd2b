/** What a run says of each order being at fault, for the other runs of the job to hear. */
import { faultShare, shareAbove, type LevelPrior } from '../origins/levels.ts';
import { limitAt } from '../origins/absence.ts';
import type { RunInference } from './infer-run.ts';
import { aliasOfHz } from '../../vehicle/alias.ts';
import type { Origin } from '../origins/origin.ts';
import { expectedPlace } from './place.ts';
import { restsUnder } from './torque-twins.ts';

/** Likelihood ratio, at fault against not, by the line's label. */
export type FaultMessages = ReadonlyMap<string, number>;

/** One run never settles it for another: a fault may need torque, or a speed, that the other run has not. */
const STRONGEST = 30;
const MOST_PRIOR = 0.9;

const clipped = (ratio: number): number => Math.min(STRONGEST, Math.max(1 / STRONGEST, ratio));

const odds = (probability: number): number => probability / Math.max(1e-9, 1 - probability);

/** Probability that the order is at fault given the run: seen as a fault, or at fault and hidden by the noise. */
const faultProbability = (inference: RunInference, origin: Origin): number => {
  const { levels, line } = origin;
  let seen = 0;
  for (const match of inference.matches) {
    const share = match.lines.find((s) => s.origin.line.label === line.label);
    if (share) seen += share.probability * faultShare(levels, match.tone.peak.amplitudeMps2);
  }
  seen = Math.min(1, seen);
  const rate = inference.run.prepared.samplingRateHz;
  const limit = limitAt(inference.run.limit, aliasOfHz(expectedPlace(inference, origin).hz, rate));
  const hidden = levels.fault.presence - shareAbove(levels.fault, limit);
  const unseen = 1 - Math.min(0.95, shareAbove(levels.fault, limit) + shareAbove(levels.normal, limit));
  return seen + (1 - seen) * Math.min(1, hidden / unseen);
};

export const faultMessages = (inference: RunInference): FaultMessages =>
  new Map(
    inference.origins.map((origin) => {
      const ratio = clipped(odds(faultProbability(inference, origin)) / odds(origin.levels.fault.presence));
      return [origin.line.label, restsUnder(origin, inference.run.condition.load) ? Math.max(1, ratio) : ratio];
    }),
  );

const withPresence = (levels: LevelPrior, presence: number): LevelPrior => ({
  normal: { ...levels.normal, presence: (levels.normal.presence * (1 - presence)) / (1 - levels.fault.presence) },
  fault: { ...levels.fault, presence },
});

/** Origins with their fault priors raised or lowered by what other runs say. */
export const withFaults = (origins: readonly Origin[], messages: readonly FaultMessages[]): readonly Origin[] =>
  origins.map((origin) => {
    const ratio = clipped(messages.reduce((product, m) => product * (m.get(origin.line.label) ?? 1), 1));
    const raised = odds(origin.levels.fault.presence) * ratio;
    return { ...origin, levels: withPresence(origin.levels, Math.min(MOST_PRIOR, raised / (1 + raised))) };
  });
