/** Limits: what they are, where they come from, how a maker's figure replaces one, and how a number is held to one. */
import type { LimitEntry } from './limit-entry.ts';
import { DEFAULT_LIMITS } from './limit-table.ts';

export type LimitId = keyof typeof DEFAULT_LIMITS;

export interface Limit extends LimitEntry {
  readonly id: LimitId;
}

/** Figures that replace defaults: the vehicle maker's, or the shop's own. */
export type LimitOverrides = Readonly<
  Partial<Record<LimitId, { readonly value: number; readonly source?: string | undefined }>>
>;

/** The limit in force. An override always wins, and says so. */
export const limitOf = (id: LimitId, overrides: LimitOverrides = {}): Limit => {
  const entry: LimitEntry = DEFAULT_LIMITS[id];
  const override = overrides[id];
  if (override === undefined) return { id, ...entry };
  const { title, unit, sense } = entry;
  return {
    id,
    title,
    unit,
    sense,
    value: override.value,
    status: 'maker',
    source: override.source ?? 'maker’s figure',
  };
};

/** All limits in force, for a settings page. */
export const allLimits = (overrides: LimitOverrides = {}): Limit[] =>
  (Object.keys(DEFAULT_LIMITS) as LimitId[]).map((id) => limitOf(id, overrides));

/** A number held to a limit. */
export interface JudgedNumber {
  readonly title: string;
  readonly measured: number;
  readonly limit: Limit;
  readonly inside: boolean;
  /** How much of the limit is used: measured over limit, or limit over measured for an 'at least'. 1 = at it. */
  readonly share: number;
}

/** Rounding of readings may not turn 'at the limit' into 'outside'. */
const TOLERANCE = 1e-9;

/** Hold a number to a limit; exactly at the limit is inside. */
export const judge = (measured: number, limit: Limit, title = limit.title): JudgedNumber => {
  // Nothing, or less, is as far below an 'at least' as can be.
  const least = measured > 0 ? limit.value / measured : Infinity;
  const share = limit.sense === 'at-most' ? measured / limit.value : least;
  return { title, measured, limit, inside: share <= 1 + TOLERANCE, share };
};
