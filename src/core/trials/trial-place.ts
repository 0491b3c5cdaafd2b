/**
 * Where the order of a balance stands in the run as found. The diagnosis asks whether an order is there at all; a
 * balance is told that it is, and only asks which line it is. So a line that the diagnosis would leave open (it stands
 * too still to show that it turns with the road) is taken where it is the only one that can be the order.
 */
import { isSeen } from '../diagnosis/compare/change.ts';
import { runLevels } from '../diagnosis/compare/run-levels.ts';
import { historyOf } from '../diagnosis/matching/group-history.ts';
import type { RunInference } from '../diagnosis/matching/infer-run.ts';
import type { Match } from '../diagnosis/matching/match.ts';
import type { ScaleAxis } from '../diagnosis/origins/scale-prior.ts';
import { scaleAt } from '../diagnosis/origins/scale-prior.ts';
import type { Note, Problem, Result } from '../note.ts';
import { failure, success } from '../note.ts';
import { orderLevel } from '../signal/speed/order-level.ts';
import type { SpeedGroup } from '../vehicle/line.ts';
import { OWN_FROM } from '../diagnosis/matching/tone-of-order.ts';

export interface TrialPlace {
  readonly frequencyHz: number;
  readonly notes: readonly Note[];
}

/** The strongest of several lines is taken where it is this much stronger (10 dB) than the next. */
const STANDS_OUT = Math.sqrt(10);
/** The order is looked for where the speed as stated puts it with this probability. */
const INSIDE = 0.99;
const STANDING_OFF_SDS = 2;

/** @returns a problem that says what stands in the way, and how to record so that it does not */
export function placeInRun(inference: RunInference, label: string): Result<TrialPlace> {
  const placed = runLevels(inference).get(label);
  if (placed) return success({ frequencyHz: placed.frequencyHz, notes: [] });
  const { name } = inference.run;
  const reach = reachOf(inference, label);
  if (reach === null) return failure(notExpected(name, label));
  const candidates = inference.matches
    .filter((match) => mayBe(match, label))
    .map(({ tone }) => tone.peak)
    .filter(
      ({ frequencyHz }) =>
        frequencyHz > reach.fromHz && frequencyHz < reach.toHz && isClear(inference, frequencyHz, reach.group),
    )
    .sort((a, b) => b.amplitudeMps2 - a.amplitudeMps2);
  const [strongest, next] = candidates;
  if (strongest === undefined) return failure(noLine(name, label, reach));
  if (next !== undefined && strongest.amplitudeMps2 < STANDS_OUT * next.amplitudeMps2) {
    const severalHz = candidates.map(({ frequencyHz }) => frequencyHz).sort((a, b) => a - b);
    return failure(severalLines(name, label, severalHz));
  }
  return success({
    frequencyHz: strongest.frequencyHz,
    notes: [taken(name, label, strongest.frequencyHz, reach, next !== undefined)],
  });
}

/** Judged by its own level: what the diagnosis holds for chance it weighs against all lines it expects. */
function isClear(inference: RunInference, frequencyHz: number, group: SpeedGroup): boolean {
  const level = orderLevel(inference.run.prepared, frequencyHz, historyOf(inference, group));
  return level !== null && isSeen(level, false);
}

function mayBe({ lines, others }: Match, label: string): boolean {
  if (others.resonance >= OWN_FROM) return false;
  return !lines.some(({ origin, image, probability }) => {
    const isOther = image || origin.line.label !== label;
    return isOther && probability >= OWN_FROM;
  });
}

interface Reach {
  readonly group: SpeedGroup;
  readonly fromHz: number;
  readonly toHz: number;
}

/** Where the order can be by what is stated; null where it is not among the run's lines. */
function reachOf({ origins, prior }: RunInference, label: string): Reach | null {
  const origin = origins.find(({ line }) => line.label === label);
  if (!origin) return null;
  const [low, high] = middleOf(origin.group === 'road' ? prior.road : prior.engine);
  const off = origin.place.map(({ mean, sd }) => [mean - STANDING_OFF_SDS * sd, mean + STANDING_OFF_SDS * sd] as const);
  return {
    group: origin.group,
    fromHz: origin.trueHz * Math.exp(low + Math.min(...off.map(([from]) => from))),
    toHz: origin.trueHz * Math.exp(high + Math.max(...off.map(([, to]) => to))),
  };
}

/** The stretch of the axis that holds the middle 99 % of its prior. */
function middleOf(axis: ScaleAxis): readonly [number, number] {
  const most = axis.logPrior.reduce((top, value) => Math.max(top, value), -Infinity);
  const weights = axis.logPrior.map((value) => Math.exp(value - most));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const quantile = (share: number): number => {
    let sum = 0;
    const index = weights.findIndex((weight) => (sum += weight) >= share * total);
    return scaleAt(axis, Math.max(0, index));
  };
  return [quantile((1 - INSIDE) / 2), quantile((1 + INSIDE) / 2)];
}

const between = ({ fromHz, toHz }: Reach): string => `between ${fromHz.toFixed(1)} and ${toHz.toFixed(1)} Hz`;
const NUMBERS = 'or give the amplitudes as numbers';

const notExpected = (run: string, label: string): Problem => ({
  code: 'order-not-found',
  message: `Where ${label} should be in ${run} cannot be worked out, or it is too fast for the recording's rate.`,
  remedy: `Give tire, axle ratio and road speed, record at a higher rate, ${NUMBERS}.`,
});

const noLine = (run: string, label: string, reach: Reach): Problem => ({
  code: 'order-not-found',
  message: `${run} shows no clear line ${between(reach)}, where ${label} must be at the speed that was stated.`,
  remedy: `Record 60 s at the steady speed where the shake is worst, with the sensor near the part; check tire, axle ratio and speed; ${NUMBERS}.`,
});

const severalLines = (run: string, label: string, severalHz: readonly number[]): Problem => ({
  code: 'order-not-parted',
  message: `In ${run} the lines at ${severalHz.map((hz) => hz.toFixed(1)).join(' and ')} Hz could each be ${label}.`,
  remedy: `Take the road speed from GPS or a logger instead of the dial, record 60 s and let the speed drift by a few in a hundred, so that the line that turns with the road shows itself; ${NUMBERS}.`,
});

const taken = (run: string, label: string, hz: number, reach: Reach, others: boolean): Note => ({
  code: 'order-taken',
  severity: 'warning',
  text: `${label} was taken to be the line at ${hz.toFixed(1)} Hz in ${run}, ${others ? 'by far the strongest' : 'the only clear one'} ${between(reach)}. The run itself does not show that this line turns with the road: make one more a few in a hundred faster and see that the line moves along, for otherwise no weight changes it.`,
});
