/** Keeps a whole copy of the app in the browser, so that it starts without a network. Built into sw.js. */
import type { KeptFile } from '../build/offline-copy.ts';

/** Put in by the build: every file of the app, and a mark that changes with any of them. */
declare const __PERREV_FILES__: readonly KeptFile[];
declare const __PERREV_MARK__: string;

const scope = self as unknown as ServiceWorkerGlobalScope;
const PREFIX = 'perrev-';
const CACHE = PREFIX + __PERREV_MARK__;

/** Demo recordings are larger than the app itself: they are fetched when the app stands, and may fail. */
const isDemo = ({ url }: KeptFile): boolean => url.startsWith('demo/') && !url.endsWith('demos.json');

const requestFor = ({ url }: KeptFile): Request =>
  new Request(new URL(url, scope.registration.scope), { cache: 'no-cache' });

scope.addEventListener('install', (event) => {
  event.waitUntil(keepApp());
});

scope.addEventListener('activate', (event) => {
  event.waitUntil(forgetOlder().then(() => scope.clients.claim()));
  void keepDemos();
});

scope.addEventListener('message', (event) => {
  if (event.data === 'take-over') void scope.skipWaiting();
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method === 'GET' && new URL(request.url).origin === scope.location.origin) {
    event.respondWith(answer(request));
  }
});

async function keepApp(): Promise<void> {
  const cache = await caches.open(CACHE);
  await cache.addAll(__PERREV_FILES__.filter((file) => !isDemo(file)).map(requestFor));
}

async function keepDemos(): Promise<void> {
  const cache = await caches.open(CACHE);
  for (const file of __PERREV_FILES__.filter(isDemo)) {
    const request = requestFor(file);
    if (!(await cache.match(request))) await cache.add(request).catch(() => undefined);
  }
}

async function forgetOlder(): Promise<void> {
  const names = await caches.keys();
  await Promise.all(
    names.filter((name) => name.startsWith(PREFIX) && name !== CACHE).map((name) => caches.delete(name)),
  );
}

/** The copy first: all files of one version belong together. What is not in it comes from the network. */
async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  const wanted = request.mode === 'navigate' ? new URL('index.html', scope.registration.scope).href : request;
  return (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(request);
}
