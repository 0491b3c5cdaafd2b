/** Lines that could be felt and that the recordings could not have shown: they hide in noise, or turn too fast. */
import { limitAt } from '../../diagnosis/origins/absence.ts';
import type { RunInference } from '../../diagnosis/matching/infer-run.ts';
import type { Origin } from '../../diagnosis/origins/origin.ts';
import { NOTICED_FROM, overRoad } from '../../diagnosis/findings/over-road.ts';
import { FELT_FROM } from '../../diagnosis/findings/perceived.ts';
import { expectedPlace } from '../../diagnosis/matching/place.ts';
import { feltLevel } from '../../signal/felt.ts';

/** A line that hides in the noise of every run, with the run that hides least of it. */
export interface HiddenLine {
  readonly label: string;
  /** Felt level up to which it hides there, and that level over the road's own shake (see overRoad). */
  readonly felt: number;
  readonly overRoad: number;
  readonly run: RunInference;
}

/** A line too near half the sampling rate of every run, or above it, to be looked for; in the fastest of these. */
export interface FastLine {
  readonly label: string;
  /** Prior probability that it is at fault. */
  readonly likely: number;
  readonly hz: number;
  readonly rateHz: number;
}

/** Lines whose fault prior is below this are not worth a 'cannot tell' of their own. */
const LIKELY_FAULT = 0.03;
/** A strong fault shakes this much more than the usual one. Judgment. */
const STRONG = 1.5;

interface Place {
  readonly run: RunInference;
  readonly origin: Origin;
  readonly hz: number;
  readonly rateHz: number;
}

/** Where each line that may well be at fault is expected in each run. */
const placesByLine = (inferences: readonly RunInference[]): ReadonlyMap<string, readonly Place[]> => {
  const byLine = new Map<string, Place[]>();
  for (const run of inferences) {
    const rateHz = run.run.prepared.samplingRateHz;
    for (const origin of run.origins) {
      if (origin.levels.fault.presence < LIKELY_FAULT) continue;
      const { label } = origin.line;
      const place = { run, origin, hz: expectedPlace(run, origin).hz, rateHz };
      byLine.set(label, [...(byLine.get(label) ?? []), place]);
    }
  }
  return byLine;
};

const isShown = ({ run, hz, rateHz }: Place): boolean => hz < rateHz / 2 && Number.isFinite(limitAt(run.run.limit, hz));

/** The strongest line that could hide there. */
const hiddenAt = (label: string, { run, hz }: Place): HiddenLine => {
  const { limit, spectrum, floorMps2 } = run.run;
  const limitMps2 = limitAt(limit, hz);
  return {
    label,
    run,
    felt: feltLevel(hz, limitMps2, null),
    overRoad: overRoad(spectrum, floorMps2, hz, limitMps2),
  };
};

/** Lines that a smooth road would let a person feel and that still hide in the noise of every run, worst first. */
export const hiddenLines = (inferences: readonly RunInference[]): readonly HiddenLine[] =>
  [...placesByLine(inferences)]
    .flatMap(([label, places]) => {
      const hidden = places.filter(isShown).map((place) => hiddenAt(label, place));
      return hidden.sort((a, b) => a.felt - b.felt).slice(0, 1);
    })
    .filter(({ felt }) => felt > FELT_FROM)
    .sort((a, b) => b.felt - a.felt);

/** Those that a person could notice on that very road, by the rule by which a line that is seen is judged. */
export const noticeable = (hidden: readonly HiddenLine[]): readonly HiddenLine[] =>
  hidden.filter((line) => line.overRoad >= NOTICED_FROM);

/** Lines that no run is fast enough to show though a strong fault there would be felt, likeliest first. */
export const fastLines = (inferences: readonly RunInference[]): readonly FastLine[] =>
  [...placesByLine(inferences)]
    .filter(([, places]) => !places.some(isShown))
    .flatMap(([label, places]) => {
      const felt = places
        .filter(({ origin, hz }) => feltLevel(hz, STRONG * origin.levels.fault.medianMps2, null) >= FELT_FROM)
        .sort((a, b) => b.rateHz - a.rateHz);
      return felt
        .slice(0, 1)
        .map(({ origin, hz, rateHz }) => ({ label, likely: origin.levels.fault.presence, hz, rateHz }));
    })
    .sort((a, b) => b.likely - a.likely || a.hz - b.hz);

/** A place this many standard uncertainties off is not where a line is expected, nor one so far off as a share. */
const AT_PLACE = 1.5;
/** The top of what is spread out is not found better than this, relative. Judgment. */
const TOP_OFF = 0.01;

/** The likeliest to be at fault of the lines expected about the top of something broad; null where none is. */
export const likelyLineAt = (inference: RunInference, topHz: number): string | null => {
  const there = inference.origins.filter((origin) => {
    const { hz, sdHz } = expectedPlace(inference, origin);
    const isThere = Math.abs(hz - topHz) < Math.hypot(AT_PLACE * sdHz, TOP_OFF * topHz);
    return isThere && origin.levels.fault.presence >= LIKELY_FAULT;
  });
  const [likeliest] = there.sort((a, b) => b.levels.fault.presence - a.levels.fault.presence);
  return likeliest?.line.label ?? null;
};
