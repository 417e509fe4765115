/**
 * The service worker: keeps every file of one version of the app on the device and serves the app from there.
 *
 * A new version is fetched beside the old one and waits until no window works with the old one any more, which is how browsers treat a
 * worker that does not hurry them. So a page always finds the files of the version that it was opened with, and an attempt under way goes
 * on in it to its debrief. It imports nothing: what the build puts in place of FILES is all that it needs to know.
 */
declare const self: ServiceWorkerGlobalScope;
/** Put here by tests/tools/offline.ts: a name for the version, the script that its first page loads, and its files beside the first page. */
declare const __BELLWIRE_FILES__: { readonly version: string; readonly entry: string; readonly files: readonly string[] };

const { version, entry, files } = __BELLWIRE_FILES__;
const scope = new URL(self.registration.scope);
/** Other apps, and Bellwire in other folders, may live on the same origin. */
const MINE = `bellwire ${scope.pathname} `;
const CACHE = MINE + version;
const FIRST_PAGE = './';
const kept = new Set([FIRST_PAGE, ...files]);

const keyOf = (name: string): string => new URL(name, scope).href;

/** @throws when the server does not give the file itself, for some answer with a page to whatever they lack */
async function fetchFile(name: string): Promise<Response> {
  // A name with its content's hash in it may come from the browser's own cache: the page may have just loaded it.
  const response = await fetch(keyOf(name), { cache: name.startsWith('assets/') ? 'default' : 'reload' });
  if (!response.ok || (response.headers.get('content-type') ?? '').includes('text/html'))
    throw new Error(`${name} is not on the server`);
  return response;
}

/** @throws when the server has another version by now */
async function fetchFirstPage(): Promise<Response> {
  const response = await fetch(keyOf(FIRST_PAGE), { cache: 'reload' });
  const page = await response.text();
  if (!response.ok || !page.includes(entry)) throw new Error('the server is changing to another version');
  // Built anew, because a browser does not open a page from an answer that came by a redirection.
  return new Response(page, { headers: { 'content-type': 'text/html; charset=utf-8' } });
}

/** All or nothing: where one file fails the browser drops this worker, and tries again at the next visit. */
async function keepAll(): Promise<void> {
  const cache = await caches.open(CACHE);
  await Promise.all(files.map(async (name) => cache.put(keyOf(name), await fetchFile(name))));
  // Last, so that a server that changed meanwhile is noticed.
  await cache.put(keyOf(FIRST_PAGE), await fetchFirstPage());
}

async function dropOlder(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith(MINE) && name !== CACHE) await caches.delete(name);
  // The window that brought this worker here works with it from now on: its later pages may be asked for without a network.
  await self.clients.claim();
}

async function answer(name: string, request: Request): Promise<Response> {
  const cache = await caches.open(CACHE);
  return (await cache.match(keyOf(name), { ignoreVary: true })) ?? fetch(request);
}

self.addEventListener('install', (event) => event.waitUntil(keepAll()));
self.addEventListener('activate', (event) => event.waitUntil(dropOlder()));
self.addEventListener('fetch', (event) => {
  const { request } = event;
  const { origin, pathname } = new URL(request.url);
  if (request.method !== 'GET' || origin !== scope.origin || !pathname.startsWith(scope.pathname)) return;
  const asked = decodeURIComponent(pathname.slice(scope.pathname.length));
  const name = asked === '' || asked === 'index.html' ? FIRST_PAGE : asked;
  if (kept.has(name)) event.respondWith(answer(name, request));
});

export {};
