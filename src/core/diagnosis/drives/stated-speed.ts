/** Where a speed that was stated and the one that was logged are not the same. */
import type { Note } from '../../note.ts';
import { bothSpeedsText } from '../../words.ts';

/** A stated and a logged speed further apart than this are told to the reader. */
const WORTH_TELLING = 0.03;

/** A note that says so; none where they agree, or nothing was stated. */
export const statedDiffers = (statedMps: number | undefined, loggedMps: number): readonly Note[] =>
  statedMps !== undefined && Math.abs(statedMps / loggedMps - 1) > WORTH_TELLING
    ? [
        {
          code: 'stated-speed-differs',
          severity: 'warning',
          text: `The stated speed was ${bothSpeedsText(statedMps, 1)}; the logged one is used.`,
        },
      ]
    : [];
