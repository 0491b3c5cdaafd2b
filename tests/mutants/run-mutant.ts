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

export interface Runner {
  readonly caughtBy: (site: Site | null, file: string, tests: readonly string[]) => Promise<string | null>;
  readonly stop: () => void;
}

export function startRunner(root: string): Runner {
  let child: ChildProcess | null = null;
  const stop = (): void => {
    child?.kill('SIGKILL');
    child = null;
  };
  const ready = async (): Promise<ChildProcess> => {
    if (child) return child;
    const started = fork(new URL('./runner.ts', import.meta.url), [root], {
      execArgv: ['--import', 'tsx'],
      stdio: ['ignore', 'ignore', process.env['MUTANTS_TIMES'] ? 'inherit' : 'ignore', 'ipc'],
    });
    child = started;
    if ((await answer(started, START_LIMIT_S)) === null) throw new Error('vitest did not start');
    return started;
  };
  return {
    stop,
    caughtBy: async (site, file, tests) => {
      const path = join(root, file);
      const code = readFileSync(path, 'utf8');
      if (site) writeFileSync(path, applied(code, site));
      try {
        const runner = await ready();
        runner.send({ changed: file, tests });
        const told = await answer(runner, LIMIT_S);
        if (told !== null) return (told as { by: string | null }).by;
        stop();
        return 'time';
      } finally {
        writeFileSync(path, code);
      }
    },
  };
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
