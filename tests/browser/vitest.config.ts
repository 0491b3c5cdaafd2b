import { defineConfig } from 'vitest/config';

/** What holds the page to a time limit has the machine for itself. */
const TIMED = ['tests/browser/large-file.test.ts', 'tests/browser/class-case.test.ts'];

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    env: { TZ: 'UTC', LC_ALL: 'C' },
    // The files of a worker share one browser, each page a context of its own.
    isolate: false,
    // Every wait is for a condition, so a quick machine never waits this long and a busy one may.
    testTimeout: 240_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 60_000, interval: 50 } },
    projects: [
      {
        extends: true,
        test: {
          name: 'side by side',
          include: ['tests/browser/**/*.test.ts'],
          exclude: TIMED,
          maxWorkers: 2,
          sequence: { groupOrder: 0 },
        },
      },
      {
        extends: true,
        test: { name: 'timed', include: TIMED, maxWorkers: 1, sequence: { groupOrder: 1 } },
      },
    ],
  },
});
