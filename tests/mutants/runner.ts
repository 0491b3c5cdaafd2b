/**
 * Child process with a vitest in a copy of the tree. Told to run a change's tests, it answers with the first test file
 * that fails, or null. It is a process of its own so that an endless loop can be ended from outside, and serves one
 * change only: a runner kept for the next one has been seen to go on with what the last change had made of a file.
 */
import { join } from 'node:path';
import { createVitest } from 'vitest/node';

export interface Order {
  readonly tests: readonly string[];
}

process.chdir(process.argv[2]!);
const root = process.cwd();
const vitest = await createVitest('test', {
  config: join(root, 'tests/vitest.config.ts'),
  root,
  watch: false,
  reporters: [{}],
  pool: 'threads',
  maxWorkers: 1,
  bail: 1,
  exclude: [],
});
await vitest.standalone();

process.on('message', (order: Order) => {
  void run(order).then(
    (by) => process.send!({ by }),
    (error: unknown) => process.send!({ by: `runner: ${String(error)}` }),
  );
});

async function run({ tests }: Order): Promise<string | null> {
  for (const test of tests) {
    const start = Date.now();
    if (process.env['MUTANTS_TIMES']) console.error(test);
    const found = vitest.getModuleSpecifications(join(root, test));
    const specifications = found.length > 0 ? found : await vitest.globTestSpecifications([test]);
    const { testModules, unhandledErrors } = await vitest.runTestSpecifications(specifications);
    if (process.env['MUTANTS_TIMES']) console.error(`${test} ${Date.now() - start} ms`);
    if (unhandledErrors.length > 0 || testModules.length === 0 || testModules.some((module) => !module.ok()))
      return test;
  }
  return null;
}

process.on('disconnect', () => process.exit());
process.send!('ready');
