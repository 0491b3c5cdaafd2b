/**
 * How before and after hold what they say: `npx tsx tests/accuracy/compare-study.ts [pairs]`.
 * Unchanged pairs called changed (at most 5 in 100), true changes of 3 dB found (at least 95 in 100), and how often the
 * 95 % interval holds the true change.
 */
import { comparePair } from './compare-pair.ts';

const pairs = Number(process.argv[2] ?? 100);
for (const trueDb of [0, -3]) {
  let told = 0;
  let real = 0;
  let inside = 0;
  let width = 0;
  for (let seed = 1; seed <= pairs; seed += 1) {
    const change = await comparePair(1000 + seed, trueDb);
    if (!change || change.verdict === 'not-seen') continue;
    told += 1;
    if (change.real) real += 1;
    if ((change.lowDb ?? -Infinity) <= trueDb && trueDb <= (change.highDb ?? Infinity)) inside += 1;
    width += (change.highDb ?? 0) - (change.lowDb ?? 0);
    if (process.argv[3] === '--list')
      console.log(
        seed,
        change.label,
        change.changeDb.toFixed(2),
        change.lowDb?.toFixed(2),
        change.highDb?.toFixed(2),
        change.before.frequencyHz.toFixed(2),
        change.after.frequencyHz.toFixed(2),
      );
  }
  console.log(
    `true change ${trueDb} dB: told ${told} of ${pairs}, called real ${((100 * real) / told).toFixed(1)} %, ` +
      `interval holds ${((100 * inside) / told).toFixed(1)} %, mean width ${(width / told).toFixed(1)} dB`,
  );
}
