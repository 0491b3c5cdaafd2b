/** Which of the compared changes is that of a finding: an order's by its name, another tone's by its kind and frequency. */
import { isSameTone } from '../findings/same-tone.ts';
import type { OrderChange } from './comparison.ts';

/** What a finding is known by. */
export interface KnownAs {
  readonly label: string;
  readonly part: OrderChange['part'];
  readonly order: number | null;
  readonly frequencyHz: number;
}

/** @returns true for the change that is the finding's, whichever run it was found in */
export const isChangeOf =
  ({ label, part, order, frequencyHz }: KnownAs) =>
  (change: OrderChange): boolean =>
    order === null
      ? change.part === part &&
        [change.before, change.after].some((level) => isSameTone(level.frequencyHz, frequencyHz))
      : change.label === label;
