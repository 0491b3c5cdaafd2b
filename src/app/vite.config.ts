/** Builds the app into dist/app: static files that any server, or a service worker, can hand out. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { contentSecurityPolicy } from './build/content-security-policy.ts';
import { demoJobs } from './build/demo-jobs.ts';

const project = fileURLToPath(new URL('../..', import.meta.url));
const { version } = JSON.parse(readFileSync(`${project}/package.json`, 'utf8')) as { version: string };

export default defineConfig({
  root: fileURLToPath(new URL('.', import.meta.url)),
  base: './',
  logLevel: 'warn',
  define: { __PERREV_VERSION__: JSON.stringify(version) },
  plugins: [
    svelte({ configFile: '../../svelte.config.js' }),
    contentSecurityPolicy(),
    demoJobs(`${project}/recordings`),
  ],
  worker: { format: 'es' },
  server: { port: 4173 },
  build: {
    outDir: `${project}/dist/app`,
    emptyOutDir: true,
    target: 'es2022',
    // A data: address would be blocked by the page's own policy.
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
