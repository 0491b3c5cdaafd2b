/**
 * How before and after hold what they say: `npx tsx tests/accuracy/compare-study.ts [vehicles] [--list] [--from N]
 * [--up-to HZ] [--speed-sd SHARE] [--known-speed]`. Each vehicle gives two pairs without a change and two with 3 dB less,
 * of runs of 60 s whose speeds differ by some 1 %, or as told (0.0025: cruise control). Told are: unchanged pairs called
 * changed (at most 5 in 100), true changes found (at least 95 in 100), and how often the 95 % interval holds the truth; in
 * all, order by order, and by whether the second run met the first one's speed within half a percent. Each rate stands with
 * its 95 % interval (Clopper & Pearson 1934; pairs of one vehicle counted as if independent).
 * With --known-speed the level is read along the true speed and only the statistics are tried.
 */
import { parseArgs } from 'node:util';
import type { RunInference } from '../../src/core/diagnosis/matching/infer-run.ts';
import { changeOf, isSeen } from '../../src/core/diagnosis/compare/change.ts';
import { SPEED_LAWS } from '../../src/core/diagnosis/compare/speed-law.ts';
import { withNoiseUnder } from '../../src/core/signal/speed/noise-under-order.ts';
import { levelsOfPair } from '../../src/core/diagnosis/compare/levels-of-pair.ts';
import { beatSdDb } from '../../src/core/diagnosis/compare/wheels-beat.ts';
import { compareRuns } from '../../src/core/diagnosis/compare/compare.ts';
import type { Four, ReadLevel } from './compare-pair.ts';
import { fourLevels, fourRuns } from './compare-pair.ts';
import { fTailQuantile } from '../support/f-quantile.ts';
import { sideOf } from '../support/side.ts';

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    list: { type: 'boolean', default: false },
    from: { type: 'string', default: '3001' },
    'known-speed': { type: 'boolean', default: false },
    'up-to': { type: 'string', default: '420' },
    'speed-sd': { type: 'string', default: '0.01' },
  },
});
const TRUE_DB = -3;
/** Speeds this near to each other are the same to a driver with a cruise control, relative. */
const SPEED_MET = 0.005;
/** Usual level of tire 1× in a sound vehicle, as src/core/diagnosis/origins/levels.ts has it, m/s². */
const TIRE_ONCE_MPS2 = 0.008;
const vehicles = Number(positionals[0] ?? 50);

const counts = new Map<string, { pairs: number; told: number; real: number; inside: number }>();
const tallyOf = (name: string) => {
  const tally = counts.get(name) ?? { pairs: 0, told: 0, real: 0, inside: 0 };
  counts.set(name, tally);
  return tally;
};

interface Told {
  readonly changeDb: number;
  readonly lowDb: number | null;
  readonly highDb: number | null;
  readonly real: boolean;
}

const toldOf = (label: string, before: RunInference, after: RunInference): Told | null => {
  const change = compareRuns(sideOf(before), sideOf(after)).pairs[0]?.orders.find((order) => order.label === label);
  return !change || change.verdict === 'not-seen' ? null : change;
};

const toldOfLevels = (label: string, before: ReadLevel, after: ReadLevel): Told | null => {
  const [one, other] = levelsOfPair(before.readings, after.readings).map((weighedLevel) => {
    const level = withNoiseUnder(weighedLevel, SPEED_LAWS);
    return { level, seen: isSeen(level, true) };
  });
  if (!one!.seen && !other!.seen) return null;
  const speedDb = 20 * Math.log10(after.frequencyHz / before.frequencyHz);
  const unlikeSdDb = label === 'tire 1×' ? beatSdDb('tire', TIRE_ONCE_MPS2, [one!, other!]) : 0;
  const { db, ...change } = changeOf(one!, other!, { speedDb, unlikeSdDb });
  return { ...change, changeDb: db };
};

function note(label: string, change: Told | null, trueDb: number, relativeSpeed: number): void {
  const name = trueDb === 0 ? 'unchanged' : 'changed';
  const apart = Math.abs(relativeSpeed - 1) < SPEED_MET ? 'speed met' : 'speed missed';
  const tallies = [tallyOf(name), tallyOf(`${name}, ${label}`), tallyOf(`${name}, ${apart}`)];
  for (const tally of tallies) tally.pairs += 1;
  if (!change) {
    if (values.list) console.log(`  ${label}, true ${trueDb}: not told`);
    return;
  }
  const [low, high] = [change.lowDb ?? -Infinity, change.highDb ?? Infinity];
  for (const tally of tallies) {
    tally.told += 1;
    tally.real += Number(change.real && (trueDb === 0 || change.changeDb < 0));
    tally.inside += Number(low <= trueDb && trueDb <= high);
  }
  if (values.list)
    console.log(
      `  ${label}, true ${trueDb}: ${change.changeDb.toFixed(2)}, ${low.toFixed(2)} to ${high.toFixed(2)} dB`,
    );
}

function noteFour<Run>(four: Four<Run> | null, tell: (label: string, before: Run, after: Run) => Told | null): void {
  if (four === null) return;
  const [a, b] = four.asFound;
  const [c, d] = four.changed;
  const [ofB, ofD] = four.relativeSpeed;
  note(four.label, tell(four.label, a, b), 0, ofB);
  note(four.label, tell(four.label, c, d), 0, ofD);
  note(four.label, tell(four.label, a, d), TRUE_DB, ofD);
  note(four.label, tell(four.label, b, c), TRUE_DB, ofB);
}

for (let k = 0; k < vehicles; k += 1) {
  const seed = Number(values.from) + k;
  const options = { trueDb: TRUE_DB, upToHz: Number(values['up-to']), speedSd: Number(values['speed-sd']) };
  if (values.list) console.log(`vehicle ${seed}`);
  if (values['known-speed']) noteFour(await fourLevels(seed, options), toldOfLevels);
  else noteFour(await fourRuns(seed, options), toldOf);
  process.stderr.write(`\r${k + 1} of ${vehicles} vehicles `);
}
process.stderr.write('\n');

for (const [name, { pairs, told, real, inside }] of [...counts].sort()) {
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
