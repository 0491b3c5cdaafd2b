/** Which runs can be compared, and what their differences may fake. */
import type { SpeedGroup } from '../../vehicle/line.ts';
import type { Load } from '../../vehicle/vehicle.ts';
import type { RunInference } from '../matching/infer-run.ts';
import { LIKE_SPEEDS, speedsApart } from '../speeds-apart.ts';
import { axesOf, onAxes, sharedAxes } from './on-axes.ts';

/** What may fake a change, as standard uncertainties in dB. Judgment: no study of mountings in vehicles is known here. */
const UNLIKE_SD_DB = {
  mounting: 2,
  axes: 1.5,
  otherAxes: 6,
  logger: 0.5,
  load: 2,
  gear: 1,
} as const;

const DRIVEN: Readonly<Record<Load, string>> = {
  cruise: 'at a steady pedal',
  pull: 'pulling',
  coast: 'coasting',
  neutral: 'rolling in neutral',
  brake: 'braking',
  standing: 'standing',
};
const drivenAs = (load: Load | undefined): string => (load ? DRIVEN[load] : 'load not told');

/** Both runs on the axes that they share. */
export interface Pair {
  readonly before: RunInference;
  readonly after: RunInference;
  readonly differences: readonly string[];
  readonly unlikeSdDb: number;
  /** The sensor sat alike, so that each axis is the same one in both. */
  readonly mountedAlike: boolean;
}

/** How fast two runs were driven, in whatever both are known by: the road's speed, or, standing, the engine's. */
interface Speeds {
  readonly one: number;
  readonly other: number;
  readonly group: SpeedGroup;
}

const speedsOf = ({ run: one }: RunInference, { run: other }: RunInference): Speeds | null => {
  const [a, b] = [one.condition, other.condition];
  if (a.speedMps && b.speedMps) return { one: a.speedMps, other: b.speedMps, group: 'road' };
  const neither = a.speedMps === undefined && b.speedMps === undefined;
  return neither && a.engineRpm && b.engineRpm ? { one: a.engineRpm, other: b.engineRpm, group: 'engine' } : null;
};

/** One with a speed and one without share none; nothing is held against two of which nothing is known. */
const apartOf = (one: RunInference, other: RunInference): number => {
  const speeds = speedsOf(one, other);
  if (speeds) return speedsApart(speeds.one, speeds.other);
  return one.run.condition.speedMps === other.run.condition.speedMps ? 0 : Infinity;
};

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
  const apart = apartOf(one, other);
  if (apart > LIKE_SPEEDS) return Infinity;
  return (
    apart +
    (one.run.condition.load === other.run.condition.load ? 0 : LIKE_SPEEDS) +
    (sameGear(one, other) ? 0 : LIKE_SPEEDS)
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
  const mountedAlike = shared.length > 0 && !mountedDifferently(a.prepared.up, b.prepared.up);
  if (shared.length === 0) {
    differ(UNLIKE_SD_DB.otherAxes, `axis ${axesBefore.join(', ')} before and ${axesAfter.join(', ')} after`);
  } else if (shared.length < Math.max(axesBefore.length, axesAfter.length)) {
    const only = `only ${shared.join(' and ')} ${shared.length === 1 ? 'is' : 'are'} compared`;
    differ(UNLIKE_SD_DB.axes, `${countOf(axesBefore)} before and ${axesAfter.length} after, of which ${only}`);
  } else if (!mountedAlike) differ(UNLIKE_SD_DB.mounting, 'the sensor was mounted differently');
  if (
    a.recording.channels[0]?.columnName !== b.recording.channels[0]?.columnName ||
    differentRate(a.recording.samplingRateHz, b.recording.samplingRateHz)
  ) {
    differ(UNLIKE_SD_DB.logger, 'another logger or rate was used');
  }
  if (a.condition.load !== b.condition.load)
    differ(UNLIKE_SD_DB.load, `${drivenAs(a.condition.load)} before, ${drivenAs(b.condition.load)} after`);
  if (!sameGear(before, after)) differ(UNLIKE_SD_DB.gear, 'another gear was used');
  const unlikeSdDb = Math.hypot(...sds, 0);
  if (shared.length === 0) return { before, after, differences, unlikeSdDb, mountedAlike };
  return { before: onAxes(before, shared), after: onAxes(after, shared), differences, unlikeSdDb, mountedAlike };
}

const countOf = ({ length }: readonly string[]): string => (length === 1 ? '1 axis' : `${length} axes`);

const differentRate = (a: number, b: number): boolean => Math.abs(Math.log(a / b)) > 0.02;

/** More than 15° between the two directions of gravity on the sensor's own axes. */
function mountedDifferently(a: readonly number[] | null, b: readonly number[] | null): boolean {
  if (a === null || b === null) return a !== b;
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0) < Math.cos(Math.PI / 12);
}

/** Speed of the second run over the first one's, as stated or logged; null where one is not. */
export function statedFaster({ before, after }: Pair): number | null {
  const speeds = speedsOf(before, after);
  return speeds && speeds.other / speeds.one;
}

/** How much faster the second run was than the first, dB of speed; null where a speed is not known. */
export function fasterDb({ before, after }: Pair): number | null {
  const speeds = speedsOf(before, after);
  if (!speeds) return null;
  const scale = ({ posterior }: RunInference): number => Math.exp(posterior[speeds.group].mean);
  return 20 * Math.log10((speeds.other * scale(after)) / (speeds.one * scale(before)));
}
