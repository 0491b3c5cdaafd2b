/** How the level of an order follows the speed. */

import type { SpeedLaw } from '../../signal/speed/level-wander.ts';

/**
 * Unbalance grows with the square of speed, and the way to the seat makes that steeper or turns it round. Away from
 * resonances it does so a little. On the flank of one it does so by up to 1/(2ζ): 6 to 20 for the usual damping of a body,
 * 2.5 to 9 % of critical (derived: slope of ln|H| of a second-order resonance where it has fallen to 1/√2). The shares
 * are judgment.
 */
export const SPEED_LAWS: readonly SpeedLaw[] = [
  { weight: 0.75, exponent: 2, exponentSd: 3 },
  { weight: 0.25, exponent: 2, exponentSd: 10 },
];

/** Of all laws together. */
export const MEAN_EXPONENT = SPEED_LAWS.reduce((sum, { weight, exponent }) => sum + weight * exponent, 0);
export const EXPONENT_SD = Math.sqrt(
  SPEED_LAWS.reduce((sum, { weight, exponent, exponentSd }) => sum + weight * (exponentSd ** 2 + exponent ** 2), 0) -
    MEAN_EXPONENT ** 2,
);
