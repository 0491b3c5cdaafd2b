/** What a line is before any speed is known: part, order, and multiple of the wheel's or the crankshaft's turning. */
import { lineLabel } from './labels.ts';
import type { Line, SpeedGroup } from './line.ts';

/** A line without its frequency: frequency = perTurn × turning speed of the group in Hz. */
export type LineTemplate = Pick<Line, 'part' | 'name' | 'order' | 'label' | 'role' | 'group' | 'perTurn'>;

/**
 * Makes a template.
 *
 * @param turns How often the part turns while the wheel (group 'road') or the crankshaft (group 'engine') turns once.
 */
export const lineTemplate = (
  part: Line['part'],
  order: number,
  group: SpeedGroup,
  turns: number,
  more: { readonly name?: string; readonly role?: NonNullable<Line['role']> } = {},
): LineTemplate => ({
  part,
  order,
  label: lineLabel(part, order, more.name, more.role),
  group,
  perTurn: order * turns,
  ...more,
});
