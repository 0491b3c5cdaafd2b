/** The level axis: what an amplitude is worth in the kind of level the reader chose. */
import { feltLevel } from '../../core/signal/felt.ts';
import { inchFromMm, velocityMmpsOfSine } from '../../core/units.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import type { PeakReport } from '../../core/report/report.ts';

export type LevelKind = 'felt' | 'acceleration' | 'velocity' | 'velocity-inches';
/** Those the reader chooses among; the reader's units say which velocity. */
export const LEVEL_CHOICES = ['felt', 'acceleration', 'velocity'] as const;
export type LevelChoice = (typeof LEVEL_CHOICES)[number];

export const levelKindOf = (choice: LevelChoice, units: UnitSystem): LevelKind =>
  choice === 'velocity' && units === 'us' ? 'velocity-inches' : choice;

/** Below this the weighting has no meaning for a seated person and velocity grows without bound, Hz. */
const LOWEST_HZ = 0.5;

/**
 * @param verticalShare Share of the power along gravity, 0..1, for the felt level; null where unknown.
 * @returns Felt level, m/s², mm/s or in/s (0-to-peak).
 */
export function levelOf(
  kind: LevelKind,
  frequencyHz: number,
  amplitudeMps2: number,
  verticalShare: number | null,
): number {
  if (kind === 'acceleration') return amplitudeMps2;
  const hz = Math.max(frequencyHz, LOWEST_HZ);
  if (kind === 'felt') return feltLevel(hz, amplitudeMps2, verticalShare);
  const mmps = velocityMmpsOfSine(amplitudeMps2, hz);
  return kind === 'velocity' ? mmps : inchFromMm(mmps);
}

/** One share for a whole picture: that of its peaks, weighed by their power. The strongest peak decides. */
export function shareOfPeaks(peaks: readonly PeakReport[]): number | null {
  let power = 0;
  let vertical = 0;
  for (const { amplitudeMps2, verticalShare } of peaks) {
    if (verticalShare === null) continue;
    power += amplitudeMps2 ** 2;
    vertical += verticalShare * amplitudeMps2 ** 2;
  }
  return power > 0 ? vertical / power : null;
}

/** Least and greatest level to show: whole decades or thirds of one around the data, with room for 'just felt'. */
export function levelExtent(levels: ArrayLike<number>, floor: number, include: number | null): [number, number] {
  let greatest = include ?? 0;
  for (let index = 0; index < levels.length; index++) greatest = Math.max(greatest, levels[index] ?? 0);
  const top = niceAbove(greatest * 1.25);
  const bottom = niceBelow(Math.max(floor / 2, top / 1e5));
  return [bottom, Math.max(top, bottom * 10)];
}

const STEPS = [1, 2, 5, 10];
const niceAbove = (value: number): number => {
  const decade = 10 ** Math.floor(Math.log10(value || 1));
  return decade * (STEPS.find((step) => decade * step >= value) ?? 10);
};
const niceBelow = (value: number): number => {
  const decade = 10 ** Math.floor(Math.log10(value || 1));
  return decade * (STEPS.findLast((step) => decade * step <= value) ?? 1);
};
