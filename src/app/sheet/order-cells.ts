/** One row of the table of orders, in words. */
import type { UnitSystem } from '../../core/report/format.ts';
import { accelerationText, feltText, frequencyText, significant, velocityText } from '../../core/report/format.ts';
import type { OrderReport } from '../../core/report/report.ts';
import { velocityMmpsOfSine } from '../../core/units.ts';
import { texts } from '../texts.ts';

const words = texts.sheet;

export interface OrderCells {
  readonly seen: boolean;
  /** Level where seen; else what could hide there, or why it cannot be seen. */
  readonly level: string;
  readonly velocity: string;
  readonly felt: string;
}

export function orderCells(order: OrderReport, units: UnitSystem): OrderCells {
  const { visibility, aliasHz, sharesLineOf, frequencyHz, amplitudeMps2, feltLevel } = order;
  if (visibility === 'above-nyquist') {
    const imageHz = frequencyText(aliasHz ?? 0);
    if (amplitudeMps2 === null || feltLevel === null) {
      const level = aliasHz === undefined ? words.aboveHalf : words.aboveHalfImage(imageHz);
      return { seen: false, level, velocity: '', felt: '' };
    }
    return {
      seen: true,
      level: words.byImage(accelerationText(amplitudeMps2), imageHz),
      velocity: velocityText(velocityMmpsOfSine(amplitudeMps2, frequencyHz), units),
      felt: feltText(feltLevel),
    };
  }
  if (amplitudeMps2 === null) return { seen: false, level: words.notLookedFor, velocity: '', felt: '' };
  const seen = visibility === 'seen';
  const most = (text: string): string => (seen ? text : words.atMost(text));
  const limit = `${significant(amplitudeMps2, 2)} m/s²`;
  const unseen = sharesLineOf === undefined ? words.notSeenAtMost(limit) : words.sharesLineOf(sharesLineOf, limit);
  return {
    seen,
    level: seen ? accelerationText(amplitudeMps2) : unseen,
    velocity: most(velocityText(velocityMmpsOfSine(amplitudeMps2, frequencyHz), units)),
    felt: feltLevel === null ? '' : most(feltText(feltLevel)),
  };
}
