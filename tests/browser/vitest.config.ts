import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: new URL('../..', import.meta.url).pathname,
  test: {
    include: ['tests/browser/**/*.test.ts'],
    env: { TZ: 'UTC', LC_ALL: 'C' },
    testTimeout: 60_000,
    hookTimeout: 60_000,
    // One browser after the other: they would only take each other's time.
    fileParallelism: false,
  },
});
