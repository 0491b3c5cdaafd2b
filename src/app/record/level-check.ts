/** How the device lies, from the last second or so of its readings. */
import { degFromRad, STANDARD_GRAVITY_MPS2 } from '../../core/units.ts';
import type { MotionSample } from './recording-buffer.ts';

export type LevelState = 'waiting' | 'moving' | 'level' | 'tilted' | 'no-gravity';

export interface LevelCheck {
  readonly state: LevelState;
  /** Mean length of the acceleration vector, m/s². */
  readonly gravityMps2: number;
  /** Angle between gravity and the nearest of the device's axes, degrees: 0 where it lies flat or stands straight. */
  readonly tiltDeg: number;
}

const LEAST_SAMPLES = 10;
const LATEST = 60;
/** Standard deviation about the mean above which a hand is moving it, m/s². A rough road shakes less than this. */
const MOVING_MPS2 = 3;
/** Off level by more than this is said. Judgment. */
const LEVEL_DEG = 8;
/** A vector this far from gravity has it taken out, or is in another unit. */
const GRAVITY_SHARE = 0.3;

export function levelCheck(samples: readonly MotionSample[]): LevelCheck {
  const latest = samples.slice(-LATEST);
  if (latest.length < LEAST_SAMPLES) return { state: 'waiting', gravityMps2: 0, tiltDeg: 0 };
  const mean = (of: (sample: MotionSample) => number): number =>
    latest.reduce((sum, sample) => sum + of(sample), 0) / latest.length;
  const [x, y, z] = [mean((s) => s.x), mean((s) => s.y), mean((s) => s.z)];
  const gravityMps2 = Math.hypot(x, y, z);
  const spread = Math.sqrt(mean((s) => (s.x - x) ** 2 + (s.y - y) ** 2 + (s.z - z) ** 2));
  const largest = Math.max(Math.abs(x), Math.abs(y), Math.abs(z));
  const tiltDeg = gravityMps2 > 0 ? degFromRad(Math.acos(Math.min(1, largest / gravityMps2))) : 0;
  return { state: stateOf(gravityMps2, spread, tiltDeg), gravityMps2, tiltDeg };
}

function stateOf(gravity: number, spread: number, tiltDeg: number): LevelState {
  if (spread > MOVING_MPS2) return 'moving';
  if (Math.abs(gravity / STANDARD_GRAVITY_MPS2 - 1) > GRAVITY_SHARE) return 'no-gravity';
  return tiltDeg <= LEVEL_DEG ? 'level' : 'tilted';
}
