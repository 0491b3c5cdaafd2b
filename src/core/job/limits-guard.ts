/** Limits of a job file: figures, the maker's or the shop's own, in place of the bench's defaults. */
import type { LimitId, LimitOverrides } from '../driveline/limits/limit.ts';
import { DEFAULT_LIMITS } from '../driveline/limits/limit-table.ts';
import { success } from '../note.ts';
import type { Guard } from './guards.ts';
import { isObject, nonEmptyText, shown, wrongKey } from './guards.ts';
import { shape } from './shape.ts';

const figure: Guard<number> = (value, key) =>
  typeof value === 'number' && value > 0 && value < 1e6
    ? success(value)
    : wrongKey(key, `a figure above zero is expected, but it holds ${shown(value)}`, 'Write a number.');

const override = shape<NonNullable<LimitOverrides[LimitId]>>(
  { value: figure, source: nonEmptyText },
  { required: ['value'] },
);

/** Figures by the name of their limit, in the limit's own unit; names this version does not know are kept. */
export const limitsGuard: Guard<LimitOverrides> = (value, key) => {
  if (!isObject(value)) return wrongKey(key, `an object is expected, but it holds ${shown(value)}`, 'Write { }.');
  for (const [name, entry] of Object.entries(value)) {
    if (!Object.hasOwn(DEFAULT_LIMITS, name)) continue;
    const checked = override(entry, `${key}.${name}`);
    if (!checked.ok) return checked;
  }
  return success(value as LimitOverrides);
};
