/** The page without its header, over the whole screen where the device allows it: for the music stand and the projector. */
export async function enterStand(page: Document, onLeave: () => void): Promise<() => void> {
  const root = page.documentElement;
  root.dataset.stand = 'true';
  const stop = new AbortController();
  const leave = (): void => {
    if (stop.signal.aborted) return;
    stop.abort();
    delete root.dataset.stand;
    if (page.fullscreenElement) void page.exitFullscreen().catch(() => undefined);
    window.dispatchEvent(new Event('resize'));
    onLeave();
  };
  page.addEventListener('fullscreenchange', () => !page.fullscreenElement && leave(), { signal: stop.signal });
  // Where the whole screen is refused, Escape still leaves.
  page.addEventListener('keydown', (event) => event.key === 'Escape' && !event.defaultPrevented && leave(), { signal: stop.signal });
  await root.requestFullscreen?.({ navigationUI: 'hide' }).catch(() => undefined);
  window.dispatchEvent(new Event('resize'));
  return leave;
}
