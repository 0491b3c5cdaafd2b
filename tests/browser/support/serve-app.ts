/** Serves dist/app the way a strict server would. Counts what is asked for, so that a test can see silence. */
import { createServer } from 'node:http';
import { existsSync, readFileSync, statSync } from 'node:fs';
import type { AddressInfo } from 'node:net';
import { extname, join, normalize } from 'node:path';
import { CONTENT_SECURITY_POLICY } from '../../../src/app/build/policy.ts';

const DIST = process.env.PERREV_APP ?? new URL('../../../dist/app', import.meta.url).pathname;
const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.webmanifest': 'application/manifest+json',
};

export interface AppServer {
  readonly url: string;
  /** Paths asked for, in order. */
  readonly requests: string[];
  /** A change to a served file: path → new bytes. */
  readonly replaced: Map<string, Buffer>;
  close: () => Promise<void>;
}

export async function serveApp(): Promise<AppServer> {
  const requests: string[] = [];
  const replaced = new Map<string, Buffer>();
  const server = createServer((request, response) => {
    const path = decodeURIComponent(new URL(request.url ?? '/', 'http://local').pathname);
    requests.push(path);
    const file = join(DIST, normalize(path === '/' ? '/index.html' : path));
    const bytes = replaced.get(path) ?? (existsSync(file) && statSync(file).isFile() ? readFileSync(file) : null);
    if (bytes === null) {
      response.writeHead(404).end();
      return;
    }
    response.writeHead(200, {
      'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
      'Content-Security-Policy': CONTENT_SECURITY_POLICY,
      'X-Content-Type-Options': 'nosniff',
      'Cache-Control': 'no-cache',
    });
    response.end(bytes);
  });
  await new Promise<void>((resolve) => server.listen(0, '127.0.0.1', resolve));
  const { port } = server.address() as AddressInfo;
  return {
    url: `http://127.0.0.1:${port}/`,
    requests,
    replaced,
    close: () =>
      new Promise((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      }),
  };
}
