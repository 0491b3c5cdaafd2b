/** Which of the compared changes is that of a finding: an order's by its name, a fixed tone's by its frequency. */
import type { OrderChange } from './comparison.ts';

/** Two fixed tones nearer than this, relative, are one: a body's resonance moves a little with load and warmth. Judgment. */
export const SAME_TONE = 0.01;

/** What a finding is known by. */
export interface KnownAs {
  readonly label: string;
  readonly part: OrderChange['part'];
  readonly order: number | null;
  readonly frequencyHz: number;
}

export const isChangeOf =
  ({ label, part, order, frequencyHz }: KnownAs) =>
  (change: OrderChange): boolean =>
    order === null
      ? part === 'fixed' && change.part === 'fixed' && Math.abs(change.before.frequencyHz / frequencyHz - 1) < SAME_TONE
      : change.label === label;
