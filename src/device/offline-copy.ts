import type { OfflineCopy, OfflineState } from '../state/ports';

/** Where the worker lies, beside the page itself. */
const WORKER = 'service-worker.js';
/** How often a page that stays open looks for a new version. */
const LOOK_MS = 3_600_000;

/** The copy of the page that a service worker keeps. `page` is the window, for loading it anew and for its caches. */
export function createOfflineCopy(workers: ServiceWorkerContainer | undefined, page: Window & typeof globalThis): OfflineCopy {
  let listener: (state: OfflineState) => void = () => undefined;
  let registration: ServiceWorkerRegistration | null = null;
  let asked = false;
  const tell = (): void => {
    if (!registration) return;
    if (registration.waiting && workers?.controller) listener('update');
    else listener(registration.active ? 'ready' : 'preparing');
  };
  const watch = (worker: ServiceWorker | null): void => worker?.addEventListener('statechange', tell);

  return {
    onChange: (told) => {
      listener = told;
    },
    make: async () => {
      if (!workers || !page.isSecureContext) return listener('unsupported');
      listener('preparing');
      try {
        registration = await workers.register(WORKER, { updateViaCache: 'none' });
        watch(registration.installing);
        registration.addEventListener('updatefound', () => watch(registration?.installing ?? null));
      } catch {
        return listener('failed');
      }
      // Only the player's own word loads the page anew.
      workers.addEventListener('controllerchange', () => {
        if (asked) page.location.reload();
      });
      setInterval(() => void registration?.update().catch(() => undefined), LOOK_MS);
      tell();
    },
    takeUpdate: () => {
      asked = true;
      registration?.waiting?.postMessage('take over');
    },
    clear: async () => {
      const registered = await workers?.getRegistrations().catch(() => []);
      const own = (registered ?? []).filter(({ scope }) => page.location.href.startsWith(scope));
      await Promise.all(own.map((one) => one.unregister()));
      const names = await page.caches?.keys().catch(() => []);
      await Promise.all((names ?? []).filter((name) => name.startsWith('contratiempo-page-')).map((name) => page.caches.delete(name)));
      registration = null;
      listener('off');
    },
  };
}
