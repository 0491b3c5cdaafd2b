/** Builds the app into dist/app: static files that any server, or a service worker, can hand out. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';
import { svelte } from '@sveltejs/vite-plugin-svelte';
import { contentSecurityPolicy } from './build/content-security-policy.ts';
import { demoJobs } from './build/demo-jobs.ts';
import { offlineCopy } from './build/offline-copy.ts';

const app = fileURLToPath(new URL('.', import.meta.url));
const project = fileURLToPath(new URL('../..', import.meta.url));
const { version } = JSON.parse(readFileSync(`${project}/package.json`, 'utf8')) as { version: string };

export default defineConfig({
  root: app,
  base: './',
  logLevel: 'warn',
  define: { __PERREV_VERSION__: JSON.stringify(version) },
  plugins: [
    svelte({ configFile: '../../svelte.config.js' }),
    contentSecurityPolicy(),
    demoJobs(`${project}/recordings`),
    offlineCopy(`${app}public`),
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
    rollupOptions: {
      input: { index: `${app}index.html`, sw: `${app}offline/service-worker.ts` },
      // The service worker's name must stay, for the browser asks under it whether there is a newer one.
      output: { entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js') },
    },
  },
});
