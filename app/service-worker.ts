// Keeps the built page, so that it opens without a network. The files and their version are put in by the build.
// It keeps files only: the plan is in the browser's own store and never passes here.

interface Kept {
  readonly version: string;
  readonly files: readonly string[];
}
declare const keptFiles: Kept;

// The compiler's own view of this scope is that of a page; only what is used is told of here.
interface Scope {
  readonly registration: { readonly scope: string };
  readonly clients: { claim(): Promise<void> };
  skipWaiting(): Promise<void>;
  addEventListener(type: 'install' | 'activate', listener: (event: Lasting) => void): void;
  addEventListener(type: 'fetch', listener: (event: Fetching) => void): void;
  addEventListener(type: 'message', listener: (event: MessageEvent) => void): void;
}
interface Lasting extends Event {
  waitUntil(work: Promise<unknown>): void;
}
interface Fetching extends Event {
  readonly request: Request;
  respondWith(response: Promise<Response>): void;
}

const scope = globalThis as unknown as Scope;
const prefix = 'possession-fit/page/';
const own = prefix + keptFiles.version;
const address = (file: string): string => new URL(file, scope.registration.scope).href;

scope.addEventListener('install', (event) => {
  event.waitUntil(
    caches.open(own).then((cache) =>
      // Past the browser's ordinary cache: an old file under a new version would never be put right.
      cache.addAll(keptFiles.files.map((file) => new Request(address(file), { cache: 'reload' }))),
    ),
  );
});

scope.addEventListener('activate', (event) => {
  event.waitUntil(tidy().then(() => scope.clients.claim()));
});

/** The version before stays: a tab that still runs it may yet need one of its files. */
async function tidy(): Promise<void> {
  const names = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== own);
  await Promise.all(names.slice(0, -1).map((name) => caches.delete(name)));
}

scope.addEventListener('message', (event) => {
  if (event.data === 'take-over') void scope.skipWaiting();
});

scope.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || !request.url.startsWith(scope.registration.scope)) return;
  // The page asks past every cache for what the host serves now.
  if (request.cache === 'no-store') return;
  event.respondWith(answer(request));
});

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(own);
  const wanted = request.mode === 'navigate' ? address(pageOf(request.url)) : request;
  // File names carry a hash of their content, so the same name in an older version is the same file.
  const options = { ignoreSearch: true, ignoreVary: true };
  const found = (await cache.match(wanted, options)) ?? (await caches.match(wanted, options));
  return found ?? fetch(request);
}

/** The page that an address is of: the desk, but for the pages that are kept under a name of their own. */
function pageOf(url: string): string {
  const name = new URL(url).pathname.slice(new URL(scope.registration.scope).pathname.length);
  return name.endsWith('.html') && keptFiles.files.includes(name) ? name : 'index.html';
}

export {};
