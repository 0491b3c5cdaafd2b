/** Limits the shop or the maker sets for a job. */
import type { LimitUnit } from '../../core/driveline/limits/limit-entry.ts';
import type { LimitId } from '../../core/driveline/limits/limit.ts';
import { limitOf } from '../../core/driveline/limits/limit.ts';
import type { Job } from '../../core/job/job.ts';
import type { Result } from '../../core/note.ts';
import { success } from '../../core/note.ts';
import type { QuantityKind } from '../../core/quantity/quantity-kinds.ts';
import * as kinds from '../../core/quantity/quantity-kinds.ts';
import { parseQuantity, withoutGradeSign } from '../../core/quantity/quantity.ts';
import type { UnitSystem } from '../../core/report/format.ts';
import { inchFromMm, ounceFromGram } from '../../core/units.ts';
import { without } from '../form/document.ts';
import { texts } from '../texts.ts';

/** How the figures of one unit are typed; the kind's own unit is the limit's. */
const TYPED: Readonly<Record<LimitUnit, { readonly kind: QuantityKind; readonly range: readonly [number, number] }>> = {
  mm: { kind: kinds.LENGTH_MM, range: [0.001, 1000] },
  '°': { kind: kinds.ANGLE_DEG, range: [0.01, 90] },
  'rad/s²': { kind: kinds.ANGULAR_ACCELERATION_RADPS2, range: [1, 1e5] },
  g: { kind: kinds.MASS_G, range: [0.1, 1000] },
  'mm/s': { kind: kinds.GRADE_MMPS, range: [0.1, 4000] },
  share: { kind: kinds.SHARE, range: [0.01, 10] },
};

/** What a bare number is in for a reader of US units, where that differs. */
const US_UNITS: Partial<Record<LimitUnit, string>> = { mm: 'in', g: 'oz', share: '%' };

/** Up to here a bare number is a share of one, as the sources write it (0.65); above, it is in percent as shown. */
const MOST_BARE_SHARE = 2;

/** A limit's figure as it stands in its field: rounded, with the unit that a bare number would be in. */
export function ownLimitText(value: number, unit: LimitUnit, units: UnitSystem): string {
  if (unit === 'mm') return units === 'us' ? `${+inchFromMm(value).toFixed(4)} in` : `${+value.toFixed(3)} mm`;
  if (unit === 'g') return units === 'us' ? `${+ounceFromGram(value).toFixed(3)} oz` : `${+value.toPrecision(4)} g`;
  if (unit === 'share') return `${+(100 * value).toFixed(1)} %`;
  if (unit === 'mm/s') return `G ${+value.toPrecision(4)}`;
  return unit === '°' ? `${+value.toFixed(2)}°` : `${+value.toPrecision(4)} ${unit}`;
}

/** The figure typed for a limit, in the limit's unit. A bare number is in the unit the limit is shown in. */
export function parseOwnLimit(id: LimitId, text: string, units: UnitSystem): Result<number> {
  const { unit, value } = limitOf(id);
  const { kind, range } = TYPED[unit];
  const options = { range, name: texts.bench.limitName, example: ownLimitText(value, unit, units) };
  const shownUnit = units === 'us' ? (US_UNITS[unit] ?? unit) : unit === 'share' ? '%' : unit;
  const parsed = parseQuantity(unit === 'mm/s' ? withoutGradeSign(text) : text, kind, shownUnit, options);
  const bare = unit === 'share' ? Number(text.replace(',', '.')) : Number.NaN;
  return bare > 0 && bare <= MOST_BARE_SHARE ? success(bare) : parsed;
}

/** The job with a figure of its own for a limit, in the limit's unit; null brings the default back. */
export function setLimit(job: Job, id: LimitId, value: number | null): Job {
  const limits = job.limits ?? {};
  return { ...job, limits: value === null ? without(limits, id) : { ...limits, [id]: { value } } };
}
