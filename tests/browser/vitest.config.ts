import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    include: ['tests/browser/**/*.test.ts'],
    env: { TZ: 'UTC', LC_ALL: 'C' },
    // Every wait is for a condition, so a quick machine never waits this long and a busy one may.
    testTimeout: 240_000,
    hookTimeout: 120_000,
    expect: { poll: { timeout: 60_000, interval: 50 } },
    // One browser after the other: they would only take each other's time.
    fileParallelism: false,
  },
});
