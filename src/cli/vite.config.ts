/** Builds the command line into one file that starts without installing anything. */
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const root = fileURLToPath(new URL('../..', import.meta.url));
const { version } = JSON.parse(readFileSync(`${root}/package.json`, 'utf8')) as { version: string };

export default defineConfig({
  root,
  logLevel: 'warn',
  define: { __PERREV_VERSION__: JSON.stringify(version) },
  ssr: { noExternal: true },
  build: {
    ssr: 'src/cli/main.ts',
    target: 'node20',
    outDir: 'dist/cli',
    emptyOutDir: true,
    minify: false,
    rollupOptions: { output: { entryFileNames: 'perrev.js', banner: '#!/usr/bin/env node' } },
  },
});
