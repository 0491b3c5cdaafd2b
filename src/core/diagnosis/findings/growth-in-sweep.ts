/** How an order's level grew with the speed within one run that swept through speeds: a pull-up, or a coast-down. */
import { mean } from '../../signal/numeric/statistics.ts';
import type { SpeedTrack } from '../../signal/speed/equal-angle.ts';
import { orderLevel } from '../../signal/speed/order-level.ts';
import { BLOCK_S } from '../../signal/speed/order-readings.ts';
import { historyOf } from '../matching/group-history.ts';
import type { Finding } from './finding.ts';

/** The blocks are read in so many groups, slowest to fastest: enough to see resonances as scatter about the line. */
const GROUPS = 6;
/** Each of so many blocks at the least. */
const LEAST_BLOCKS = 2;
/** Fastest over slowest group from which a run says anything of growth. */
const LEAST_RANGE = 1.25;
/** A group counts where the order stands this far over the noise, in power; where one does not, nothing is said. */
const CLEAR = 3;
/** Of ln(level) in a group, at the least: what the road and the throttle do to it. Judgment. */
const LEAST_SCATTER = 0.1;
/** More scatter about the line is a resonance that the sweep went through, which hides how the cause itself grows. Judgment. */
const MOST_SCATTER = 0.25;

/** The power of the speed that a level follows, with its standard uncertainty. */
interface SpeedExponent {
  readonly value: number;
  readonly sd: number;
}

/** Why a run that swept through speeds does not tell how the level grows. */
export type GrowthHiddenBy = 'resonance' | 'noise' | 'short-run';

interface Point {
  readonly logSpeed: number;
  readonly logLevel: number;
}

const sweeps = ({ relative }: SpeedTrack): boolean => {
  const least = relative.reduce((a, b) => Math.min(a, b), Infinity);
  const most = relative.reduce((a, b) => Math.max(a, b), -Infinity);
  return most >= LEAST_RANGE * least;
};

/** Mean level at each of a few speeds, or what keeps it from being told; null where the run did not sweep. */
const pointsOf = ({ inference, chosen, trueHz }: Finding): readonly Point[] | GrowthHiddenBy | null => {
  if (!chosen || chosen.image) return null;
  const history = historyOf(inference, chosen.origin.group);
  if (!sweeps(history)) return null;
  const level = orderLevel(inference.run.prepared, trueHz, history, BLOCK_S / 2);
  if (!level || level.blocks < GROUPS * LEAST_BLOCKS) return 'short-run';
  const blocks = level.blockPowers
    .map((power, k) => ({ power, logSpeed: level.blockLogSpeeds[k]! }))
    .sort((a, b) => a.logSpeed - b.logSpeed);
  const groups = Array.from({ length: GROUPS }, (_, g) =>
    blocks.slice(Math.floor((g * blocks.length) / GROUPS), Math.floor(((g + 1) * blocks.length) / GROUPS)),
  );
  const powers = groups.map((group) => mean(group.map(({ power }) => power)) - level.noisePower);
  if (powers.some((power) => power < CLEAR * level.noisePower)) return 'noise';
  return groups.map((group, g) => ({
    logSpeed: mean(group.map(({ logSpeed }) => logSpeed)),
    logLevel: Math.log(powers[g]!) / 2,
  }));
};

/**
 * Straight line through ln(level) over ln(speed) within the finding's own run.
 * @returns why it is not told where the run swept and the level follows no one power of the speed, or does not stand clear
 *   of the noise all along; null where the run kept to about one speed
 */
export const growthInSweep = (finding: Finding): SpeedExponent | GrowthHiddenBy | null => {
  const points = pointsOf(finding);
  if (points === null || typeof points === 'string') return points;
  const range = points[points.length - 1]!.logSpeed - points[0]!.logSpeed;
  if (range < Math.log(LEAST_RANGE)) return null;
  const at = mean(points.map(({ logSpeed }) => logSpeed));
  const level = mean(points.map(({ logLevel }) => logLevel));
  const spread = points.reduce((sum, { logSpeed }) => sum + (logSpeed - at) ** 2, 0);
  const value = points.reduce((sum, p) => sum + (p.logSpeed - at) * (p.logLevel - level), 0) / spread;
  const rest = points.reduce((sum, p) => sum + (p.logLevel - level - value * (p.logSpeed - at)) ** 2, 0);
  const scatter = Math.sqrt(rest / (points.length - 2));
  return scatter > MOST_SCATTER ? 'resonance' : { value, sd: Math.max(LEAST_SCATTER, scatter) / Math.sqrt(spread) };
};
