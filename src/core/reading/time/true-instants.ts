/**
 * Whether uneven stamps are the instants at which the samples were taken, by the samples themselves: where they are, a
 * sample taken late is further along its curve. Stamps of rows that were only written late know nothing of the samples.
 */

/** Standard errors from which the samples tell. Judgment: over all files that are ever read chance does not reach it. */
const SURELY = 8;
/** Share of the motion that stamps told truly would explain; one that falls short of half of it is another effect. */
const LEAST_SHARE = 0.5;

/**
 * @param lateS how late each row's stamp is against an even grid, s; NaN where that is not known
 * @param stepS of the grid
 */
export const areTrueInstants = (lateS: Float64Array, stepS: number, axes: readonly Float64Array[]): boolean => {
  let product = 0;
  let square = 0;
  let error = 0;
  let count = 0;
  for (const axis of axes) {
    for (let i = 1; i < lateS.length - 1; i++) {
      // Against the straight line between the neighbors, in value and in lateness.
      const late = (lateS[i]! - (lateS[i - 1]! + lateS[i + 1]!) / 2) / stepS;
      const ahead = ((axis[i + 1]! - axis[i - 1]!) / 2) * late;
      const off = axis[i]! - (axis[i - 1]! + axis[i + 1]!) / 2;
      if (Number.isNaN(ahead * off)) continue;
      product += ahead * off;
      square += ahead * ahead;
      error += off * off;
      count++;
    }
  }
  if (square === 0 || error === 0) return false;
  const share = product / square;
  // An image, which runs the other way, tells as well.
  return Math.abs(share) > LEAST_SHARE && Math.abs(product) > SURELY * Math.sqrt((square * error) / count);
};
