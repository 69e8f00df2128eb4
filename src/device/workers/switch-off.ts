/**
 * The worker that ends the service worker: published under its name (a build with OFFLINE=off does that), it takes over at once wherever the page
 * was kept, throws the copies away and takes itself off, so that the next visit comes from the server alone.
 */
{
  interface Extended extends Event {
    waitUntil(work: Promise<unknown>): void;
  }
  interface Worker {
    readonly registration: { unregister(): Promise<boolean> };
    skipWaiting(): Promise<void>;
    addEventListener(type: 'install' | 'activate', listener: (event: Extended) => void): void;
  }
  const worker = globalThis as unknown as Worker;
  worker.addEventListener('install', (event) => event.waitUntil(worker.skipWaiting()));
  worker.addEventListener('activate', (event) =>
    event.waitUntil(
      caches.keys().then(async (names) => {
        await Promise.all(names.filter((name) => name.startsWith('contratiempo-page-')).map((name) => caches.delete(name)));
        await worker.registration.unregister();
      }),
    ),
  );
}
