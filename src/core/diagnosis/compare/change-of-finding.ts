/** Which of the compared changes is that of a finding: an order's by its name, a fixed tone's by its frequency. */
import { isSameTone } from '../findings/same-tone.ts';
import type { OrderChange } from './comparison.ts';

/** What a finding is known by. */
export interface KnownAs {
  readonly label: string;
  readonly part: OrderChange['part'];
  readonly order: number | null;
  readonly frequencyHz: number;
}

/** @returns true for the change that is the finding's; none is of an unknown tone, which is not compared */
export const isChangeOf =
  ({ label, part, order, frequencyHz }: KnownAs) =>
  (change: OrderChange): boolean =>
    order === null
      ? part === 'fixed' && change.part === 'fixed' && isSameTone(change.before.frequencyHz, frequencyHz)
      : change.label === label;
