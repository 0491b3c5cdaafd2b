/**
 * Was the drive as it was stated? Where the recordings fit speeds and ratios only with a stretch, the usual slips are
 * weighed against the statement by how likely each makes what was seen: a sure answer from a wrong speed is the worst
 * there is.
 */
import { expectedLines } from '../../vehicle/expected-lines.ts';
import type { LoggedCondition, Vehicle } from '../../vehicle/vehicle.ts';
import type { RunEvidence } from '../observing/run-evidence.ts';
import { originsOf } from '../origins/origin.ts';
import { runEvidence, type RunInference } from './infer-run.ts';
import type { Match } from './match.ts';
import { otherAxles, otherSpeeds, type Restatement } from './restated.ts';
import { runPrior } from './run-prior.ts';

/** The likeliest slip. */
export interface Misstated extends Restatement {
  readonly probability: number;
}

export interface Doubt {
  /** Probability that nothing was misstated. */
  readonly belief: number;
  readonly likeliest: Misstated | null;
}

interface Weighed {
  readonly restatement: Restatement;
  /** Against the statement as it was given. */
  readonly odds: number;
}

const NO_DOUBT: Doubt = { belief: 1, likeliest: null };

/** A stretch of the speed beyond this many standard deviations of what was stated, and this much, is looked into. */
const STRETCHED_SDS = 2;
const STRETCHED = 0.02;
/** So is a converter that slips by this much. Judgment: at a cruise it is locked, or slips by a few percent. */
const MUCH_SLIP = 0.03;
/** And a strongest tone that fits nothing by more than this probability. */
const FITS_NOTHING = 0.3;
/** A ratio is tried where it would put an order as near to a tone that fits nothing, relative. */
const BROUGHT_TO = 0.02;
/** Odds from which a slip of the speeds explains enough, and no axle ratio is tried. */
const EXPLAINED = 100;

const isStretched = ({ run, posterior }: RunInference): boolean => {
  const sd = Math.hypot(run.expected?.wheelRelativeSd ?? 0, posterior.road.sd);
  const off = Math.abs(posterior.road.mean);
  if (off > STRETCHED && off > STRETCHED_SDS * sd) return true;
  return run.expected?.engineTiedToRoad === true && posterior.engine.mean - posterior.road.mean > MUCH_SLIP;
};

const fitsNothing = ({ others }: Match): boolean => others.fixed + others.unlisted > FITS_NOTHING;

/** Nothing explains the strongest tone of the run. */
const isUnexplained = ({ matches }: RunInference): boolean => {
  const strongest = matches.reduce<Match | null>(
    (most, one) => (most && most.tone.peak.amplitudeMps2 >= one.tone.peak.amplitudeMps2 ? most : one),
    null,
  );
  return strongest !== null && fitsNothing(strongest);
};

/** ln evidence of all runs, each by itself, had they been stated so; null where no line can be computed. */
const evidenceIf = (
  runs: readonly RunEvidence[],
  vehicle: Vehicle,
  conditions: readonly LoggedCondition[],
): number | null => {
  let sum = 0;
  for (const [i, run] of runs.entries()) {
    const condition = conditions[i] ?? run.condition;
    const { samplingRateHz } = run.prepared;
    const lines = expectedLines(vehicle, condition, { samplingRateHz, engineLogged: run.engineLogged });
    if (!lines.ok) return null;
    const prior = runPrior(vehicle, condition, lines.value, run.histories.wander[0] ?? 0);
    const restated = { ...run, condition, expected: lines.value };
    sum += runEvidence(restated, originsOf(lines.value, run.speedVaried === 'ramp'), prior);
  }
  return sum;
};

/** Would such a statement bring an order to a tone that fits nothing? */
const bringsOrder = ({ vehicle }: Restatement, inferences: readonly RunInference[]): boolean =>
  inferences.some(({ run, posterior, matches }) => {
    const lines = expectedLines(vehicle, run.condition);
    return (
      lines.ok &&
      lines.value.lines.some(({ frequencyHz }) =>
        matches.some((match) => {
          const hz = frequencyHz * Math.exp(posterior.road.mean);
          return fitsNothing(match) && Math.abs(match.tone.peak.frequencyHz / hz - 1) < BROUGHT_TO;
        }),
      )
    );
  });

/**
 * @param inferences of all runs together, as stated
 * @returns no doubt where all fits, or where a run has no lines
 */
export const doubtOf = (vehicle: Vehicle, inferences: readonly RunInference[]): Doubt => {
  const stretched = inferences.some(isStretched);
  if (!stretched && !inferences.some(isUnexplained)) return NO_DOUBT;
  const runs = inferences.map(({ run }) => run);
  const conditions = runs.map(({ condition }) => condition);
  const asStated = evidenceIf(runs, vehicle, conditions);
  if (asStated === null) return NO_DOUBT;
  const weighed = (restatements: readonly Restatement[]): Weighed[] =>
    restatements.flatMap((restatement) => {
      const evidence = evidenceIf(runs, restatement.vehicle, restatement.conditions);
      return evidence === null ? [] : [{ restatement, odds: restatement.prior * Math.exp(evidence - asStated) }];
    });
  const ofSpeeds = weighed(otherSpeeds(vehicle, conditions));
  const explained = ofSpeeds.some(({ odds }) => odds > EXPLAINED);
  const axles = explained ? [] : otherAxles(vehicle, conditions);
  const ofAxles = weighed(axles.filter((axle) => stretched || bringsOrder(axle, inferences)));
  const slips = [...ofSpeeds, ...ofAxles].sort((a, b) => b.odds - a.odds);
  const all = 1 + slips.reduce((sum, { odds }) => sum + odds, 0);
  const [first] = slips;
  return {
    belief: 1 / all,
    likeliest: first ? { ...first.restatement, probability: first.odds / all } : null,
  };
};

/** What is believed of the lines shrinks with the belief in the statement they hang on. */
export const doubted = (inferences: readonly RunInference[], belief: number): readonly RunInference[] =>
  inferences.map((inference) => ({
    ...inference,
    matches: inference.matches.map(({ tone, lines, others }) => {
      const ofLines = lines.reduce((sum, { probability }) => sum + probability, 0);
      return {
        tone,
        lines: lines.map((line) => ({ ...line, probability: belief * line.probability })),
        others: { ...others, unlisted: others.unlisted + (1 - belief) * ofLines },
      };
    }),
  }));
