/** The accuracy suite: fresh random cases of every family through the real path, scored. See README.md. */
import { spawn } from 'node:child_process';
import { createInterface } from 'node:readline';
import type { Lean } from './case.ts';
import { makeCase } from './families.ts';
import type { Options } from './options.ts';
import { USAGE, readOptions } from './options.ts';
import type { Outcome } from './run-case.ts';
import { runCase } from './run-case.ts';
import { calibrationTable, leanTable, missList, resultTable } from './table.ts';
import { writeCase } from './write-case.ts';

const say = (text: string): void => void process.stderr.write(text);

const casesOf = (options: Options): readonly (readonly [Options['families'][number], number])[] =>
  options.families
    .flatMap((family) => Array.from({ length: options.cases }, (_, i) => [family, i] as const))
    .filter(([, index]) => options.only === null || index === options.only);

const runHere = async (options: Options, lean: Lean, tell: (outcome: Outcome) => void): Promise<void> => {
  const [part, of] = options.part;
  for (const [i, [family, index]] of casesOf(options).entries()) {
    if (i % of !== part) continue;
    const one = makeCase(family, index, options.seed, lean);
    const { outcome } = await runCase(one, index);
    tell(outcome);
  }
};

/** The same program again, one share of the cases each, telling its outcomes a line at a time. */
const runApart = (options: Options, lean: Lean, part: number, tell: (outcome: Outcome) => void): Promise<void> =>
  new Promise((done, fail) => {
    const args = [
      ...process.execArgv,
      process.argv[1]!,
      ...options.families.flatMap((f) => ['--family', f]),
      ...['--cases', String(options.cases), '--seed', String(options.seed), '--json'],
      ...['--part', `${part}/${options.jobs}`, '--normal-level', String(lean.normalLevel)],
      ...(lean.otherRamps ? ['--other-ramps'] : []),
    ];
    const child = spawn(process.execPath, args, { stdio: ['ignore', 'pipe', 'inherit'] });
    createInterface({ input: child.stdout }).on('line', (line) => tell(JSON.parse(line) as Outcome));
    child.on('error', fail);
    child.on('close', (code) => (code === 0 ? done() : fail(new Error(`part ${part} ended with ${code}`))));
  });

const runAll = async (options: Options, lean: Lean): Promise<readonly Outcome[]> => {
  const outcomes: Outcome[] = [];
  const all = casesOf(options).length;
  const tell = (outcome: Outcome): void => {
    outcomes.push(outcome);
    const right = outcomes.filter((o) => o.score.right).length;
    say(`\r${outcomes.length} of ${all}, ${right} right `);
  };
  if (options.jobs <= 1) await runHere(options, lean, tell);
  else await Promise.all(Array.from({ length: options.jobs }, (_, part) => runApart(options, lean, part, tell)));
  say('\n');
  return outcomes.sort((a, b) => a.index - b.index);
};

const main = async (): Promise<void> => {
  const options = readOptions(process.argv.slice(2));
  if (options.help) {
    console.log(USAGE);
    return;
  }
  const lean: Lean = { normalLevel: options.normalLevel, otherRamps: options.otherRamps };
  if (options.json) {
    await runHere(options, lean, (outcome) => void process.stdout.write(`${JSON.stringify(outcome)}\n`));
    return;
  }
  if (options.write !== null) {
    for (const [family, index] of casesOf(options))
      writeCase(options.write, makeCase(family, index, options.seed, lean), index);
    return;
  }
  const outcomes = await runAll(options, lean);
  console.log(resultTable(outcomes));
  console.log(`\nAll findings by stated probability:\n${calibrationTable(outcomes)}`);
  if (options.misses || options.only !== null) console.log(`\n${missList(outcomes)}`);
  if (!options.lean) return;
  const variants = [{ name: 'as is', outcomes }];
  for (const [name, change] of [
    ['normal ½', { normalLevel: 0.5 }],
    ['normal 2', { normalLevel: 2 }],
    ['other ramps', { otherRamps: true }],
  ] as const) {
    say(`${name}: `);
    variants.push({ name, outcomes: await runAll(options, { ...lean, ...change }) });
  }
  console.log(
    `\nRight answers, and the change (percent points) when the simulator is changed:\n${leanTable(variants)}`,
  );
};

await main();
