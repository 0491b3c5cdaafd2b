/** How orders are written: the part's name, the multiple, and the × sign. */
import type { Line, Part } from './line.ts';

const HALF = '½';

/** An order as people write it: 0.5 → '½×', 1.5 → '1½×', 2 → '2×', 2.845 → '2.85×'. */
export const orderText = (order: number): string => {
  const whole = Math.floor(order);
  const isHalf = order - whole === 0.5;
  if (isHalf) return `${whole === 0 ? '' : whole}${HALF}×`;
  return `${Number(order.toFixed(2))}×`;
};

const ROLE_TEXT: Readonly<Record<NonNullable<Line['role']>, string>> = {
  firing: ' (firing)',
  mesh: ' (gear mesh)',
  companion: '',
  electric: ' (electrical)',
  knock: '',
};

/**
 * The label of a line: 'driveshaft 2×', 'engine 4× (firing)', 'front driveshaft 1×', 'alternator 1×'.
 *
 * @param name Which of several parts; takes the place of the part's word.
 */
export const lineLabel = (part: Part, order: number, name?: string, role?: Line['role']): string =>
  `${name ?? part} ${orderText(order)}${role === undefined ? '' : ROLE_TEXT[role]}`;
