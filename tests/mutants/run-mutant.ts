/** Makes one change in the copy and asks the runner which test notices it. */
import type { ChildProcess } from 'node:child_process';
import { fork } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Site } from './sites.ts';
import { applied } from './sites.ts';

/** Longer than the slowest honest run of all tests near a file, on a busy machine. */
const LIMIT_S = 400;
/** One test file that ran this long where all were sound is in an endless loop. */
const START_LIMIT_S = 120;

/**
 * The first of the tests that fails with the change made, 'time' where they do not end, null where all pass.
 * @param root of the copy; the file is put back
 * @param site null: no change, to see that the tests pass by themselves
 */
export async function caughtBy(root: string, site: Site | null, tests: readonly string[]): Promise<string | null> {
  const path = site && join(root, site.file);
  const code = path ? readFileSync(path, 'utf8') : '';
  if (site && path) writeFileSync(path, applied(code, site));
  const child = fork(new URL('./runner.ts', import.meta.url), [root], {
    execArgv: ['--import', 'tsx'],
    stdio: ['ignore', 'ignore', process.env['MUTANTS_TIMES'] ? 'inherit' : 'ignore', 'ipc'],
  });
  try {
    if ((await answer(child, START_LIMIT_S)) === null) throw new Error('vitest did not start');
    child.send({ tests });
    const told = (await answer(child, LIMIT_S)) as { by: string | null } | null;
    return told ? told.by : 'time';
  } finally {
    child.kill('SIGKILL');
    if (path) writeFileSync(path, code);
  }
}

/** The child's next message, or null where it does not come in time or the child ends. */
const answer = (child: ChildProcess, limitS: number): Promise<unknown> =>
  new Promise((resolve) => {
    const done = (value: unknown): void => {
      clearTimeout(timer);
      child.off('message', done);
      child.off('exit', ended);
      resolve(value);
    };
    const ended = (): void => done(null);
    const timer = setTimeout(ended, 1000 * limitS);
    child.once('message', done);
    child.once('exit', ended);
  });
