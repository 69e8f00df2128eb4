/** Facts about browser and page for a report: nothing that a person wrote, and no address but the part that names the place. */
export async function deviceFacts(): Promise<Readonly<Record<string, string>>> {
  const registration = await navigator.serviceWorker?.getRegistration().catch(() => undefined);
  return {
    time: new Date().toISOString(),
    browser: navigator.userAgent,
    language: navigator.language,
    window: `${window.innerWidth} × ${window.innerHeight} at ${window.devicePixelRatio}`,
    place: window.location.hash.startsWith('#/') ? window.location.hash : '',
    online: String(navigator.onLine),
    secure: String(window.isSecureContext),
    installed: String(window.matchMedia('(display-mode: standalone)').matches),
    worker: registration?.waiting ? 'a new one waits' : registration?.active ? 'active' : 'none',
    'has database': String('indexedDB' in window),
    'has MIDI': String('requestMIDIAccess' in navigator),
    'has wake lock': String('wakeLock' in navigator),
    'reduced motion': String(window.matchMedia('(prefers-reduced-motion: reduce)').matches),
    'forced colours': String(window.matchMedia('(forced-colors: active)').matches),
  };
}
