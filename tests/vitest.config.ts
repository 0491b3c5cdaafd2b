import { defineConfig } from 'vitest/config';
import { svelte } from '@sveltejs/vite-plugin-svelte';

/** Where the time goes: alone in their module graph, whose hot loops other tests would have the compiler give up on. */
const HEAVY = ['tests/core/accuracy-small.test.ts', 'tests/cli/**/*.test.ts', 'tests/golden/**/*.test.ts'];

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  plugins: [svelte({ configFile: new URL('../svelte.config.js', import.meta.url).pathname })],
  resolve: { conditions: ['browser'] },
  test: {
    env: { TZ: 'UTC', LC_ALL: 'C' },
    setupFiles: ['tests/support/property-seed.ts'],
    // A busy machine is slow, not wrong; what must be quick has a limit of its own.
    testTimeout: 240_000,
    hookTimeout: 240_000,
    // Both cores of a small machine: by itself the runner leaves one idle.
    maxWorkers: 2,
    projects: [
      { extends: true, test: { name: 'heavy', include: HEAVY, sequence: { groupOrder: 0 }, maxWorkers: 2 } },
      {
        extends: true,
        test: {
          name: 'light',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/browser/**', 'tests/accuracy/**', 'tests/bench/**', ...HEAVY],
          sequence: { groupOrder: 1 },
          maxWorkers: 2,
          // No test changes what modules hold; loading them once for each worker saves half a minute.
          isolate: false,
        },
      },
    ],
  },
});
