/** Which runs can be compared, and what their differences may fake. */
import type { RunInference } from '../matching/infer-run.ts';
import { axesOf, onAxes, sharedAxes } from './on-axes.ts';

/** Speeds further apart than this are not shared (the level's law of speed would decide the answer). */
const SHARED_SPEED = 0.1;
/** What may fake a change, as standard uncertainties in dB. Judgment: no study of mountings in vehicles is known here. */
const UNLIKE_SD_DB = {
  mounting: 2,
  axes: 1.5,
  otherAxes: 6,
  logger: 0.5,
  load: 2,
  gear: 1,
} as const;

/** Both runs on the axes that they share. */
export interface Pair {
  readonly before: RunInference;
  readonly after: RunInference;
  readonly differences: readonly string[];
  readonly unlikeSdDb: number;
}

const speedOf = ({ run }: RunInference): number | null => run.condition.speedMps ?? null;

/** Each run before with the run after that is nearest in speed and condition; none where no speed is shared. */
export function pairRuns(before: readonly RunInference[], after: readonly RunInference[]): Pair[] {
  return before.flatMap((one) => {
    const partners = after
      .map((other) => ({ other, cost: pairCost(one, other) }))
      .filter(({ cost }) => Number.isFinite(cost))
      .sort((a, b) => a.cost - b.cost);
    const best = partners[0];
    return best ? [pairOf(one, best.other)] : [];
  });
}

function pairCost(one: RunInference, other: RunInference): number {
  const a = speedOf(one);
  const b = speedOf(other);
  const apart = a !== null && b !== null ? Math.abs(Math.log(b / a)) : a === b ? 0 : Infinity;
  if (apart > SHARED_SPEED) return Infinity;
  return (
    apart +
    (one.run.condition.load === other.run.condition.load ? 0 : SHARED_SPEED) +
    (sameGear(one, other) ? 0 : SHARED_SPEED)
  );
}

const sameGear = (one: RunInference, other: RunInference): boolean =>
  one.run.condition.gearRatio === other.run.condition.gearRatio;

function pairOf(before: RunInference, after: RunInference): Pair {
  const differences: string[] = [];
  const sds: number[] = [];
  const differ = (sdDb: number, text: string): void => {
    sds.push(sdDb);
    differences.push(text);
  };
  const a = before.run;
  const b = after.run;
  const [axesBefore, axesAfter] = [axesOf(before), axesOf(after)];
  const shared = sharedAxes([before, after]);
  if (shared.length === 0) {
    differ(UNLIKE_SD_DB.otherAxes, `axis ${axesBefore.join(', ')} before and ${axesAfter.join(', ')} after`);
  } else if (shared.length < Math.max(axesBefore.length, axesAfter.length)) {
    const only = `only ${shared.join(' and ')} ${shared.length === 1 ? 'is' : 'are'} compared`;
    differ(UNLIKE_SD_DB.axes, `${countOf(axesBefore)} before and ${axesAfter.length} after, of which ${only}`);
  } else if (mountedDifferently(a.prepared.up, b.prepared.up))
    differ(UNLIKE_SD_DB.mounting, 'the sensor was mounted differently');
  if (
    a.recording.channels[0]?.columnName !== b.recording.channels[0]?.columnName ||
    differentRate(a.recording.samplingRateHz, b.recording.samplingRateHz)
  ) {
    differ(UNLIKE_SD_DB.logger, 'another logger or rate was used');
  }
  if (a.condition.load !== b.condition.load)
    differ(
      UNLIKE_SD_DB.load,
      `load ${a.condition.load ?? 'not told'} before and ${b.condition.load ?? 'not told'} after`,
    );
  if (!sameGear(before, after)) differ(UNLIKE_SD_DB.gear, 'another gear was used');
  const unlikeSdDb = Math.hypot(...sds, 0);
  if (shared.length === 0) return { before, after, differences, unlikeSdDb };
  return { before: onAxes(before, shared), after: onAxes(after, shared), differences, unlikeSdDb };
}

const countOf = ({ length }: readonly string[]): string => (length === 1 ? '1 axis' : `${length} axes`);

const differentRate = (a: number, b: number): boolean => Math.abs(Math.log(a / b)) > 0.02;

/** More than 15° between the two directions of gravity on the sensor's own axes. */
function mountedDifferently(a: readonly number[] | null, b: readonly number[] | null): boolean {
  if (a === null || b === null) return a !== b;
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0) < Math.cos(Math.PI / 12);
}

/** Speed of the second run over the first one's, as stated; null where one is not. */
export function statedFaster({ before, after }: Pair): number | null {
  const [a, b] = [speedOf(before), speedOf(after)];
  return a === null || b === null ? null : b / a;
}

/** How much faster the second run was than the first, dB of speed; null where a speed is not known. */
export function fasterDb({ before, after }: Pair): number | null {
  const a = speedOf(before);
  const b = speedOf(after);
  if (a === null || b === null) return null;
  const scale = (one: RunInference): number => Math.exp(one.posterior.road.mean);
  return 20 * Math.log10((b * scale(after)) / (a * scale(before)));
}
