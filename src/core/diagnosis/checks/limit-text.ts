/** Limits of the bench as the check cards show them: figure and where it comes from, out of the one table of limits. */
import type { LimitId } from '../../driveline/limits/limit.ts';
import { limitOf } from '../../driveline/limits/limit.ts';
import type { Limit } from '../../driveline/limits/limit.ts';
import { inchFromMm } from '../../units.ts';
import { capitalized } from '../../words.ts';

/** 'Tube runout at mid length: at most 0.5 mm (0.020 in), common practice, no source. The maker’s figure comes first.' */
export const limitTexts = (...ids: readonly LimitId[]): string =>
  `${ids.map(limitText).join('; ')}. The maker’s figure comes first.`;

function limitText(id: LimitId, index: number): string {
  const limit = limitOf(id);
  const title = index === 0 ? capitalized(limit.title) : limit.title;
  const figure = withUnit(limit.value, limit);
  const inch = limit.unit === 'mm' ? ` (${limitInchText(limit)})` : '';
  return `${title}: ${limit.sense === 'at-most' ? 'at most' : 'at least'} ${figure}${inch}, ${limit.source}`;
}

/** '0.5 mm', '3°': a figure in a limit's unit. */
export const withUnit = (figure: string | number, { unit }: Limit): string =>
  unit === '°' ? `${figure}°` : `${figure} ${unit}`;

/** '0.020 in': a length in mm, to about a tenth of what a dial of its range tells. */
export const inchText = (mm: number): string => `${inchFromMm(mm).toFixed(mm < 0.25 ? 4 : mm < 10 ? 3 : 2)} in`;

/** A limit in mm as it is said in inches: the trade's own figure where it has one. */
export const limitInchText = ({ value, inchText: own }: Limit): string => own ?? inchText(value);
