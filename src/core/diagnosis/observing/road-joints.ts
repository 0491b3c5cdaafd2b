/**
 * A road of slabs thumps once a joint, so that tones stand at all multiples of speed over spacing and move with the
 * speed as orders do. No part turns at such a row of rates; single teeth of it may well fall on one.
 */
import type { Tone } from '../origins/tone.ts';

export interface RoadJoints {
  readonly spacingM: number;
  /** Thumps a second. */
  readonly baseHz: number;
  readonly teeth: ReadonlySet<Tone>;
}

/** Slabs and expansion joints: longer than any wheel's turn, shorter than a bridge. m. */
const SPACINGS_M = [4, 26] as const;
/** The body follows thumps up to about this, Hz: there a row is looked for. Its teeth go on for as much again. */
const HIGHEST_HZ = 40;
const MOST_TEETH = 16;
/** A tooth stands this near to its multiple: two standard uncertainties, and what a followed speed leaves. */
const NEAR_SDS = 2;
const NEAR_SHARE = 0.0015;
/** Row of neighbouring multiples that no part's orders make, and teeth in all. */
const LEAST_IN_A_ROW = 3;
const LEAST_TEETH = 5;
/** Chance that unrelated tones stand so, over all rows tried. */
const FALSE_ALARM = 1e-4;

interface Tooth {
  readonly tone: Tone;
  readonly multiple: number;
}

/**
 * @param all tones of a run
 * @param speedMps mean road speed as stated or logged
 * @returns null where the speed is not known, or no such row stands out
 */
export function roadJointsOf(all: readonly Tone[], speedMps: number | undefined): RoadJoints | null {
  if (!speedMps) return null;
  const tones = all.filter(({ peak }) => peak.frequencyHz < HIGHEST_HZ);
  const [shortestM, longestM] = SPACINGS_M;
  const bases = tones.flatMap(({ peak }) =>
    Array.from({ length: MOST_TEETH }, (_, k) => peak.frequencyHz / (k + 1)).filter(
      (hz) => hz > speedMps / longestM && hz < speedMps / shortestM,
    ),
  );
  let best: { baseHz: number; chance: number } | null = null;
  for (const start of bases) {
    const baseHz = baseOf(teethAt(tones, start), start);
    const teeth = teethAt(tones, baseHz);
    if (teeth.length < LEAST_TEETH || !standInARow(teeth)) continue;
    const chance = bases.length * chanceOf(tones, teeth.length, baseHz);
    if (chance < FALSE_ALARM && (!best || chance < best.chance)) best = { baseHz, chance };
  }
  if (!best) return null;
  const { baseHz } = best;
  const reached = all.filter(({ peak }) => peak.frequencyHz < 2 * HIGHEST_HZ);
  const teeth = teethAt(reached, baseHz, 2 * MOST_TEETH);
  return { spacingM: speedMps / baseHz, baseHz, teeth: new Set(teeth.map(({ tone }) => tone)) };
}

const nearHz = ({ peak }: Tone): number => NEAR_SDS * peak.frequencySdHz + NEAR_SHARE * peak.frequencyHz;

function teethAt(tones: readonly Tone[], baseHz: number, most = MOST_TEETH): Tooth[] {
  return tones.flatMap((tone) => {
    const multiple = Math.round(tone.peak.frequencyHz / baseHz);
    const off = Math.abs(tone.peak.frequencyHz - multiple * baseHz);
    return multiple >= 1 && multiple <= most && off < nearHz(tone) ? [{ tone, multiple }] : [];
  });
}

/** Least squares through nought. */
function baseOf(teeth: readonly Tooth[], start: number): number {
  const square = teeth.reduce((sum, { multiple }) => sum + multiple ** 2, 0);
  const product = teeth.reduce((sum, { tone, multiple }) => sum + multiple * tone.peak.frequencyHz, 0);
  return square > 0 ? product / square : start;
}

function standInARow(teeth: readonly Tooth[]): boolean {
  const multiples = new Set(teeth.map(({ multiple }) => multiple));
  return [...multiples].some((first) =>
    Array.from({ length: LEAST_IN_A_ROW }, (_, k) => first + k).every((multiple) => multiples.has(multiple)),
  );
}

/** Chance that so many of the tones or more fall on a tooth, each by the share of the axis that teeth take. */
function chanceOf(tones: readonly Tone[], count: number, baseHz: number): number {
  // The first one gave the row.
  const shares = tones.map((tone) => Math.min(1, (2 * nearHz(tone)) / baseHz));
  let chances = [1];
  for (const share of shares) {
    const next = new Array<number>(chances.length + 1).fill(0);
    chances.forEach((chance, hits) => {
      next[hits]! += chance * (1 - share);
      next[hits + 1]! += chance * share;
    });
    chances = next;
  }
  return chances.slice(count - 1).reduce((sum, chance) => sum + chance, 0);
}
