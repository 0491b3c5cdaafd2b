/**
 * Child process that keeps one vitest ready in a copy of the tree. Told to run a change's tests, it answers with the
 * first test file that fails, or null. It is a process of its own so that an endless loop can be ended from outside.
 */
import { join } from 'node:path';
import { createVitest } from 'vitest/node';

export interface Order {
  readonly changed: string;
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

async function run({ changed, tests }: Order): Promise<string | null> {
  vitest.invalidateFile(join(root, changed));
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

process.send!('ready');
