/** A joint's seat, and what an offset does, in names and numbers. */
import type { SeatedAxis } from '../../../core/driveline/rings/ring-seat.ts';
import { forceText, signedLengthText, smallLengthText, weightText } from '../../../core/report/bench-text.ts';
import type { UnitSystem } from '../../../core/report/format.ts';
import { percentText, rpmText } from '../../../core/report/format.ts';
import { benchResults } from '../../texts/bench-results.ts';
import type { TermId } from '../../texts/glossary.ts';
import type { JointFacts } from './joint.ts';

const words = benchResults.joint;
type Figures = (readonly [name: string, value: string, term?: TermId])[];

export const seatFigures = (seats: readonly SeatedAxis[], units: UnitSystem): Figures =>
  seats.flatMap(({ endPlayMm, offsetMm }, axis): Figures => {
    const play = signedLengthText(endPlayMm, units);
    return [
      axis === 0 ? [words.endPlay(1), play, 'end-play'] : [words.endPlay(axis + 1), play],
      [words.offset(axis + 1), signedLengthText(offsetMm, units)],
    ];
  });

/** Help stands beside the first of two alike. */
const firstOnly = (plane: 'near' | 'far', term: TermId): readonly [] | readonly [TermId] =>
  plane === 'near' ? [term] : [];

/** Unbalance, share of the allowance and force in both planes; empty where mass or speed is not known. */
export function centringFigures({ centring, setting, wholeAllowanceMm }: JointFacts, units: UnitSystem): Figures {
  if (centring === null || setting === null) return [];
  const planes = [
    ['near', centring.near],
    ['far', centring.far],
  ] as const;
  const rows = planes.flatMap(([plane, { unbalanceGmm, shareOfAllowance, forceN }]): Figures => [
    [words.unbalance[plane], weightText(unbalanceGmm, 'g·mm', units), ...firstOnly(plane, 'unbalance')],
    [words.share[plane], percentText(shareOfAllowance), ...firstOnly(plane, 'allowance')],
    [words.force[plane](rpmText(setting.rpm)), forceText(forceN, units)],
  ]);
  return wholeAllowanceMm === null ? rows : [...rows, [words.whole, smallLengthText(wholeAllowanceMm, units)]];
}
