/** '3 nose up', '6.2 rear down 1.5 right', '87 down': an inclinometer reading as people say it. */
import type { InclinometerReading } from '../../core/driveline/angles/inclinometer.ts';
import { isUpright } from '../../core/driveline/angles/inclinometer.ts';
import { parseAngleDeg } from '../../core/quantity/quantity.ts';
import { valueOf } from '../arguments.ts';
import { UsageError } from '../io.ts';

export interface SaidReading {
  readonly reading: InclinometerReading;
  /** Plan angle, degrees, positive where the rear end lies to the right. */
  readonly planDeg?: number;
  /** Whether it was said which end is up or down. */
  readonly endSaid: boolean;
}

const PLAN = /,?\s*([\d.,]+)\s*(?:°|deg)?\s*(right|left)\s*$/iu;
const SLOPE =
  /^\s*(?:(nose|front|rear)\s+)?(?:(down|up)\s+)?([+\-−]?[\d.,]+)\s*(?:°|º|deg(?:rees?)?)?\s*(?:(nose|front|rear)\s*)?(down|up)?\s*$/iu;

/**
 * @param noseEnd which end of this part is called its nose; undefined where it has none
 * @throws UsageError where it cannot be read in one way
 */
export function saidReading(option: string, text: string, noseEnd?: 'front' | 'rear'): SaidReading {
  const [planWords = '', plan, side] = PLAN.exec(text) ?? [];
  const [, endBefore, wayBefore, figure, endAfter, wayAfter] =
    SLOPE.exec(text.slice(0, text.length - planWords.length)) ?? [];
  const end = (endBefore ?? endAfter)?.toLowerCase();
  const way = (wayBefore ?? wayAfter)?.toLowerCase();
  const twice = (endBefore !== undefined && endAfter !== undefined) || (wayBefore && wayAfter);
  if (figure === undefined || twice || (end !== undefined && way === undefined)) {
    const example = noseEnd === undefined ? '"6.2 down", "6.2 rear down"' : '"3 nose up", "3 rear down"';
    throw new UsageError(
      `--${option} "${text}": write it like ${example}, with "1.5 right" behind it where it runs sideways.`,
    );
  }
  if (end === 'nose' && noseEnd === undefined) {
    throw new UsageError(`--${option} "${text}": only a pinion has a nose; say which end, front or rear.`);
  }
  if (/^[-−]/u.test(figure) && way !== undefined) {
    throw new UsageError(`--${option} "${text}": give the minus sign or the word "${way}", not both.`);
  }
  const shownDeg = valueOf(option, parseAngleDeg(figure, '°'));
  const named = end === 'front' || end === 'rear' ? end : end === 'nose' ? noseEnd : 'rear';
  const lowEnd = way === undefined ? undefined : (way === 'down') === (named === 'rear') ? 'rear' : 'front';
  return {
    reading: {
      shownDeg,
      ...(lowEnd && { lowEnd }),
      ...(isUpright(shownDeg) && { held: 'across' as const }),
    },
    ...(plan !== undefined && {
      planDeg: valueOf(option, parseAngleDeg(plan, '°')) * (side?.toLowerCase() === 'left' ? -1 : 1),
    }),
    endSaid: end !== undefined,
  };
}
