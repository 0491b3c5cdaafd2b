/** When two runs count as driven at one speed, and when as at two: in one place, so that no two rules disagree. Judgment. */

/** How far two speeds, or rates, lie apart (ln); not a number, which satisfies no comparison, where one is not known. */
export const speedsApart = (one: number | null | undefined, other: number | null | undefined): number =>
  one && other ? Math.abs(Math.log(one / other)) : Number.NaN;

/** One speed: levels are held side by side as they stand, of which the square law makes a tenth at the most. */
export const ONE_SPEED = 0.05;
/** Another speed: from here on two runs tell how a level grows. */
export const OTHER_SPEED = 0.08;
/** Like speeds: levels are compared with their growth taken out. Further apart, other resonances are passed. */
export const LIKE_SPEEDS = 0.1;
