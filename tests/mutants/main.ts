/** Mutation check: see README.md. `npm run mutants -- --count 200 --seed 1` */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { randomSource } from '../../src/core/simulate/random.ts';
import { EQUIVALENTS } from './equivalents.ts';
import { importGraph, testsNear } from './graph.ts';
import { caughtBy } from './run-mutant.ts';
import type { Site } from './sites.ts';
import { sitesOf } from './sites.ts';
import { copyOfTree } from './tree.ts';

const { values } = parseArgs({
  options: {
    count: { type: 'string', default: '50' },
    seed: { type: 'string', default: '1' },
    /** Only sites whose path from the root contains this; may be repeated. */
    only: {
      type: 'string',
      multiple: true,
      default: ['core/signal/', 'core/vehicle/', 'core/driveline/', 'core/diagnosis/'],
    },
    /** Test files left out, by a part of their path: slow ones, at a first pass. */
    skip: { type: 'string', multiple: true, default: [] },
    /** Only these changes of the draw, by number; may be repeated. */
    nth: { type: 'string', multiple: true, default: [] },
    /** Begins at this change of the draw: a long check can be done in parts. */
    from: { type: 'string', default: '1' },
    verbose: { type: 'boolean', default: false },
  },
});

const CONTROL_EVERY = 20;
const CONTROL_TESTS = 3;

const home = new URL('../..', import.meta.url).pathname;
const tree = copyOfTree(home);
const graph = importGraph(tree.root);
const nearest = (file: string): string[] =>
  testsNear(graph, file).filter((test) => !values.skip.some((part) => test.includes(part)));
const lineOf = ({ file, line }: Site): string =>
  readFileSync(join(tree.root, file), 'utf8').split('\n')[line - 1]!.trim();
const show = (site: Site): string => `${site.file}:${site.line}  ${site.was} → ${site.text}\n    ${lineOf(site)}`;

try {
  const files = readdirSync(join(tree.root, 'src/core'), { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.ts'))
    .map((path) => join('src/core', path))
    .filter((path) => values.only.some((part) => path.includes(part)))
    .sort();
  const sites = files.flatMap((file) => sitesOf(file, readFileSync(join(tree.root, file), 'utf8')));
  const drawn = shuffled(sites, Number(values.seed)).slice(0, Number(values.count));
  const count = { caught: 0, survived: 0, equivalent: 0 };
  console.log(`${sites.length} sites in ${files.length} files; ${drawn.length} drawn with seed ${values.seed}`);
  for (const [i, site] of drawn.entries()) {
    if (i + 1 < Number(values.from)) continue;
    if (values.nth.length > 0 && !values.nth.includes(String(i + 1))) continue;
    if (i % CONTROL_EVERY === 1) await mustPass(drawn[i - 1]!.file);
    const known = EQUIVALENTS.find(
      ({ file, line, was, text }) =>
        file === site.file && line === lineOf(site) && was === site.was && text === site.text,
    );
    if (known) {
      count.equivalent += 1;
      console.log(`${i + 1} equivalent ${show(site)}\n    ${known.because}`);
      continue;
    }
    const by = await caughtBy(tree.root, site, nearest(site.file));
    count[by === null ? 'survived' : 'caught'] += 1;
    if (by === null) console.log(`${i + 1} SURVIVED ${show(site)}`);
    else if (values.verbose) console.log(`${i + 1} caught by ${by}: ${show(site)}`);
  }
  const counted = count.caught + count.survived;
  const share = counted > 0 ? ((100 * count.caught) / counted).toFixed(0) : '–';
  console.log(`caught ${count.caught} of ${counted} (${share} %), equivalent ${count.equivalent}`);
} finally {
  tree.remove();
}

/** A check of the check: with the last change put back, its tests must pass again. */
async function mustPass(file: string): Promise<void> {
  const by = await caughtBy(tree.root, null, nearest(file).slice(0, CONTROL_TESTS));
  if (by !== null) throw new Error(`${by} fails though ${file} is as it was`);
}

/** In random order, the same for the same seed. */
function shuffled<T>(items: readonly T[], seed: number): T[] {
  const random = randomSource(seed, 'mutants');
  const keyed = items.map((item) => ({ item, key: random.uniform() }));
  return keyed.sort((a, b) => a.key - b.key).map(({ item }) => item);
}
