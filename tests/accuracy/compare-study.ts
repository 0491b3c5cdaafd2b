/**
 * How before and after hold what they say: `npx tsx tests/accuracy/compare-study.ts [vehicles] [--list] [--from N]
 * [--up-to HZ]`. Each vehicle gives two pairs without a change and two with 3 dB less. Told are: unchanged pairs called
 * changed (at most 5 in 100), true changes found (at least 95 in 100), and how often the 95 % interval holds the truth,
 * each with the 95 % interval of its rate (Clopper & Pearson 1934; pairs of one vehicle counted as if independent).
 */
import { parseArgs } from 'node:util';
import type { RunInference } from '../../src/core/diagnosis/infer-run.ts';
import { compareRuns } from '../../src/core/diagnosis/compare/compare.ts';
import { fTailQuantile } from '../../src/core/signal/distributions.ts';
import { fourRuns } from './compare-pair.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    list: { type: 'boolean', default: false },
    from: { type: 'string', default: '3001' },
    'up-to': { type: 'string', default: '420' },
  },
});
const TRUE_DB = -3;
const vehicles = Number(positionals[0] ?? 50);

const count = {
  unchanged: { pairs: 0, told: 0, real: 0, inside: 0 },
  changed: { pairs: 0, told: 0, real: 0, inside: 0 },
};

function note(label: string, before: RunInference, after: RunInference, trueDb: number): void {
  const tally = trueDb === 0 ? count.unchanged : count.changed;
  const change = compareRuns([before], [after]).pairs[0]?.orders.find((order) => order.label === label);
  tally.pairs += 1;
  if (!change || change.verdict === 'not-seen') return;
  const [low, high] = [change.lowDb ?? -Infinity, change.highDb ?? Infinity];
  tally.told += 1;
  tally.real += Number(change.real && (trueDb === 0 || change.changeDb < 0));
  tally.inside += Number(low <= trueDb && trueDb <= high);
  if (values.list)
    console.log(
      `  ${label}, true ${trueDb}: ${change.changeDb.toFixed(2)}, ${low.toFixed(2)} to ${high.toFixed(2)} dB`,
    );
}

for (let k = 0; k < vehicles; k += 1) {
  const seed = Number(values.from) + k;
  const four = await fourRuns(seed, { trueDb: TRUE_DB, upToHz: Number(values['up-to']) });
  if (four === null) continue;
  if (values.list) console.log(`vehicle ${seed}`);
  const [a, b] = four.asFound;
  const [c, d] = four.changed;
  note(four.label, a, b, 0);
  note(four.label, c, d, 0);
  note(four.label, a, d, TRUE_DB);
  note(four.label, b, c, TRUE_DB);
}

for (const [name, { pairs, told, real, inside }] of Object.entries(count)) {
  console.log(
    `${name}: ${pairs} pairs, order told in ${told}; called changed ${rate(real, pairs)}; interval holds ${rate(inside, told)}`,
  );
}

function rate(k: number, n: number): string {
  const low = k === 0 ? 0 : 1 / (1 + (n - k + 1) * (fTailQuantile(0.025, 2 * (n - k + 1), 2 * k) / k));
  const odds = k === n ? Infinity : ((k + 1) / (n - k)) * fTailQuantile(0.025, 2 * (k + 1), 2 * (n - k));
  const high = k === n ? 1 : odds / (1 + odds);
  const percent = (share: number): string => (100 * share).toFixed(1);
  return `${k} (${percent(k / n)} %, ${percent(low)} to ${percent(high)} %)`;
}
