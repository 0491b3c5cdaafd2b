/** A measurement boiled down to what it says of one check, and how firmly that is believed. */
import { normalTail } from '../../signal/numeric/distributions.ts';
import type { FindingBasis } from './case.ts';
import type { CheckId } from '../weights.ts';
import { FAULT_GAIN, LIMIT_SHARPNESS, OUTCOME_TRUST, SEEMING_MASS_KG, SEEMING_MASS_SPREAD } from '../weights.ts';

export interface MeasuredFact {
  readonly checkId: CheckId;
  /** Share of the limit used: 1 is at the limit, above is outside. */
  readonly share: number;
  /** The finding in words, without full stop. */
  readonly text: string;
  /** Outside a limit that it is held to (one that only advises does not count), or seen to be wrong. */
  readonly isFault: boolean;
  /** Once-a-turn force it would make at the speed of the finding, N; null where it makes none or it is not known. */
  readonly forceN: number | null;
  /** How much of the whole check this reading is, 0..1: one station of three, one joint of two. */
  readonly coverage: number;
}

/**
 * Probability that the thing measured is truly wrong in a way that matters here, before coverage is taken into account.
 * At the limit ½; the further from it the surer, up to OUTCOME_TRUST. A reading outside its limit says less where the
 * force it predicts is far too small for the level seen even at FAULT_GAIN times it; one inside says
 * less where its force would do.
 */
export function wrongnessOf({ share, forceN }: MeasuredFact, { amplitudeMps2 }: FindingBasis): number {
  const odds = Math.max(share, 1e-6) ** LIMIT_SHARPNESS;
  const plain = Math.min(OUTCOME_TRUST, Math.max(1 - OUTCOME_TRUST, odds / (1 + odds)));
  if (forceN === null || forceN <= 0 || amplitudeMps2 <= 0) return plain;
  const fits = plain > 0.5 ? chanceEnough(FAULT_GAIN * forceN, amplitudeMps2) : 1 - chanceEnough(forceN, amplitudeMps2);
  return 0.5 + (plain - 0.5) * Math.min(1, 2 * fits);
}

/** Chance that this force makes at least this level where the sensor sits; ½ where it does so with the seeming mass. */
export const chanceEnough = (forceN: number, amplitudeMps2: number): number =>
  normalTail(Math.log((amplitudeMps2 * SEEMING_MASS_KG) / forceN) / Math.log(SEEMING_MASS_SPREAD));

/** ', which would push with about 19 N: enough for the level seen'; empty where no force is predicted. */
export function forceText({ forceN }: Pick<MeasuredFact, 'forceN'>, { amplitudeMps2 }: FindingBasis): string {
  if (forceN === null || forceN <= 0 || amplitudeMps2 <= 0) return '';
  const enough = chanceEnough(forceN, amplitudeMps2);
  const verdict =
    enough >= 0.3
      ? 'enough for the level seen'
      : enough >= 0.05
        ? 'little for the level seen'
        : 'far too little for the level seen';
  return `, and at this speed it pushes with about ${Number(forceN.toPrecision(2))} N, ${verdict}`;
}
