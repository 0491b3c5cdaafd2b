/** Limits: what they are, where they come from, how a maker's figure replaces one, and how a number is held to one. */
import { DEFAULT_LIMITS } from './limit-table.ts';

/** Where a figure comes from. */
export type LimitStatus = 'standard' | 'published' | 'common-practice' | 'judgement' | 'maker';

export type LimitId = keyof typeof DEFAULT_LIMITS;

export type LimitUnit = '°' | 'rad/s²' | 'mm' | 'g' | 'mm/s' | 'share';

export interface LimitEntry {
  readonly title: string;
  readonly value: number;
  readonly unit: LimitUnit;
  readonly sense: 'at-most' | 'at-least';
  readonly status: LimitStatus;
  /** Source in words: a standard by its name, or 'common practice, no source'. */
  readonly source: string;
  /** The figure as the trade says it in inches, where that is not a plain conversion. */
  readonly inchText?: string;
}

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
    source: override.source ?? "maker's figure",
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
  const share = limit.sense === 'at-most' ? measured / limit.value : limit.value / measured;
  return { title, measured, limit, inside: share <= 1 + TOLERANCE, share };
};

/** 'common practice, no source', 'ISO 21940-11:2016': what stands beside the figure. */
export const sourceText = (limit: Limit): string => limit.source;
