import { defineConfig } from 'vitest/config';
import { svelte } from '@sveltejs/vite-plugin-svelte';

export default defineConfig({
  root: new URL('..', import.meta.url).pathname,
  plugins: [svelte({ configFile: new URL('../svelte.config.js', import.meta.url).pathname })],
  resolve: { conditions: ['browser'] },
  test: {
    include: ['tests/**/*.test.ts'],
    exclude: ['tests/browser/**', 'tests/accuracy/**', 'tests/bench/**'],
    env: { TZ: 'UTC', LC_ALL: 'C' },
    // Both cores of a small machine: by itself the runner leaves one idle.
    maxWorkers: 2,
    // A busy machine is slow, not wrong; what must be quick has a limit of its own.
    testTimeout: 240_000,
    hookTimeout: 240_000,
  },
});
