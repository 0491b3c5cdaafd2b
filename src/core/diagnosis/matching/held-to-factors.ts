/**
 * One tone gave the speed's history: is it an order seen directly, or the image of a line above half the rate? The two
 * ask for different histories of the vehicle. Where the speed's usual wander leaves both open, the table of levels
 * decides, which is judgment: it may make one likelier, but not sure.
 */

/** Histories this much (ln) less likely than the best are ruled out. */
const RULED_OUT = 5;
/** What levels alone make the best of several at most. */
const MOST_SURE = 0.8;

/**
 * Shares of models with the one history held to its most, the others that are not ruled out sharing the rest.
 * @param factors each model's factor between the vehicle's history and the track's: models of one factor are of one mind
 * @param shares posterior shares of the models, 1 in all
 */
export const heldToFactors = (factors: readonly number[], shares: readonly number[]): readonly number[] => {
  const byFactor = new Map<number, number>();
  factors.forEach((factor, i) => byFactor.set(factor, (byFactor.get(factor) ?? 0) + shares[i]!));
  const [top, most] = [...byFactor].reduce((a, b) => (b[1] > a[1] ? b : a));
  const rivals = new Map(
    [...byFactor].filter(([factor, share]) => factor !== top && share > most * Math.exp(-RULED_OUT)),
  );
  const theirs = [...rivals.values()].reduce((sum, share) => sum + share, 0);
  if (rivals.size === 0 || most <= MOST_SURE) return shares;
  return shares.map((share, i) => {
    if (factors[i] === top) return (share * MOST_SURE) / most;
    return rivals.has(factors[i]!) ? (share * (1 - MOST_SURE)) / theirs : 0;
  });
};
