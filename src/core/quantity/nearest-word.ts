/** The word that a misspelt one was meant to be. */

/** The known word fewest letters away; undefined where every one is a different word. */
export function nearestWord<T extends string>(word: string, known: readonly T[]): T | undefined {
  const said = word.trim().toLowerCase();
  const away = (one: string): number => (one.startsWith(said) ? 1 : lettersAway(said, one));
  const best = known.reduce<T | undefined>((a, b) => (a !== undefined && away(a) <= away(b) ? a : b), undefined);
  return best !== undefined && said.length > 2 && away(best) <= Math.ceil(said.length / 3) ? best : undefined;
}

/** Letters to insert, drop or change to make one word of the other (Levenshtein 1966). */
function lettersAway(a: string, b: string): number {
  let before = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i += 1) {
    const now = [i];
    for (let j = 1; j <= b.length; j += 1) {
      const change = (before[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1);
      now.push(Math.min(change, (before[j] ?? 0) + 1, (now[j - 1] ?? 0) + 1));
    }
    before = now;
  }
  return before[b.length] ?? 0;
}
