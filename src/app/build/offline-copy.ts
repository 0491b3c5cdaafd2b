/** Writes the list of all built files into the service worker. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Plugin } from 'vite';

export interface KeptFile {
  /** Relative to the app's own address. */
  readonly url: string;
  /** Changes with the content. */
  readonly mark: string;
}

const SERVICE_WORKER = 'sw.js';

const markOf = (content: string | Uint8Array): string =>
  createHash('sha256').update(content).digest('hex').slice(0, 12);

/** @param publicFolder Files that are copied as they are, beside the built ones. */
export function offlineCopy(publicFolder: string): Plugin {
  return {
    name: 'perrev-offline-copy',
    apply: 'build',
    enforce: 'post',
    generateBundle: {
      order: 'post',
      handler(_options, bundle) {
        const built = Object.values(bundle)
          .filter(({ fileName }) => fileName !== SERVICE_WORKER)
          .map((file): KeptFile => {
            const content = file.type === 'chunk' ? file.code : file.source;
            return { url: file.fileName, mark: markOf(content) };
          });
        const copied = readdirSync(publicFolder).map((url): KeptFile => ({
          url,
          mark: markOf(readFileSync(join(publicFolder, url))),
        }));
        const files = [...built, ...copied].sort((a, b) => a.url.localeCompare(b.url));
        const worker = bundle[SERVICE_WORKER];
        if (worker?.type !== 'chunk') throw new Error(`no ${SERVICE_WORKER} among the built files`);
        const list = JSON.stringify(files);
        worker.code = worker.code
          .replaceAll('__PERREV_FILES__', () => list)
          .replaceAll('__PERREV_MARK__', () => JSON.stringify(markOf(list)));
      },
    },
  };
}
