/** An order that one run shows surely, read in the other run of the same vehicle where that diagnosis left it open. */
import { levelOf } from '../../signal/speed/order-level.ts';
import type { SpeedSource } from '../../vehicle/vehicle.ts';
import type { RunInference } from '../matching/infer-run.ts';
import type { Origin } from '../origins/origin.ts';
import { isSeen } from './change.ts';
import { OWN_FROM } from '../matching/tone-of-order.ts';
import { ANOTHERS_BINS, blockOf, readingsAt } from './run-levels.ts';
import type { RunLevel } from './run-levels.ts';

/** How far an order may stand off where the other run puts it, as a share: by speeds read well, and by others. */
const OFF_PARTNER = 0.01;
const OFF_PARTNER_ROUGHLY = 0.03;
const READ_WELL: readonly (SpeedSource | undefined)[] = ['gps', 'obd', 'logged'];
/** Two tones at one place, Hz. */
const SAME_PLACE_HZ = 0.1;
/** Steps of the search where no tone is listed, in bins of a block. */
const STEP_BINS = 0.25;

interface Shown {
  readonly inference: RunInference;
  readonly level: RunLevel;
}

/**
 * The strongest clear line where the one run and the two speeds put the order: the vehicle is the same, so that neither
 * the tire's true size nor which order it is at fault is in doubt any more. Another line's tone, and one that stands
 * where the first run has another tone (it did not move with the speed), are left alone.
 * @param shown the order in the run that shows it
 * @param faster speed of the other run over the first one's
 * @returns null where no such line stands there
 */
export function partnerLevel(shown: Shown, other: RunInference, faster: number): RunLevel | null {
  const { label } = shown.level.origin.line;
  const origin = other.origins.find((one) => one.line.label === label);
  if (!origin) return null;
  const isWell =
    origin.group === 'road' &&
    [shown.inference, other].every(({ run }) => READ_WELL.includes(run.condition.speedSource));
  const expectedHz = shown.level.frequencyHz * faster;
  const reachHz = expectedHz * (isWell ? OFF_PARTNER : OFF_PARTNER_ROUGHLY);
  const firstHz = shown.inference.matches
    .map(({ tone }) => tone.peak.frequencyHz)
    .filter((hz) => Math.abs(hz - shown.level.frequencyHz) > SAME_PLACE_HZ);
  const isFree = ({ tone, lines }: RunInference['matches'][number]): boolean =>
    !firstHz.some((hz) => Math.abs(hz - tone.peak.frequencyHz) < SAME_PLACE_HZ) &&
    !lines.some((line) => line.origin.line.label !== label && line.probability >= OWN_FROM);
  const tones = other.matches
    .filter((match) => Math.abs(match.tone.peak.frequencyHz - expectedHz) < reachHz && isFree(match))
    .map(({ tone }) => tone.peak)
    .sort((a, b) => b.amplitudeMps2 - a.amplitudeMps2);
  for (const { frequencyHz, verticalShare } of tones) {
    const found = levelAt(other, origin, frequencyHz);
    if (found) return { ...found, verticalShare };
  }
  const taken = [
    ...firstHz,
    ...other.matches.filter((match) => !isFree(match)).map(({ tone }) => tone.peak.frequencyHz),
  ];
  return searched(other, origin, [expectedHz - reachHz, expectedHz + reachHz], taken);
}

/**
 * Where the diagnosis lists no tone: a look at a known place needs less to be sure than one over the whole spectrum.
 * @param taken tones of others, Hz
 */
function searched(
  other: RunInference,
  origin: Origin,
  [fromHz, toHz]: readonly [number, number],
  taken: readonly number[],
): RunLevel | null {
  const blockS = blockOf(other);
  const steps = Math.ceil(((toHz - fromHz) * blockS) / STEP_BINS);
  const found = Array.from({ length: steps + 1 }, (_, k) => {
    const hz = fromHz + ((toHz - fromHz) * k) / Math.max(1, steps);
    return taken.some((one) => Math.abs(one - hz) * blockS < ANOTHERS_BINS) ? null : levelAt(other, origin, hz);
  });
  const best = found.reduce((most, one) => (one && (!most || one.level.power > most.level.power) ? one : most), null);
  // Strongest at an end: the flank of something beyond.
  return best === found[0] || best === found.at(-1) ? null : best;
}

function levelAt(inference: RunInference, origin: Origin, frequencyHz: number): RunLevel | null {
  const readings = readingsAt(inference, origin, frequencyHz);
  if (!readings) return null;
  const level = levelOf(readings);
  return isSeen(level, false)
    ? { origin, frequencyHz, verticalShare: null, readings, level, seen: true, own: true }
    : null;
}
