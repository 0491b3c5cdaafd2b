/**
 * A gear shift in the middle of a run: road and engine both logged, the engine turns in one ratio to the road before it
 * and in another after. Averaged over both the engine has a speed it never had.
 */
import type { Span } from '../../reading/cut-recording.ts';
import type { Recording, Track } from '../../reading/recording.ts';
import { speedLogOf } from '../../reading/speed-log.ts';

/** A ratio is one gear's within this, relative: slip of a converter and steps of both logs. */
const ONE_GEAR = 0.04;
/** The next gear's is this far off at least, relative. */
const NEXT_GEAR = 0.1;
/** A gear driven for less than this is on the way to another, s. */
const SHORTEST_S = 15;
/** Logs lag unlike each other about a shift: so much is left out, s. */
const SHIFT_S = 1.5;
/** Slower than this the clutch slips, m/s. */
const LEAST_MPS = 4;

interface Stretch extends Span {
  readonly ratio: number;
}

/** Stretches driven in one gear each, in order of time; none where there was one gear only, or too little is logged. */
export function gearStretches(recording: Recording): readonly Span[] {
  const { engineSpeedRpm } = recording;
  const speed = speedLogOf(recording);
  if (!speed || !engineSpeedRpm) return [];
  const stretches = oneGearEach(engineSpeedRpm, nearestValues(speed, engineSpeedRpm.timeS));
  const ratios = stretches.map(({ ratio }) => ratio);
  const isShift = Math.max(...ratios) > (1 + NEXT_GEAR) * Math.min(...ratios);
  return stretches.length > 1 && isShift ? stretches.map(({ fromS, toS }) => ({ fromS, toS })) : [];
}

/** @param speedsMps at the engine log's times */
function oneGearEach({ timeS, value }: Track, speedsMps: Float64Array): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let fromS = 0;
  let sum = 0;
  let count = 0;
  const close = (toS: number): void => {
    if (count > 0 && toS - fromS >= SHORTEST_S) stretches.push({ fromS, toS, ratio: sum / count });
    sum = 0;
    count = 0;
  };
  timeS.forEach((t, k) => {
    const mps = speedsMps[k]!;
    const ratio = mps > LEAST_MPS ? value[k]! / mps : NaN;
    if (count > 0 && !(Math.abs((ratio * count) / sum - 1) < ONE_GEAR)) close(t - SHIFT_S);
    if (!(ratio > 0)) return;
    if (count === 0) fromS = k > 0 ? t + SHIFT_S : t;
    sum += ratio;
    count += 1;
  });
  close(timeS[timeS.length - 1] ?? 0);
  return stretches;
}

/** The log's nearest value at each of these times, which ascend. */
function nearestValues({ timeS, value }: Track, at: Float64Array): Float64Array {
  let k = 0;
  return at.map((t) => {
    while (k + 1 < timeS.length && Math.abs(timeS[k + 1]! - t) <= Math.abs(timeS[k]! - t)) k += 1;
    return value[k] ?? 0;
  });
}
