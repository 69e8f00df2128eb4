/**
 * The service worker: keeps the whole page on the device, so that it opens and plays without a connection. The build puts the version and the list
 * of files before this text (vite.config.ts). A new version is fetched whole beside the old one and waits until the player asks for it. Files
 * of the version before stay for one more, so that a page that is still open finds its parts.
 */
declare const PAGE_VERSION: string;
/** Addresses relative to the worker; the page itself is `./`. */
declare const PAGE_FILES: readonly string[];

{
  interface Extended extends Event {
    waitUntil(work: Promise<unknown>): void;
  }
  interface Fetched extends Extended {
    readonly request: Request;
    respondWith(answer: Promise<Response>): void;
  }
  interface Worker {
    readonly registration: { readonly scope: string };
    readonly clients: { claim(): Promise<void> };
    skipWaiting(): Promise<void>;
    addEventListener(type: 'install' | 'activate', listener: (event: Extended) => void): void;
    addEventListener(type: 'fetch', listener: (event: Fetched) => void): void;
    addEventListener(type: 'message', listener: (event: MessageEvent<unknown>) => void): void;
  }
  const worker = globalThis as unknown as Worker;
  const PREFIX = 'contratiempo-page-';
  const CACHE = PREFIX + PAGE_VERSION;

  /**
   * Files with their contents in their names never change: what the version before holds is taken from there. The others are asked for
   * again, which costs an unchanged file (the recordings) an answer of a few bytes.
   */
  const fetchFile = async (cache: Cache, file: string): Promise<void> => {
    const address = new URL(file, worker.registration.scope).href;
    const named = file.startsWith('assets/');
    const kept = named ? await caches.match(address) : undefined;
    const answer = kept ?? (await fetch(address, { cache: named ? 'default' : 'no-cache' }));
    if (!answer.ok) throw new Error(`${file} answered ${answer.status}`);
    await cache.put(address, answer);
  };

  worker.addEventListener('install', (event) =>
    event.waitUntil(
      caches.open(CACHE).then(async (cache) => {
        for (let at = 0; at < PAGE_FILES.length; at += 6)
          await Promise.all(PAGE_FILES.slice(at, at + 6).map((file) => fetchFile(cache, file)));
      }),
    ),
  );

  worker.addEventListener('activate', (event) =>
    event.waitUntil(
      caches.keys().then(async (names) => {
        const old = names.filter((name) => name.startsWith(PREFIX) && name !== CACHE);
        await Promise.all(old.slice(0, -1).map((name) => caches.delete(name)));
        await worker.clients.claim();
      }),
    ),
  );

  worker.addEventListener('message', (event) => {
    if (event.data === 'take over') void worker.skipWaiting();
  });

  const answer = async (request: Request): Promise<Response> => {
    const cache = await caches.open(CACHE);
    const address = request.mode === 'navigate' ? request.url.replace(/index\.html(?=[?#]|$)/, '') : request.url;
    const kept = (await cache.match(address, { ignoreSearch: true })) ?? (await caches.match(address, { ignoreSearch: true }));
    return kept ?? fetch(request);
  };

  worker.addEventListener('fetch', (event) => {
    const { request } = event;
    if (request.method !== 'GET' || !request.url.startsWith(worker.registration.scope)) return;
    event.respondWith(answer(request));
  });
}
