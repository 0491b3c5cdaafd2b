/** Which parts of a run deserve a closer look: where an order shakes that all of the run does not show for certain. */
import type { Span } from '../../reading/cut-recording.ts';
import { historyOf } from '../matching/group-history.ts';
import type { RunInference } from '../matching/infer-run.ts';
import { expectedPlace } from '../matching/place.ts';
import { AN_ORDER_SHOOK, loudPart, type Part } from '../observing/closer-look.ts';
import type { Finding } from './finding.ts';
import { inParts, type InParts } from './in-parts.ts';

/** A finding of a turning part that is surer than this needs no closer look. */
const SURE = 0.9;
/** Orders whose fault prior is below this are not looked for where no tone was found. */
const LIKELY_FAULT = 0.03;
/** A part is judged with so much about it, and no shorter than can be judged, s. */
const AROUND_S = 0.5;
const LEAST_S = 6;

/** An expected order that surely shook somewhere though no tone was found there: the one felt most. */
const strongestUnfound = (inference: RunInference): InParts | null => {
  const { run, origins } = inference;
  let strongest: InParts | null = null;
  for (const origin of origins) {
    const { hz } = expectedPlace(inference, origin);
    if (origin.levels.fault.presence < LIKELY_FAULT || hz >= run.prepared.samplingRateHz / 2) continue;
    const tone = { frequencyHz: hz, trueHz: hz, kept: 1, verticalShare: null, overFloorDb: 0 };
    const found = inParts(run, tone, historyOf(inference, origin.group));
    if (found && found.perceived !== 'buried' && found.feltLevel > (strongest?.feltLevel ?? 0)) strongest = found;
  }
  return strongest;
};

/** Widened, and joined where they then meet. */
const widened = (spans: readonly Span[]): readonly Span[] => {
  const joined: Span[] = [];
  for (const { fromS, toS } of spans) {
    const by = Math.max(AROUND_S, (LEAST_S - (toS - fromS)) / 2);
    const before = joined.at(-1);
    if (before && fromS - by <= before.toS) joined[joined.length - 1] = { fromS: before.fromS, toS: toS + by };
    else joined.push({ fromS: Math.max(0, fromS - by), toS: toS + by });
  }
  return joined;
};

/**
 * True where all of the runs tell for sure which part shakes, or what was found shook throughout; and where it takes
 * turns: the part alone would not tell that it was driven as stated.
 */
const isClear = ([first]: readonly Finding[]): boolean =>
  first !== undefined &&
  (first.during === null || first.turns !== undefined || (first.chosen !== null && first.probability >= SURE));

/** The parts of each run that deserve a closer look; null for a run that is better left whole. */
export const partsToLookAt = (
  inferences: readonly RunInference[],
  findings: readonly Finding[],
): readonly (Part | null)[] => {
  const shook = (spans: readonly Span[]): Part => ({ spans: widened(spans), because: AN_ORDER_SHOOK });
  const [first] = findings;
  return inferences.map((inference) => {
    if (isClear(findings)) return null;
    if (first) return first.inference === inference && first.during ? shook(first.during) : null;
    const loud = loudPart(inference.run);
    if (loud) return loud;
    const strongest = strongestUnfound(inference);
    return strongest && shook(strongest.spans);
  });
};

/** True where a closer look found what the whole runs do not show, or is surer which part turns so. */
export const tellsMore = ([closer]: readonly Finding[], [whole]: readonly Finding[]): boolean => {
  if (!closer || !whole) return closer !== undefined;
  return closer.chosen !== null && (whole.chosen === null || closer.probability > whole.probability);
};
