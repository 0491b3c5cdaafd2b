/** `perrev serve`: the built app on this machine, with the headers that keep it to itself. */
import { createServer } from 'node:http';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { readFile } from 'node:fs/promises';
import { extname, join, normalize, sep } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readArguments } from '../arguments.ts';
import { UsageError } from '../io.ts';
import type { Command, Io } from '../io.ts';

const DEFAULT_PORT = 4173;
/** Ports tried after a taken one, when none was asked for. */
const PORTS_TRIED = 20;

const OPTIONS = [
  { name: 'port', value: '4173', help: `port to listen on (default ${DEFAULT_PORT}, or the next free one)` },
  { name: 'host', value: '127.0.0.1', help: 'address to listen on (default this machine only)' },
] as const;

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.json': 'application/json; charset=utf-8',
  '.webmanifest': 'application/manifest+json',
  '.csv': 'text/csv; charset=utf-8',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
  '.woff2': 'font/woff2',
};

/** The app loads nothing from elsewhere and runs no inline script; blob: and data: serve its own pictures. */
const SECURITY_HEADERS: Readonly<Record<string, string>> = {
  'Content-Security-Policy':
    "default-src 'none'; script-src 'self'; worker-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; " +
    "connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'",
  'X-Content-Type-Options': 'nosniff',
  'Referrer-Policy': 'no-referrer',
  'Permissions-Policy': 'accelerometer=(self), gyroscope=(self), geolocation=(self), camera=(), microphone=()',
};

async function answer(root: string, request: IncomingMessage, response: ServerResponse): Promise<void> {
  const path = decodedPath(request.url ?? '/');
  const file = path === null ? null : normalize(join(root, path === '/' ? 'index.html' : path));
  if (file === null || !file.startsWith(root + sep)) return refuse(response, 400);
  try {
    const bytes = await readFile(file);
    response.writeHead(200, {
      ...SECURITY_HEADERS,
      'Content-Type': TYPES[extname(file)] ?? 'application/octet-stream',
      // Built assets carry a hash in their name; everything else is asked for anew.
      'Cache-Control': path?.startsWith('/assets/') ? 'public, max-age=31536000, immutable' : 'no-cache',
    });
    response.end(request.method === 'HEAD' ? undefined : bytes);
  } catch {
    refuse(response, 404);
  }
}

function decodedPath(url: string): string | null {
  try {
    return decodeURIComponent(new URL(url, 'http://localhost').pathname);
  } catch {
    return null;
  }
}

function refuse(response: ServerResponse, status: number): void {
  response.writeHead(status, { ...SECURITY_HEADERS, 'Content-Type': 'text/plain; charset=utf-8' });
  response.end(status === 404 ? 'Not found\n' : 'Bad request\n');
}

/** Listens on the asked port, or from the default on the first free one; resolves with the port taken. */
function listen(root: string, host: string, port: number, tries: number): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer((request, response) => void answer(root, request, response));
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE' && tries > 0) listen(root, host, port + 1, tries - 1).then(resolve, reject);
      else reject(error);
    });
    server.listen(port, host, () => resolve(port));
  });
}

async function run(args: string[], io: Io): Promise<number> {
  const given = readArguments(args, OPTIONS);
  const asked = given.text('port');
  const port = asked === undefined ? DEFAULT_PORT : Number(asked);
  if (!Number.isInteger(port) || port < 1 || port > 65535)
    throw new UsageError(`--port "${asked}" is not a port from 1 to 65535.`);
  const host = given.text('host') ?? '127.0.0.1';
  const root = fileURLToPath(new URL('../app', import.meta.url));
  try {
    await readFile(join(root, 'index.html'));
  } catch {
    io.stderr('perrev serve: the app has not been built. Build it with: npm run build\n');
    return 1;
  }
  try {
    const taken = await listen(root, host, port, asked === undefined ? PORTS_TRIED : 0);
    io.stdout(`perrev is at http://${host}:${taken}/ (stop with Ctrl+C)\n`);
  } catch (error) {
    io.stderr(`perrev serve: could not listen on ${host}:${port}: ${(error as Error).message}. Try another --port.\n`);
    return 1;
  }
  await new Promise<never>(() => undefined);
  return 0;
}

export const serveCommand: Command = {
  name: 'serve',
  summary: 'serve the app to a browser on this machine',
  usage: `Serves the built app. Nothing leaves this machine.

  perrev serve
  perrev serve --port 8080

Options:
${OPTIONS.map(({ name, value, help }) => `  --${name} ${value}`.padEnd(32) + help).join('\n')}`,
  run,
};
